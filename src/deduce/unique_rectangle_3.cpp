// SPDX-License-Identifier: Apache-2.0
// Unique rectangle, type 3: four open cells in two rows, two columns and two boxes, all with the same two candidates; two
// of them in a line (the roof) have extras, the others nothing else. One roof cell holds an extra, or the pair could be
// exchanged (a second solution). So the roof counts as one cell with the extras as its candidates: together with
// up to three further open cells of a house that holds the roof it may be a naked subset (as many digits as cells),
// and these digits leave the rest of the house, the roof aside.
//
// True sizes: no smaller such subset inside, and no naked subset among the further cells; a roof with one extra digit is
// type 2. Costs a search for tight groups for each roof. It does not find subsets with more than three further
// cells, nor the same thing told by hidden digits. Each set of eliminations once, small subsets first in a house.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/tight_groups.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "unique-rectangle-3";

// The roof as member 0, then the other open cells of a house.
struct RoofTable {
  RoofTable(const Position& position, House house, const CellSet& roof, DigitSet extras) : masks{extras.bits()}, cells(1) {
    for (const Cell cell : (position.shape().cells(house) & position.open()) - roof) {
      masks.push_back(position.candidates(cell).bits());
      cells.push_back(cell);
    }
  }
  std::vector<Mask> masks;
  std::vector<Cell> cells;
};

// The further cells of the subset have no room for a digit of it that is struck out elsewhere, unless the roof gives up
// its extras: then the pattern is broken.
Step roof_subset(const Position& position, const DeadlyRectangle& rectangle, const CellSet& roof, House house, const CellSet& further, DigitSet digits) {
  Facts bases;
  Facts covers;
  for (const Cell cell : further) bases.push_back(Constraint::of(cell));
  for (const Digit digit : digits) covers.push_back(Constraint::of(house, digit));
  return by_supposing(kId, candidates_of(position, position.shape().cells(house) - roof - further, digits), {sum_of(bases, covers), pattern_line()},
                      {pattern_of(rectangle.cells(), rectangle.pair)});
}

bool report_subsets(const Position& position, const DeadlyRectangle& rectangle, const CellSet& roof, House house, OnceEach& once) {
  const RoofTable table(position, house, roof, rectangle.all_extras());
  bool goes_on = true;
  for (int size = 2; size <= tight::kLargest && goes_on; ++size) {
    for_each_tight_group(table.masks, size, kId, [&](const TightGroup& group) {
      if ((group.members & 1U) == 0) return false;  // groups without the roof come last
      CellSet further;
      for (std::size_t i = 1; i < table.cells.size(); ++i) {
        if (((group.members >> i) & 1U) != 0) further.add(table.cells[i]);
      }
      goes_on = once.take(roof_subset(position, rectangle, roof, house, further, DigitSet(group.bits)));
      return goes_on;
    });
  }
  return goes_on;
}

}  // namespace

void unique_rectangle_3(const Position& position, StepSink& sink) {
  OnceEach once(sink);
  for_each_roof(position, [&](const DeadlyRectangle& rectangle, const std::array<Cell, 2>& roof) {
    for (const House house : shared_houses(position.shape(), roof[0], roof[1])) {
      if (!report_subsets(position, rectangle, CellSet::of(roof[0]) | CellSet::of(roof[1]), house, once)) return false;
    }
    return true;
  });
}

}  // namespace cp::techniques
