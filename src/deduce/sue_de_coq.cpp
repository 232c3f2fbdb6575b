// SPDX-License-Identifier: Apache-2.0
// Sue de Coq (two-sector disjoint subsets): two or more cells where a line and a box cross have at least two digits too
// many. Some cells of the rest of the line and some of the rest of the box, without a digit in common, make up for it: all
// these cells together have as many digits as cells, and no digit fits twice. So every digit is in its cells of the
// pattern, and falls wherever it sees all of them: in the line, in the box, or in both. Reason: one sum.
// Up to four cells on each side. The cells in the line alone, and those in the box alone, must have more digits than cells
// (or they are a naked subset). Cost: per line and box, all choices of up to four cells on each side.
#include <array>
#include <utility>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/guard.h"
#include "deduce/detail/locked_pattern.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "sue-de-coq";
constexpr int kMostSideCells = 4;

struct Part {
  CellSet cells;
  DigitSet digits;
};

// All choices of `fewest` to `most` of the cells.
std::vector<Part> parts_of(const Position& position, const CellSet& among, int fewest, int most) {
  std::vector<Part> parts = {{}};
  for (const Cell cell : among) {
    const std::size_t before = parts.size();
    for (std::size_t i = 0; i < before; ++i) {
      if (parts[i].cells.size() == most) continue;
      Part larger = parts[i];
      larger.cells.add(cell);
      larger.digits |= position.candidates(cell);
      parts.push_back(larger);
    }
  }
  std::erase_if(parts, [&](const Part& part) { return part.cells.size() < fewest; });
  return parts;
}

class CrossSearch {
 public:
  CrossSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink) {}

  bool look_at(House line, House box) {
    const CellSet open = position_.open();
    const CellSet crossing = position_.shape().cells(line) & position_.shape().cells(box);
    if ((crossing & open).size() < 2) return true;
    const std::vector<Part> middles = parts_of(position_, crossing & open, 2, kMaxSide);
    const std::vector<Part> in_line = side_parts((position_.shape().cells(line) - crossing) & open);
    const std::vector<Part> in_box = side_parts((position_.shape().cells(box) - crossing) & open);
    for (const Part& middle : middles) {
      if (middle.digits.size() >= middle.cells.size() + 2 && !complete(middle, in_line, in_box)) return false;
    }
    return true;
  }

 private:
  [[nodiscard]] std::vector<Part> side_parts(const CellSet& among) const {
    std::vector<Part> parts = parts_of(position_, among, 1, kMostSideCells);
    if (!deduce::is_weakened(kId, deduce::Guard::kTrueSize)) std::erase_if(parts, [](const Part& part) { return part.digits.size() <= part.cells.size(); });
    return parts;
  }

  // By how much the part brings the digits of the middle closer to its cells.
  static int gain(const Part& part, const Part& middle) { return part.cells.size() - (part.digits - middle.digits).size(); }

  bool complete(const Part& middle, const std::vector<Part>& in_line, const std::vector<Part>& in_box) {
    const int missing = middle.digits.size() - middle.cells.size() - (deduce::is_weakened(kId, deduce::Guard::kSound) ? 1 : 0);
    std::vector<const Part*> others;
    for (const Part& part : in_box) {
      if (gain(part, middle) >= 1) others.push_back(&part);
    }
    for (const Part& part : in_line) {
      const int gained = gain(part, middle);
      if (gained < 1) continue;
      for (const Part* other : others) {
        if (gained + gain(*other, middle) == missing && (part.digits & other->digits).is_empty() && !report(middle, part, *other)) return false;
      }
    }
    return true;
  }

  bool report(const Part& middle, const Part& one, const Part& other) {
    const CellSet pattern = middle.cells | one.cells | other.cells;
    std::vector<Cell> cells;
    std::vector<deduce::Need> needs;
    for (const Cell cell : pattern) cells.push_back(cell);
    for (const Digit digit : middle.digits | one.digits | other.digits) needs.push_back({digit, position_.places(digit) & pattern});
    Step step = deduce::locked_pattern_step(kId, position_, cells, needs);
    return step.eliminations.empty() || !reported_.is_new(step.eliminations) || sink_.take(std::move(step));
  }

  const Position& position_;
  StepSink& sink_;
  deduce::Reported reported_;
};

}  // namespace

void sue_de_coq(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  CrossSearch search(position, sink);
  for (int box = 0; box < shape.side(); ++box) {
    for (int line = 0; line < 2 * shape.side(); ++line) {
      if ((shape.cells(House(line)) & shape.cells(shape.box(box))).size() >= 2 && !search.look_at(House(line), shape.box(box))) return;
    }
  }
}

}  // namespace cp::techniques
