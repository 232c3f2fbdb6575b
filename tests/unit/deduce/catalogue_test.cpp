// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

#include "deduce/technique.h"
#include "grid/notation.h"

namespace cp {
namespace {

// The families in the order in which the manual shows them.
const std::set<std::string_view> kFamilies = {"single",   "locked",         "subset",             "fish",       "one-digit", "colouring",    "finned-fish",
                                              "mixed-fish", "wing",           "chain",              "exclusion",  "uniqueness", "multi-sector", "almost-locked-set",
                                              "exocet",   "leftovers",      "forcing"};

TEST(Catalogue, IsSortedAndComplete) {
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    const Technique& technique = catalogue()[i];
    EXPECT_TRUE(i == 0 || catalogue()[i - 1].id < technique.id) << technique.id;
    EXPECT_FALSE(technique.name.empty());
    EXPECT_NE(technique.find, nullptr);
    EXPECT_TRUE(kFamilies.contains(technique.family)) << technique.id << " is of the family " << technique.family;
    EXPECT_EQ(technique.needs_unique, technique.family == "uniqueness") << technique.id;
    EXPECT_FALSE(kFamilies.contains(technique.id)) << technique.id << " is the name of a family, too";
  }
}

// The scale in catalogue.def, worked out again from its words.
TEST(Catalogue, CostsFollowTheStatedScale) {
  const auto cost = [](std::string_view id) { return (*find_technique(id))->cost; };
  EXPECT_EQ(cost("hidden-single"), 10);
  EXPECT_EQ(cost("naked-single"), 10 + 2 * 5);
  EXPECT_EQ(cost("pointing"), 2 * 10 + 5);
  EXPECT_EQ(cost("claiming"), 2 * 10 + 2 * 5);
  int size = 2;
  for (const char* word : {"pair", "triple", "quad"}) {
    EXPECT_EQ(cost(std::string("naked-") + word), 20 * size);
    EXPECT_EQ(cost(std::string("hidden-") + word), 20 * size + 5 * size);
    ++size;
  }
  size = 2;
  for (const char* id : {"x-wing", "swordfish", "jellyfish"}) {
    EXPECT_EQ(cost(id), 20 * size + 5 * (2 * size - 1));
    ++size;
  }
}

TEST(Catalogue, FindsByIdAndSuggestsNearOnes) {
  EXPECT_EQ((*find_technique("x-wing"))->name, "X-wing");
  const auto unknown = find_technique("naked-pear");
  ASSERT_FALSE(unknown.is_ok());
  EXPECT_EQ(unknown.error().code, ErrorCode::kBadName);
  EXPECT_EQ(unknown.error().message, "'naked-pear' is not a technique");
  EXPECT_EQ(unknown.error().hint, "did you mean naked-pair, naked-quad or naked-single?");
}

TEST(Catalogue, SaysNothingOnACompleteGrid) {
  const auto complete = parse_position("1234341221434321");
  for (const Technique& technique : catalogue()) {
    StepList steps;
    technique.find(*complete, steps);
    EXPECT_TRUE(steps.steps.empty()) << technique.id;
  }
}

// A sink that has had enough is not called again.
TEST(Catalogue, StopsWhenTheSinkHasHadEnough) {
  struct Counter final : StepSink {
    bool take(Step) override { return ++calls < 2; }
    int calls = 0;
  };
  const auto position = parse_position("...2.5....9....73...2..9.6.2.....4.9....7....6.9.....1.8.4..1...63....8....6.8...");
  for (const Technique& technique : catalogue()) {
    StepList all;
    technique.find(*position, all);
    Counter counter;
    technique.find(*position, counter);
    EXPECT_EQ(counter.calls, std::min<int>(2, static_cast<int>(all.steps.size()))) << technique.id;
  }
}

}  // namespace
}  // namespace cp
