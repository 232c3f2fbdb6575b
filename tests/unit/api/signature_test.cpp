// SPDX-License-Identifier: Apache-2.0
#include "api/signature.h"

#include <gtest/gtest.h>

#include <set>

#include "api/bench_positions.h"
#include "exact/minimal.h"
#include "exact/random_grid.h"
#include "grid/notation.h"
#include "support/data_rows.h"

namespace cp::api {

namespace {

std::uint64_t hash_of(std::string_view text) {
  Signature signature;
  for (const char character : text) signature.add_byte(static_cast<std::uint8_t>(character));
  return signature.value();
}

TEST(Signature, PublishedTestVectors) {
  // FNV-1a 64 bit, from the test suite of the authors (draft-eastlake-fnv, appendix).
  EXPECT_EQ(hash_of(""), 0xcbf29ce484222325ULL);
  EXPECT_EQ(hash_of("a"), 0xaf63dc4c8601ec8cULL);
  EXPECT_EQ(hash_of("foobar"), 0x85944171f73967e8ULL);
}

TEST(Signature, TextsDoNotRunIntoEachOther) {
  Signature one;
  one.add("ab");
  one.add("c");
  Signature other;
  other.add("a");
  other.add("bc");
  EXPECT_NE(one.value(), other.value());
}

TEST(BenchPositions, AreReadableAndDifferent) {
  std::set<std::string_view> names;
  std::set<std::string_view> puzzles;
  for (const BenchPosition& given : bench_positions()) {
    EXPECT_TRUE(parse_position(given.puzzle).is_ok()) << given.name;
    EXPECT_TRUE(names.insert(given.name).second) << given.name;
    EXPECT_TRUE(puzzles.insert(given.puzzle).second) << given.name;
  }
  EXPECT_EQ(names.size(), 120U);
}

TEST(BenchPositions, AreWhatTheirNamesSay) {
  std::set<std::string> published;
  for (const auto& row : support::published_puzzles()) published.insert(row.puzzle);
  for (const BenchPosition& given : bench_positions()) {
    const Position position = support::read(given.puzzle);
    const std::string name(given.name);
    if (name.starts_with("many-")) {
      EXPECT_EQ(how_many(position), HowMany::kMany) << name;
    } else if (name.starts_with("none-")) {
      EXPECT_EQ(how_many(position), HowMany::kNone) << name;
      EXPECT_FALSE(position.has_clash()) << name;
    } else {
      EXPECT_TRUE(is_proper(position)) << name;
      const auto dash = name.find('-');
      for (const auto& [word, shape] : {std::pair{"four", "4x4"}, std::pair{"six", "6x6"}, std::pair{"nine", "9x9"}}) {
        if (dash == std::string::npos || name.substr(0, dash) != word) continue;
        EXPECT_EQ(given.puzzle, givens_line(random_minimal_puzzle(*find_shape(shape), std::stoull(name.substr(dash + 1))))) << name;
      }
    }
  }
  for (const BenchPosition& given : bench_positions().first(55)) EXPECT_EQ(published.count(std::string(given.puzzle)), 1U) << given.name;
}

}  // namespace

}  // namespace cp::api
