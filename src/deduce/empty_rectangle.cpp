// SPDX-License-Identifier: Apache-2.0
// Empty rectangle: all places of a digit in a box lie in one of its rows and one of its columns, some in each alone, so the rest
// of the box is empty. A line outside has two places for the digit, one of them in line with an arm of this cross. The
// candidate in line with the other place and the other arm falls: if it were true, both the arm it sees and, through the line, the other arm
// would be empty. Costs a look at each box with each such line. It does not look for chains longer than one line; a box
// with all places in one arm is left to pointing.
#include "deduce/detail/guard.h"
#include "deduce/detail/one_digit_links.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "empty-rectangle";

// The arms of a box: its places lie in `arm` and `other_arm`, a row and a column or a column and a row.
struct Cross {
  House box;
  House arm;
  House other_arm;
};

// Does every place lie on the cross, with some on each arm alone?
bool is_cross(const Position& position, Digit digit, const Cross& cross) {
  const Shape& shape = position.shape();
  const CellSet places = position.places(cross.box, digit);
  const int allowed = deduce::is_weakened(kId, deduce::Guard::kSound) ? 1 : 0;
  const CellSet on_arm = places & shape.cells(cross.arm);
  const CellSet on_other = places & shape.cells(cross.other_arm);
  if ((places - on_arm - on_other).size() > allowed) return false;
  if (deduce::is_weakened(kId, deduce::Guard::kTrueSize)) return true;
  return !(on_arm - on_other).is_empty() && !(on_other - on_arm).is_empty();
}

// Strong links that run across the arm, and the cell where the line's other end meets the other arm.
bool follow(const Position& position, Digit digit, const Cross& cross, const std::vector<deduce::StrongLink>& links, deduce::ReportedOnce& reported, StepSink& sink) {
  const Shape& shape = position.shape();
  const bool arm_is_row = shape.kind(cross.arm) == HouseKind::kRow;
  for (const deduce::StrongLink& link : links) {
    if (shape.kind(link.house) != shape.kind(cross.other_arm) || shape.cells(link.house).meets(shape.cells(cross.box))) continue;
    for (const Cell near : {link.first, link.second}) {
      const Cell far = link.other(near);
      if (!shape.cells(cross.arm).has(near)) continue;
      const Cell target = arm_is_row ? shape.cell_at(shape.row_of(far), shape.number(cross.other_arm)) : shape.cell_at(shape.number(cross.other_arm), shape.column_of(far));
      if (shape.cells(cross.box).has(target) || !position.places(digit).has(target)) continue;
      if (!reported.is_new({{target, digit}})) continue;
      const std::vector<Line> lines = {deduce::lone(Constraint::of(link.house, digit)), deduce::lone(Constraint::of(cross.box, digit))};
      if (!sink.take(deduce::by_supposing(kId, {{target, digit}}, lines))) return false;
    }
  }
  return true;
}

}  // namespace

void empty_rectangle(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  deduce::ReportedOnce reported;
  for (const Digit digit : shape.digits()) {
    const std::vector<deduce::StrongLink> links = deduce::strong_links(position, digit);
    for (int number = 0; number < shape.side() && !links.empty(); ++number) {
      const House box = shape.box(number);
      if (position.places(box, digit).size() < 2) continue;
      const Cell corner = shape.cells(box).first();
      for (int i = 0; i < shape.box_rows() * shape.box_columns(); ++i) {
        const House row = shape.row(shape.row_of(corner) + i / shape.box_columns());
        const House column = shape.column(shape.column_of(corner) + i % shape.box_columns());
        if (!is_cross(position, digit, {box, row, column})) continue;
        if (!follow(position, digit, {box, row, column}, links, reported, sink)) return;
        if (!follow(position, digit, {box, column, row}, links, reported, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
