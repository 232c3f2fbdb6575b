// SPDX-License-Identifier: Apache-2.0
// Pointing: all places of a digit in a box lie in one row or column. The box needs the digit, so the line has it there
// and nowhere else. Takes two places or more (one is a hidden single). Steps go by box, then digit, rows before
// columns. Costs one intersection for each box, digit and line through the box.
#include "deduce/detail/locked_candidates.h"
#include "deduce/technique.h"

namespace cp::techniques {

void pointing(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  for (int number = 0; number < shape.side(); ++number) {
    const House box = shape.box(number);
    const Cell corner = shape.cells(box).first();
    const int row = shape.row_of(corner);
    const int column = shape.column_of(corner);
    for (const Digit digit : shape.digits()) {
      for (int i = 0; i < shape.box_rows(); ++i) {
        if (!deduce::report_locked("pointing", position, box, shape.row(row + i), digit, sink)) return;
      }
      for (int i = 0; i < shape.box_columns(); ++i) {
        if (!deduce::report_locked("pointing", position, box, shape.column(column + i), digit, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
