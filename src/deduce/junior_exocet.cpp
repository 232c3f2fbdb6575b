// SPDX-License-Identifier: Apache-2.0
// Junior exocet. Two base cells in one box and one line (its base line) have three or four digits between them. Two target
// cells lie in two other boxes of the same band, off the base line; the cells beside them in their cross lines, within the
// band and off the base line, can hold no base digit. A third cross line runs through the base box, beside the base cells.
// Outside the band, each base digit has places in at most two of the lines parallel to the base line, in these three
// cross lines. Whatever digit is true in the base is gone from the base box and the base line, so it needs three places in
// the cross lines, only two of them outside the band: it is in a target. Two base digits are true, so the two targets hold
// just them, and lose every digit that is not a base digit. Reason: a target's other digit supposed, cases for the
// two base cells, and in each one sum over the cross lines.
// The plain form only: single target cells, no further eliminations in base, targets' mirror cells or cross lines. Bands
// need three boxes and boxes three cross lines, so there is none on 4x4 and 6x6. Cost: small; all base pairs and targets.
#include <array>
#include <utility>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "junior-exocet";

// The grid seen along the base lines: rows, or columns turned round.
class ExocetSearch {
 public:
  ExocetSearch(const Position& position, bool in_rows, StepSink& sink)
      : position_(position),
        shape_(position.shape()),
        in_rows_(in_rows),
        depth_(in_rows ? shape_.box_rows() : shape_.box_columns()),
        width_(in_rows ? shape_.box_columns() : shape_.box_rows()),
        sink_(sink) {}

  bool run() {
    for (int line = 0; line < shape_.side(); ++line) {
      for (int one = 0; one < shape_.side(); ++one) {
        for (int other = one + 1; other / width_ == one / width_; ++other) {
          if (!look_at_base(line, one, other)) return false;
        }
      }
    }
    return true;
  }

 private:
  struct Target {
    int line;
    int cross;
  };

  [[nodiscard]] Cell cell_at(int line, int cross) const { return in_rows_ ? shape_.cell_at(line, cross) : shape_.cell_at(cross, line); }
  [[nodiscard]] House line_house(int line) const { return in_rows_ ? shape_.row(line) : shape_.column(line); }
  [[nodiscard]] House cross_house(int cross) const { return in_rows_ ? shape_.column(cross) : shape_.row(cross); }
  [[nodiscard]] bool is_open(Cell cell) const { return !position_.is_placed(cell); }

  bool look_at_base(int line, int one, int other) {
    const std::array<Cell, 2> base = {cell_at(line, one), cell_at(line, other)};
    if (!is_open(base[0]) || !is_open(base[1])) return true;
    const DigitSet digits = position_.candidates(base[0]) | position_.candidates(base[1]);
    const int fewest = deduce::is_weakened(kId, deduce::Guard::kTrueSize) ? 2 : 3;
    if (digits.size() < fewest || digits.size() > 4) return true;
    std::vector<Target> targets;
    for (int cross = 0; cross < shape_.side(); ++cross) {
      if (cross / width_ != one / width_) add_target(line, cross, digits, targets);
    }
    for (int third = one / width_ * width_; third / width_ == one / width_; ++third) {
      if (third == one || third == other) continue;
      for (std::size_t j = 0; j < targets.size(); ++j) {
        for (std::size_t i = 0; i < j; ++i) {
          if (targets[i].cross / width_ != targets[j].cross / width_ && !look_at(base, digits, third, targets[i], targets[j])) return false;
        }
      }
    }
    return true;
  }

  // The open cells of a cross line that may be a target: in the band, off the base line, no base digit beside them.
  void add_target(int base_line, int cross, DigitSet digits, std::vector<Target>& targets) const {
    const int first = base_line / depth_ * depth_;
    for (int line = first; line < first + depth_; ++line) {
      bool may_be = line != base_line && is_open(cell_at(line, cross));
      for (int beside = first; beside < first + depth_; ++beside) {
        if (beside != line && beside != base_line) may_be = may_be && (position_.candidates(cell_at(beside, cross)) & digits).is_empty();
      }
      if (may_be) targets.push_back({line, cross});
    }
  }

  // The parallel lines outside the band that have the digit, placed or possible, in one of the cross lines.
  [[nodiscard]] std::vector<House> lines_with(Digit digit, int band, const std::array<int, 3>& crosses) const {
    std::vector<House> lines;
    for (int line = 0; line < shape_.side(); ++line) {
      bool has_digit = false;
      for (const int cross : crosses) has_digit = has_digit || position_.candidates(cell_at(line, cross)).has(digit);
      if (line / depth_ != band && has_digit) lines.push_back(line_house(line));
    }
    return lines;
  }

  bool look_at(const std::array<Cell, 2>& base, DigitSet digits, int third, Target one, Target other) {
    const std::array<int, 3> crosses = {third, one.cross, other.cross};
    const std::size_t most_lines = deduce::is_weakened(kId, deduce::Guard::kSound) ? 3 : 2;
    std::array<std::vector<House>, kMaxSide> lines;
    for (const Digit digit : digits) {
      lines[digit.index] = lines_with(digit, one.line / depth_, crosses);
      if (lines[digit.index].size() > most_lines) return true;
    }
    const std::array<Cell, 2> targets = {cell_at(one.line, one.cross), cell_at(other.line, other.cross)};
    std::vector<Candidate> struck;
    for (const Cell target : targets) {
      for (const Digit digit : position_.candidates(target) - digits) struck.push_back({target, digit});
    }
    deduce::tidy(struck);
    if (struck.empty() || !reported_.is_new(struck)) return true;
    Argument argument{{}, Constraint::of(base[0]), {}};
    for (const Digit first : position_.candidates(base[0])) {
      Argument inner{{}, Constraint::of(base[1]), {}};
      for (const Digit second : position_.candidates(base[1]) - DigitSet::of(first)) {
        deduce::SumOfSets sum;
        for (const Digit digit : {first, second}) {
          for (const int cross : crosses) sum.add_base(Constraint::of(cross_house(cross), digit));
          for (const House line : lines[digit.index]) sum.add_cover(line, digit);
        }
        for (const Cell target : targets) sum.add_cover(target);
        inner.cases.push_back({{{sum.terms()}}, {}, {}});
      }
      argument.cases.push_back(std::move(inner));
    }
    return sink_.take({kId, {}, std::move(struck), ArgumentReason{true, {}, std::move(argument)}});
  }

  const Position& position_;
  const Shape& shape_;
  bool in_rows_;
  int depth_;  // lines in a band
  int width_;  // cross lines in a box
  StepSink& sink_;
  deduce::Reported reported_;
};

}  // namespace

void junior_exocet(const Position& position, StepSink& sink) {
  if (ExocetSearch(position, true, sink).run()) ExocetSearch(position, false, sink).run();
}

}  // namespace cp::techniques
