// SPDX-License-Identifier: Apache-2.0
// The canonical form against published counts and against looking at every image.
#include "grid/canonical_form.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <set>

#include "exact/random_grid.h"
#include "exact/solve.h"
#include "support/data_rows.h"

namespace cp {
namespace {

using Digits = std::array<std::uint8_t, kMaxCells>;

// A puzzle of the shape with about this many givens; it need not be proper.
Position scattered(const Shape& shape, std::uint64_t seed, std::uint32_t givens) {
  const FullGrid grid = random_grid(shape, seed);
  Rng rng(seed + 1);
  CellSet cells;
  for (std::uint32_t i = 0; i < givens; ++i) cells.add(Cell(static_cast<int>(rng.below(static_cast<std::uint32_t>(shape.cell_count())))));
  return grid.with_givens(cells);
}

std::set<std::string> forms(const std::vector<Position>& positions) {
  std::set<std::string> texts;
  for (const Position& position : positions) texts.insert(canonical_form(position).text);
  return texts;
}

// Felgenhauer & Jarvis, "Mathematics of Sudoku I" (2006): 2 x 6^8 movements of the cells.
TEST(Transform, GroupOf9x9Has3359232Members) {
  std::set<std::array<std::uint8_t, kMaxSide>> orders;
  for (const auto& order : line_orders(9, 3)) orders.insert(order);
  EXPECT_EQ(orders.size(), 1296U);
  // Different orders of rows, of columns and ways of holding are different movements: corner, first row and first column tell.
  EXPECT_EQ(2 * orders.size() * orders.size(), 3'359'232U);
  EXPECT_EQ(line_orders(4, 2).size(), 8U);
  EXPECT_EQ(line_orders(6, 2).size() * line_orders(6, 3).size(), 3456U);
}

TEST(Transform, EnumeratedMovementsOf4x4Are128AndClosed) {
  const Shape& shape = *find_shape("4x4");
  std::vector<Transform> all;
  for (const bool turned : {false, true}) {
    for (const auto& rows : line_orders(4, 2)) {
      for (const auto& columns : line_orders(4, 2)) {
        Transform one(shape);
        one.transposes = turned;
        one.row_to = rows;
        one.column_to = columns;
        all.push_back(one);
      }
    }
  }
  const auto cells_of = [&](const Transform& transform) {
    std::vector<int> to;
    for (const Cell cell : shape.all_cells()) to.push_back(transform.image(cell).index);
    return to;
  };
  std::set<std::vector<int>> movements;
  for (const Transform& one : all) {
    EXPECT_TRUE(one.is_valid());
    movements.insert(cells_of(one));
  }
  EXPECT_EQ(movements.size(), 128U);
  for (const Transform& one : all) {
    for (const Transform& other : all) EXPECT_EQ(movements.count(cells_of(one.then(other))), 1U);
  }
}

TEST(Transform, ComposesInvertsAndMapsHousesAsItMapsCells) {
  for (const char* name : {"4x4", "6x6", "9x9", "16x16"}) {
    const Shape& shape = *find_shape(name);
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
      const Transform a = Transform::random(shape, 2 * seed);
      const Transform b = Transform::random(shape, 2 * seed + 1);
      ASSERT_TRUE(a.is_valid());
      const Transform both = a.then(b);
      EXPECT_TRUE(both.is_valid());
      EXPECT_EQ(a.then(a.inverse()), Transform(shape));
      EXPECT_EQ(a.inverse().then(a), Transform(shape));
      for (const Cell cell : shape.all_cells()) EXPECT_EQ(both.image(cell), b.image(a.image(cell)));
      for (const Digit digit : shape.digits()) EXPECT_EQ(both.image(digit), b.image(a.image(digit)));
      for (int house = 0; house < shape.house_count(); ++house) EXPECT_EQ(a.image(shape.cells(House(house))), shape.cells(a.image(House(house))));
    }
  }
}

TEST(Transform, CarriesPositionsWithTheirCandidates) {
  Position position = scattered(standard_shape(), 5, 25);
  position.eliminate({position.open().first(), position.candidates(position.open().first()).lowest()});
  const Transform transform = Transform::random(standard_shape(), 9);
  const Position image = transform.image(position);
  EXPECT_TRUE(image.is_consistent());
  EXPECT_EQ(image.candidate_count(), position.candidate_count());
  EXPECT_EQ(transform.inverse().image(image), position);
}

TEST(Transform, SeesWhenItIsNone) {
  Transform swaps_across_bands(standard_shape());
  std::swap(swaps_across_bands.row_to[2], swaps_across_bands.row_to[3]);
  EXPECT_FALSE(swaps_across_bands.is_valid());
  Transform names_twice(standard_shape());
  names_twice.digit_to[0] = 1;
  EXPECT_FALSE(names_twice.is_valid());
  Transform turns(*find_shape("6x6"));
  turns.transposes = true;
  EXPECT_FALSE(turns.is_valid());
}

TEST(CanonicalForm, IsTheSameForAllImagesAndItsTransformLeadsThere) {
  for (const char* name : {"4x4", "6x6", "9x9"}) {
    const Shape& shape = *find_shape(name);
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
      const Position puzzle = scattered(shape, seed, static_cast<std::uint32_t>(seed * 2));
      const CanonicalForm form = canonical_form(puzzle);
      EXPECT_EQ(givens_line(form.transform.image(puzzle)), form.text);
      const CanonicalForm other = canonical_form(Transform::random(shape, seed).image(puzzle));
      EXPECT_EQ(other.text, form.text);
      EXPECT_EQ(other.symmetries, form.symmetries);
      EXPECT_EQ(canonical_form(support::read(form.text)).text, form.text);
    }
  }
}

// Every image of a 9x9 puzzle looked at: where the givens stand as a text of 0 and 1, then the names.
struct EveryImage {
  std::string least_pattern;
  std::string least_text;
  std::uint64_t count = 0;
};

std::string renamed(const Position& puzzle, bool turned, const std::array<std::uint8_t, kMaxSide>& rows, const std::array<std::uint8_t, kMaxSide>& columns) {
  std::string text;
  std::array<char, 16> name{};
  char next = '1';
  for (std::size_t i = 0; i < 81; ++i) {
    const int row = rows[i / 9];
    const int column = columns[i % 9];
    const auto digit = puzzle.digit_at(turned ? Cell(9 * column + row) : Cell(9 * row + column));
    if (digit && name[digit->index] == 0) name[digit->index] = next++;
    text += digit ? name[digit->index] : '.';
  }
  return text;
}

EveryImage look_at_every_image(const Position& puzzle) {
  EveryImage all;
  const auto orders = line_orders(9, 3);
  for (const bool turned : {false, true}) {
    for (const auto& rows : orders) {
      for (const auto& columns : orders) {
        int compared = all.count == 0 ? 1 : 0;
        for (std::size_t i = 0; compared == 0 && i < 81; ++i) {
          const int row = rows[i / 9];
          const int column = columns[i % 9];
          const char mark = puzzle.is_placed(turned ? Cell(9 * column + row) : Cell(9 * row + column)) ? '0' : '1';  // givens first
          compared = all.least_pattern[i] - mark;
        }
        if (compared < 0) continue;
        const std::string text = renamed(puzzle, turned, rows, columns);
        if (compared == 0 && text > all.least_text) continue;
        if (compared == 0 && text == all.least_text) {
          ++all.count;
          continue;
        }
        all.least_text = text;
        all.count = 1;
        all.least_pattern.clear();
        for (const char digit : text) all.least_pattern += digit == '.' ? '1' : '0';
      }
    }
  }
  return all;
}

TEST(CanonicalForm, IsTheLeastOfAll3359232Images) {
  std::vector<Position> puzzles;
  for (const char* name : {"OEIS-A372224", "Escargot", "W-anti-bruteforce"}) puzzles.push_back(support::read(support::published_puzzle(name)));
  puzzles.push_back(support::read("1........2........3......" + std::string(56, '.')));   // a column and empty lines
  puzzles.push_back(scattered(standard_shape(), 3, 6));
  for (const Position& puzzle : puzzles) {
    const EveryImage all = look_at_every_image(puzzle);
    const CanonicalForm form = canonical_form(puzzle);
    EXPECT_EQ(form.text, all.least_text);
    EXPECT_EQ(form.symmetries, all.count);
  }
}

// OEIS A109741 (E. Russell & F. Jarvis): 288 grids of 4x4 fall into 2 classes; it names a member of each. A. S. Gupta's
// counts: 85 632 minimal puzzles fall into 36.
TEST(CanonicalForm, GridsOf4x4FallIntoTwoClasses) {
  const SolutionList grids = solutions(Position(*find_shape("4x4")), 1000);
  ASSERT_EQ(grids.grids.size(), 288U);
  std::vector<Position> positions;
  for (const FullGrid& grid : grids.grids) positions.push_back(grid.to_position());
  EXPECT_EQ(forms(positions), forms({support::read("1234341221434321"), support::read("1234341223414123")}));
  EXPECT_EQ(forms(positions).size(), 2U);
}

// OEIS A291188 (S. Manyama): 49 classes for boxes of 2 by 3. First row and first column in order reach each of them.
TEST(CanonicalForm, GridsOf6x6FallInto49Classes) {
  Position start(*find_shape("6x6"));
  for (int i = 0; i < 6; ++i) start.place(Cell(i), Digit(i));
  std::vector<Position> positions;
  for (const FullGrid& grid : solutions(start, 50'000).grids) {
    const auto first = [&](int row) { return grid.at(grid.shape().cell_at(row, 0)); };
    if (first(2) < first(3) && first(4) < first(5) && first(2) < first(4)) positions.push_back(grid.to_position());
  }
  ASSERT_EQ(positions.size(), 39'168U / 8);
  EXPECT_EQ(forms(positions).size(), 49U);
}

// Fills box 3 of a band whose boxes 1 and 2 are there, columns of the box in order of their first digits.
void complete_band(Digits& band, std::vector<Digits>& bands) {
  std::array<std::vector<std::uint8_t>, 3> missing;
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::uint8_t digit = 1; digit <= 9; ++digit) {
      if (std::find(band.begin() + static_cast<long>(9 * row), band.begin() + static_cast<long>(9 * row + 6), digit) == band.begin() + static_cast<long>(9 * row + 6)) {
        missing[row].push_back(digit);
      }
    }
    if (missing[row].size() != 3) return;
  }
  std::set<std::uint8_t> all;
  for (const auto& row : missing) all.insert(row.begin(), row.end());
  if (all.size() != 9) return;
  do {
    do {
      for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t row = 0; row < 3; ++row) band[9 * row + 6 + i] = missing[row][i];
      }
      bands.push_back(band);
    } while (std::next_permutation(missing[2].begin(), missing[2].end()));
  } while (std::next_permutation(missing[1].begin(), missing[1].end()));
}

// All bands whose box 1 reads 1 to 9, the columns of the other boxes and those boxes in order: 36 288 of them stand for all
// (B. Felgenhauer & F. Jarvis 2006).
std::vector<Digits> bands() {
  std::vector<Digits> found;
  std::array<std::uint8_t, 9> box{1, 2, 3, 4, 5, 6, 7, 8, 9};
  do {
    if (box[0] > box[1] || box[1] > box[2]) continue;
    Digits band{};
    bool fits = true;
    for (std::size_t i = 0; i < 9; ++i) {
      band[9 * (i / 3) + i % 3] = static_cast<std::uint8_t>(i + 1);
      band[9 * (i / 3) + 3 + i % 3] = box[i];
      fits = fits && (box[i] - 1U) / 3 != i / 3;
    }
    if (fits) complete_band(band, found);
  } while (std::next_permutation(box.begin(), box.end()));
  std::erase_if(found, [](const Digits& band) { return band[3] > band[6]; });
  return found;
}

// 36 288 bands fall into 416 classes (B. Felgenhauer & F. Jarvis 2006; E. Russell): every 4th or so would not do, all are asked.
TEST(CanonicalForm, BandsFallInto416Classes) {
  std::set<std::string> texts;
  const auto all = bands();
  EXPECT_EQ(all.size(), 36'288U);
  for (const Digits& band : all) texts.insert(canonical_form(standard_shape(), band).text);
  EXPECT_EQ(texts.size(), 416U);
}

// OEIS A114288 is the lexicographically first full grid of all, so it is its own form.
TEST(CanonicalForm, FirstGridOfAllIsItsOwnForm) {
  const std::string first = "123456789456789123789123456214365897365897214897214365531642978642978531978531642";
  const CanonicalForm form = canonical_form(Transform::random(standard_shape(), 77).image(support::read(first)));
  EXPECT_EQ(form.text, first);
}

// The table of automorphism groups (E. Russell & F. Jarvis, "Mathematics of Sudoku II", 2007) has 648 as the largest order.
TEST(CanonicalForm, MostSymmetricGridHas648Symmetries) {
  const CanonicalForm form = canonical_form(support::read("123456789456789123789123456231564897564897231897231564312645978645978312978312645"));
  EXPECT_EQ(form.symmetries, 648U);
}

TEST(CanonicalForm, TakesBoardsWithHardlyAnyGivens) {
  EXPECT_EQ(canonical_form(Position(standard_shape())).symmetries, 3'359'232U);
  const CanonicalForm one = canonical_form(scattered(standard_shape(), 1, 1));
  EXPECT_EQ(one.text, "1" + std::string(80, '.'));
  EXPECT_EQ(one.symmetries, 3'359'232U / 81);
  EXPECT_FALSE(has_canonical_form(*find_shape("16x16")));
}

}  // namespace
}  // namespace cp
