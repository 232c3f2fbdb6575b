// SPDX-License-Identifier: Apache-2.0
// Two-string kite: a row and a column in which a digit has two places each; one place of the row and another of the
// column stand in the same box, the other two (the ends) outside it. The box holds the digit once, so one end at least
// is true: the digit leaves every cell that sees both, as a rule the one where the strings' far ends cross. Costs a look at
// each such row with each such column. It does not look at strings that meet in one cell.
#include "deduce/detail/one_digit_links.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "two-string-kite";

bool look_at(const Position& position, Digit digit, const deduce::StrongLink& row, const deduce::StrongLink& column, deduce::ReportedOnce& reported, StepSink& sink) {
  const Shape& shape = position.shape();
  for (const Cell in_row : {row.first, row.second}) {
    for (const Cell in_column : {column.first, column.second}) {
      const int box = shape.box_of(in_row);
      const Cell row_end = row.other(in_row);
      const Cell column_end = column.other(in_column);
      if (in_row == in_column || shape.box_of(in_column) != box) continue;
      if (shape.box_of(row_end) == box || shape.box_of(column_end) == box) continue;
      if (!deduce::report_ends(kId, position, digit, row_end, column_end, {row.house, column.house}, reported, sink)) return false;
    }
  }
  return true;
}

}  // namespace

void two_string_kite(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  deduce::ReportedOnce reported;
  for (const Digit digit : shape.digits()) {
    const std::vector<deduce::StrongLink> links = deduce::strong_links(position, digit);
    for (const deduce::StrongLink& row : links) {
      if (shape.kind(row.house) != HouseKind::kRow) continue;
      for (const deduce::StrongLink& column : links) {
        if (shape.kind(column.house) != HouseKind::kColumn) continue;
        if (!look_at(position, digit, row, column, reported, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
