// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/locked_sets.h"

#include <utility>

#include "deduce/detail/tables.h"
#include "deduce/detail/tight_groups.h"

namespace cp::deduce {

namespace {

bool has_bit(Mask mask, int bit) { return ((mask >> bit) & 1U) != 0; }

// The facts for the cells of a house table, and for digits in the house, with the sign the reason needs.
LinearReason subset_reason(const HouseTable& table, House house, Mask cells, Mask digits, int cell_sign) {
  LinearReason reason;
  const auto add_cells = [&] {
    for (int i = 0; i < table.cell_count; ++i) {
      if (has_bit(cells, i)) reason.terms.push_back({Constraint::of(table.cells[static_cast<std::size_t>(i)]), cell_sign});
    }
  };
  if (cell_sign < 0) add_cells();
  for (const Digit digit : DigitSet(digits)) reason.terms.push_back({Constraint::of(house, digit), -cell_sign});
  if (cell_sign > 0) add_cells();
  return reason;
}

// The candidates with one of `digits` in the cells of the table that `cells` names.
std::vector<Candidate> candidates_in(const HouseTable& table, Mask cells, Mask digits) {
  std::vector<Candidate> found;
  for (int i = 0; i < table.cell_count; ++i) {
    const auto index = static_cast<std::size_t>(i);
    if (!has_bit(cells, i)) continue;
    for (const Digit digit : DigitSet(static_cast<Mask>(table.digits_of[index] & digits))) found.push_back({table.cells[index], digit});
  }
  return found;
}

// One way round: lines of one direction as bases, given by their masks over the crossing lines.
struct FishSearch {
  std::string_view technique;
  int size;
  Digit digit;
  const Shape& shape;
  bool rows_are_bases;
  std::span<const Mask> bases;   // per base line: crossing lines with a place
  std::span<const Mask> covers;  // per cover line: base lines with a place

  [[nodiscard]] House base(int line) const { return rows_are_bases ? shape.row(line) : shape.column(line); }
  [[nodiscard]] House cover(int line) const { return rows_are_bases ? shape.column(line) : shape.row(line); }
  [[nodiscard]] Cell cell(int base_line, int cover_line) const {
    return rows_are_bases ? shape.cell_at(base_line, cover_line) : shape.cell_at(cover_line, base_line);
  }

  [[nodiscard]] CellSet struck_cells(const TightGroup& group) const {
    CellSet cells;
    for (int line = 0; line < shape.side(); ++line) {
      if (!has_bit(group.bits, line)) continue;
      for (int other = 0; other < shape.side(); ++other) {
        if (has_bit(covers[static_cast<std::size_t>(line)], other) && !has_bit(group.members, other)) cells.add(cell(other, line));
      }
    }
    return cells;
  }

  bool report(const TightGroup& group, StepSink& sink) const {
    Step step;
    for (const Cell struck : struck_cells(group)) step.eliminations.push_back({struck, digit});
    if (step.eliminations.empty()) return true;
    LinearReason reason;
    for (int line = 0; line < shape.side(); ++line) {
      if (has_bit(group.members, line)) reason.terms.push_back({Constraint::of(base(line), digit), -1});
    }
    for (int line = 0; line < shape.side(); ++line) {
      if (has_bit(group.bits, line)) reason.terms.push_back({Constraint::of(cover(line), digit), 1});
    }
    step.technique = technique;
    step.reason = std::move(reason);
    return sink.take(std::move(step));
  }

  bool run(StepSink& sink) const {
    return for_each_tight_group(bases, size, technique, [&](const TightGroup& group) { return report(group, sink); });
  }
};

}  // namespace

void find_naked_subsets(std::string_view technique, int size, const Position& position, StepSink& sink) {
  for (const House house : houses_in_order(position.shape())) {
    const HouseTable table(position, house);
    if (table.cell_count <= size) continue;
    const std::span<const Mask> masks(table.digits_of.data(), static_cast<std::size_t>(table.cell_count));
    const bool go_on = for_each_tight_group(masks, size, technique, [&](const TightGroup& group) {
      Step step;
      step.eliminations = candidates_in(table, static_cast<Mask>(~group.members), group.bits);
      if (step.eliminations.empty()) return true;
      step.technique = technique;
      step.reason = subset_reason(table, house, group.members, group.bits, -1);
      return sink.take(std::move(step));
    });
    if (!go_on) return;
  }
}

void find_hidden_subsets(std::string_view technique, int size, const Position& position, StepSink& sink) {
  for (const House house : houses_in_order(position.shape())) {
    const HouseTable table(position, house);
    if (table.cell_count <= size) continue;
    const std::span<const Mask> masks(table.cells_of.data(), static_cast<std::size_t>(position.shape().side()));
    const bool go_on = for_each_tight_group(masks, size, technique, [&](const TightGroup& group) {
      Step step;
      step.eliminations = candidates_in(table, group.bits, static_cast<Mask>(~group.members));
      if (step.eliminations.empty()) return true;
      step.technique = technique;
      step.reason = subset_reason(table, house, group.bits, group.members, 1);
      return sink.take(std::move(step));
    });
    if (!go_on) return;
  }
}

void find_fish(std::string_view technique, int size, const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  const auto side = static_cast<std::size_t>(shape.side());
  for (const Digit digit : shape.digits()) {
    const DigitTable table(position, digit);
    const std::span<const Mask> rows(table.columns_of.data(), side);
    const std::span<const Mask> columns(table.rows_of.data(), side);
    if (!FishSearch{technique, size, digit, shape, true, rows, columns}.run(sink)) return;
    if (!FishSearch{technique, size, digit, shape, false, columns, rows}.run(sink)) return;
  }
}

}  // namespace cp::deduce
