// SPDX-License-Identifier: Apache-2.0
// Claiming: all places of a digit in a row or column lie in one box. The line needs the digit, so the box has it there
// and nowhere else. Takes two places or more (one is a hidden single). Steps go by row, then column, then digit.
// Costs one intersection for each line, digit and box on the line.
#include "deduce/detail/locked_candidates.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

// The boxes a line runs through, in reading order.
std::vector<House> boxes_on(const Shape& shape, House line) {
  std::vector<House> boxes;
  for (const Cell cell : shape.cells(line)) {
    const House box = shape.box(shape.box_of(cell));
    if (boxes.empty() || boxes.back() != box) boxes.push_back(box);
  }
  return boxes;
}

}  // namespace

void claiming(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  for (int number = 0; number < 2 * shape.side(); ++number) {
    const House line(number);  // the rows, then the columns
    const std::vector<House> boxes = boxes_on(shape, line);
    for (const Digit digit : shape.digits()) {
      for (const House box : boxes) {
        if (!deduce::report_locked("claiming", position, line, box, digit, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
