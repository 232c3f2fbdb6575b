// SPDX-License-Identifier: Apache-2.0
#include "path/selection.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace cp {
namespace {

TEST(Selection, IsTheWholeCatalogueCheapestFirst) {
  const Selection all = whole_catalogue();
  EXPECT_EQ(all.techniques.size(), catalogue().size());
  EXPECT_TRUE(all.balances);
  EXPECT_TRUE(std::is_sorted(all.techniques.begin(), all.techniques.end(), [](const Technique* a, const Technique* b) { return a->cost < b->cost; }));
}

TEST(Selection, TakesIdsAndFamiliesAndBalance) {
  const Selection some = select_techniques({"single", "x-wing"}, {"naked-single"}).value();
  EXPECT_TRUE(some.has("hidden-single"));
  EXPECT_TRUE(some.has("x-wing"));
  EXPECT_FALSE(some.has("naked-single"));
  EXPECT_FALSE(some.has("swordfish"));
  EXPECT_FALSE(some.balances);
  EXPECT_TRUE(select_techniques({"balance"}, {}).value().balances);
  EXPECT_TRUE(select_techniques({"balance"}, {}).value().techniques.empty());
  EXPECT_FALSE(select_techniques({}, {"balance"}).value().balances);
}

TEST(Selection, UniquenessIsAGroup) {
  const Selection rest = select_techniques({}, {"uniqueness"}).value();
  for (const Technique* technique : rest.techniques) EXPECT_FALSE(technique->needs_unique) << technique->id;
  const auto needing = std::count_if(catalogue().begin(), catalogue().end(), [](const Technique& technique) { return technique.needs_unique; });
  EXPECT_EQ(rest.techniques.size() + static_cast<std::size_t>(needing), catalogue().size());
}

TEST(Selection, RefusesUnknownNames) {
  const auto wrong = select_techniques({}, {"xwing"});
  ASSERT_FALSE(wrong.is_ok());
  EXPECT_EQ(wrong.error().code, ErrorCode::kBadName);
  const std::vector<std::string> names = technique_names();
  EXPECT_TRUE(std::is_sorted(names.begin(), names.end()));
  for (const std::string& name : names) EXPECT_TRUE(select_techniques({name}, {}).is_ok()) << name;
}

}  // namespace
}  // namespace cp
