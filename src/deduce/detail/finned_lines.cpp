// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/finned_lines.h"

#include <bit>
#include <span>

#include "deduce/detail/guard.h"
#include "deduce/detail/one_digit_links.h"
#include "deduce/detail/tables.h"

namespace cp::deduce {

namespace {

bool has_bit(unsigned mask, int bit) { return ((mask >> bit) & 1U) != 0; }
unsigned run_of_bits(int from, int count) { return ((1U << count) - 1U) << from; }

// One digit, one way round: bases of one direction as masks over the crossing lines.
class FinSearch {
 public:
  FinSearch(std::string_view technique, int size, FinKind kind, const Position& position, Digit digit, bool rows_are_bases, std::span<const Mask> bases, ReportedOnce& reported,
            StepSink& sink)
      : technique_(technique),
        size_(size),
        kind_(kind),
        shape_(position.shape()),
        digit_(digit),
        rows_are_bases_(rows_are_bases),
        box_width_(rows_are_bases ? shape_.box_columns() : shape_.box_rows()),
        box_height_(rows_are_bases ? shape_.box_rows() : shape_.box_columns()),
        bases_(bases),
        reported_(reported),
        sink_(sink) {}

  // Chooses base lines. False when the sink asked to stop.
  bool extend(int from, int depth, unsigned chosen, unsigned used) {
    if (depth == size_) return try_stacks(chosen, used);
    for (int line = from; line < shape_.side(); ++line) {
      const unsigned mask = bases_[static_cast<std::size_t>(line)];
      if (std::popcount(mask) < 2 || std::popcount(used | mask) > size_ + box_width_ - 1) continue;
      if (!extend(line + 1, depth + 1, chosen | (1U << line), used | mask)) return false;
    }
    return true;
  }

 private:
  // The fins lie in crossing lines of one stack of boxes; all crossing lines outside it must be covers.
  bool try_stacks(unsigned chosen, unsigned used) {
    for (int first = 0; first < shape_.side(); first += box_width_) {
      const unsigned outside = used & ~run_of_bits(first, box_width_);
      const unsigned inside = used & run_of_bits(first, box_width_);
      const int wanted = size_ - std::popcount(outside);
      if (wanted < 1 || wanted >= std::popcount(inside)) continue;
      for (unsigned part = inside; part != 0; part = (part - 1) & inside) {
        if (std::popcount(part) == wanted && !try_covers(chosen, outside | part, inside & ~part, part)) return false;
      }
    }
    return true;
  }

  bool try_covers(unsigned chosen, unsigned covers, unsigned fin_lines, unsigned covers_in_stack) {
    unsigned with_fins = 0;
    for (int line = 0; line < shape_.side(); ++line) {
      if (has_bit(chosen, line) && (bases_[static_cast<std::size_t>(line)] & fin_lines) != 0) with_fins |= 1U << line;
    }
    const int top = std::countr_zero(with_fins) / box_height_ * box_height_;
    if ((with_fins & ~run_of_bits(top, box_height_)) != 0 || !is_of_kind(chosen, covers)) return true;
    std::vector<Candidate> eliminations;
    for (int line = 0; line < shape_.side(); ++line) {
      const bool is_weak = is_weakened(technique_, Guard::kSound);
      if (has_bit(chosen, line) || (!has_bit(run_of_bits(top, box_height_), line) && !is_weak)) continue;
      for (int cover = 0; cover < shape_.side(); ++cover) {
        if (has_bit(bases_[static_cast<std::size_t>(line)] & (is_weak ? covers : covers_in_stack), cover)) eliminations.push_back({cell(line, cover), digit_});
      }
    }
    return report(std::move(eliminations), chosen, covers);
  }

  [[nodiscard]] bool is_of_kind(unsigned chosen, unsigned covers) const {
    unsigned once = 0;
    unsigned twice = 0;
    bool is_whole = true;
    for (int line = 0; line < shape_.side(); ++line) {
      if (!has_bit(chosen, line)) continue;
      const unsigned kept = bases_[static_cast<std::size_t>(line)] & covers;
      if (kept == 0) return false;
      is_whole = is_whole && std::popcount(kept) >= 2;
      twice |= once & kept;
      once |= kept;
    }
    is_whole = is_whole && twice == covers;
    if (is_weakened(technique_, Guard::kTrueSize)) return once == covers;
    return once == covers && is_whole == (kind_ == FinKind::kFinned);
  }

  bool report(std::vector<Candidate> eliminations, unsigned chosen, unsigned covers) {
    tidy(eliminations);
    if (!reported_.is_new(eliminations)) return true;
    Facts base_facts;
    Facts cover_facts;
    for (int line = 0; line < shape_.side(); ++line) {
      if (has_bit(chosen, line)) base_facts.push_back(Constraint::of(rows_are_bases_ ? shape_.row(line) : shape_.column(line), digit_));
      if (has_bit(covers, line)) cover_facts.push_back(Constraint::of(rows_are_bases_ ? shape_.column(line) : shape_.row(line), digit_));
    }
    return sink_.take(by_supposing(technique_, std::move(eliminations), {sum_of(base_facts, cover_facts)}));
  }

  [[nodiscard]] Cell cell(int base, int cover) const { return rows_are_bases_ ? shape_.cell_at(base, cover) : shape_.cell_at(cover, base); }

  std::string_view technique_;
  int size_;
  FinKind kind_;
  const Shape& shape_;
  Digit digit_;
  bool rows_are_bases_;
  int box_width_;   // crossing lines in a box
  int box_height_;  // base lines in a box
  std::span<const Mask> bases_;
  ReportedOnce& reported_;
  StepSink& sink_;
};

}  // namespace

void find_finned_fish(std::string_view technique, int size, FinKind kind, const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  const auto side = static_cast<std::size_t>(shape.side());
  ReportedOnce reported;
  for (const Digit digit : shape.digits()) {
    const DigitTable table(position, digit);
    const std::span<const Mask> rows(table.columns_of.data(), side);
    const std::span<const Mask> columns(table.rows_of.data(), side);
    if (!FinSearch(technique, size, kind, position, digit, true, rows, reported, sink).extend(0, 0, 0, 0)) return;
    if (!FinSearch(technique, size, kind, position, digit, false, columns, reported, sink).extend(0, 0, 0, 0)) return;
  }
}

}  // namespace cp::deduce
