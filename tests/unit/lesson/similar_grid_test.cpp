// SPDX-License-Identifier: Apache-2.0
#include "lesson/similar_grid.h"

#include <gtest/gtest.h>

#include "deduce/basics.h"
#include "exact/solve.h"
#include "support/data_rows.h"

namespace cp {
namespace {

// What holds of a grid holds of its image: still proper, and the basics reach the image of the same position.
TEST(Similarity, KeepsWhatTheBasicsSay) {
  for (const char* name : {"gecode14", "gecode5"}) {
    const Position puzzle = support::read(support::published_puzzle(name));
    Position end = puzzle;
    ASSERT_TRUE(run_basics(end));
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
      const Similarity similar(puzzle.shape(), seed);
      Position moved = similar.image(puzzle);
      EXPECT_TRUE(is_proper(moved));
      EXPECT_FALSE(moved == puzzle);
      ASSERT_TRUE(run_basics(moved));
      EXPECT_TRUE(moved == similar.image(end)) << name << " " << seed;
    }
  }
}

TEST(Similarity, MapsHousesToHouses) {
  for (const Shape* shape : all_shapes()) {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
      const Similarity similar(*shape, seed);
      CellSet seen;
      for (const Cell cell : shape->all_cells()) seen.add(similar.image(cell));
      EXPECT_TRUE(seen == shape->all_cells());
      for (int i = 0; i < shape->house_count(); ++i) {
        CellSet moved;
        for (const Cell cell : shape->cells(House(i))) moved.add(similar.image(cell));
        EXPECT_TRUE(moved == shape->cells(similar.image(House(i)))) << shape->name() << " " << i;
      }
    }
  }
}

}  // namespace
}  // namespace cp
