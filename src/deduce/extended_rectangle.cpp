// SPDX-License-Identifier: Apache-2.0
// Extended rectangle: two lines of a band (or stack), crossed in three boxes, six open cells with the same three digits,
// at least two of them in each. If the six held only these, each line would hold all three, and the two lines could be
// exchanged there: every house keeps its digits (a second solution). So
// - if one cell alone has extras, the three digits leave it;
// - if the extras are one digit only, it leaves every cell that sees all cells with it.
//
// Costs a look at each two lines and three crossing lines (486 on 9x9) and at up to ten sets of digits. It needs three boxes
// side by side: none on 4x4, two columns and three bands on 6x6. It does not find patterns of more than three
// digits, nor extras in the manner of types 3 and 4 of the unique rectangle. Each set of eliminations once.
#include "deduce/detail/deadly_rectangles.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

namespace {

constexpr std::string_view kId = "extended-rectangle";

using Six = std::array<Cell, 6>;  // three pairs, one pair a box

// Sets of three digits that leave extras in one cell, or one digit as extras.
std::vector<DigitSet> triples_for(const Position& position, const Six& cells) {
  std::vector<DigitSet> triples;
  DigitSet all;
  for (std::size_t i = 0; i < 6; ++i) {
    DigitSet others;
    for (std::size_t k = 0; k < 6; ++k) others |= k == i ? DigitSet() : position.candidates(cells[k]);
    if (others.size() == 3) triples.push_back(others);
    all |= position.candidates(cells[i]);
  }
  if (all.size() != 4) return triples;
  for (const Digit extra : all) triples.push_back(all - DigitSet::of(extra));
  return triples;
}

bool report_six(const Position& position, const Six& cells, OnceEach& once) {
  const int most_rich = is_weakened(kId, Guard::kSound) ? 2 : 1;
  CellSet six;
  for (const Cell cell : cells) six.add(cell);
  if (six.meets(position.placed())) return true;
  for (const DigitSet triple : triples_for(position, cells)) {
    CellSet rich;
    DigitSet extras;
    bool fits = true;
    for (const Cell cell : cells) {
      const DigitSet more = position.candidates(cell) - triple;
      if (!more.is_empty()) rich.add(cell);
      extras |= more;
      fits = fits && (position.candidates(cell) & triple).size() >= 2;
    }
    if (!fits || rich.is_empty()) continue;
    const bool is_lone = rich.size() <= most_rich;
    if (!is_lone && extras.size() != 1) continue;
    const CellSet struck = is_lone ? CellSet::of(rich.first()) : position.shape().common_peers(rich);
    if (!once.take(by_supposing(kId, candidates_of(position, struck, is_lone ? triple : extras), {pattern_line()}, {pattern_of(six, triple)}))) return false;
  }
  return true;
}

// Two lines of one chute and the crossing lines of three chutes; rows first, then columns.
template <typename Visit>
void for_each_six(const Shape& shape, Visit visit) {
  for (const bool rows : {true, false}) {
    const auto at = [&](int line, int crossing) { return rows ? shape.cell_at(line, crossing) : shape.cell_at(crossing, line); };
    const int width = rows ? shape.box_rows() : shape.box_columns();
    const int length = rows ? shape.box_columns() : shape.box_rows();
    for (int line = 0; line < shape.side(); ++line) {
      for (int other = line + 1; other / width == line / width; ++other) {
        for (int a = 0; a < shape.side(); ++a) {
          for (int b = (a / length + 1) * length; b < shape.side(); ++b) {
            for (int c = (b / length + 1) * length; c < shape.side(); ++c) {
              if (!visit(Six{at(line, a), at(other, a), at(line, b), at(other, b), at(line, c), at(other, c)})) return;
            }
          }
        }
      }
    }
  }
}

}  // namespace

void extended_rectangle(const Position& position, StepSink& sink) {
  OnceEach once(sink);
  for_each_six(position.shape(), [&](const Six& cells) { return report_six(position, cells, once); });
}

}  // namespace cp::techniques
