// SPDX-License-Identifier: Apache-2.0
// Law of leftovers: a line and a box that cross hold the same digits, so the cells of the line outside the box and those of
// the box outside the line hold the same digits, too. Take some digits N, placed in neither house. On one side, Y are the
// cells that can hold digits of N only; on the other, X are the cells that can hold any digit of N. When X and Y are equally
// many, N is just so often on both sides: N leaves the rest of the side of Y, and everything else leaves X.
// Reason: one sum; N in one house against N in the other, the cells X against the cells Y.
// One line against one box; two against two in a band of three leave over the same cells. Y is not empty and has fewer cells
// than N has digits (or it is a naked subset). N leaves out at least two of the digits that are placed in neither house: for
// one digit alone, or all but one, this is pointing or claiming; so it is when Y is a whole side. On shapes up to 9x9.
// Cost: all sets of digits, for every line and box that cross. Equal conclusions once, by the fewest digits.
#include <array>
#include <bit>
#include <utility>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "law-of-leftovers";
constexpr int kLargestSide = 9;

class LeftoverSearch {
 public:
  LeftoverSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink) {}

  // X outside the second house, Y outside the first; sets of `size` digits.
  bool weigh(House x_house, House y_house, int size) {
    const Shape& shape = position_.shape();
    const CellSet x_side = (shape.cells(x_house) - shape.cells(y_house)) & position_.open();
    const CellSet y_side = (shape.cells(y_house) - shape.cells(x_house)) & position_.open();
    DigitSet left;
    for (const Digit digit : shape.digits()) {
      if (!position_.is_placed_in(x_house, digit) && !position_.is_placed_in(y_house, digit)) left.add(digit);
    }
    const int most = left.size() - (deduce::is_weakened(kId, deduce::Guard::kTrueSize) ? 1 : 2);
    if (size > most) return true;
    for (unsigned bits = 1; bits <= left.bits(); ++bits) {
      const DigitSet digits(bits);
      if (digits.size() == size && digits.is_subset_of(left) && !look_at(x_house, y_house, x_side, y_side, digits)) return false;
    }
    return true;
  }

 private:
  bool look_at(House x_house, House y_house, const CellSet& x_side, const CellSet& y_side, DigitSet digits) {
    CellSet x, y;
    int balance = deduce::is_weakened(kId, deduce::Guard::kSound) ? 1 : 0;
    for (const Cell cell : y_side) {
      if (position_.candidates(cell).is_subset_of(digits)) y.add(cell);
    }
    const bool is_large = (y.size() >= digits.size() || y == y_side) && !deduce::is_weakened(kId, deduce::Guard::kTrueSize);
    if (y.is_empty() || is_large) return true;
    balance += y.size();
    for (const Cell cell : x_side) {
      if ((position_.candidates(cell) & digits).is_empty()) continue;
      x.add(cell);
      if (--balance < 0) return true;
    }
    if (balance != 0) return true;
    std::vector<Candidate> struck;
    for (const Cell cell : y_side - y) {
      for (const Digit digit : position_.candidates(cell) & digits) struck.push_back({cell, digit});
    }
    for (const Cell cell : x) {
      for (const Digit digit : position_.candidates(cell) - digits) struck.push_back({cell, digit});
    }
    deduce::tidy(struck);
    if (struck.empty() || !reported_.is_new(struck)) return true;
    deduce::SumOfSets sum;
    for (const Cell cell : x) sum.add_cover(cell);
    for (const Cell cell : y) sum.add_base(Constraint::of(cell));
    for (const Digit digit : digits) {
      sum.add_base(Constraint::of(x_house, digit));
      sum.add_cover(y_house, digit);
    }
    return sink_.take({kId, {}, std::move(struck), LinearReason{sum.terms()}});
  }

  const Position& position_;
  StepSink& sink_;
  deduce::Reported reported_;
};

}  // namespace

void law_of_leftovers(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  if (shape.side() > kLargestSide) return;
  LeftoverSearch search(position, sink);
  for (int size = 2; size < shape.side(); ++size) {
    for (int box = 0; box < shape.side(); ++box) {
      for (int line = 0; line < 2 * shape.side(); ++line) {
        if (!shape.cells(shape.box(box)).meets(shape.cells(House(line)))) continue;
        if (!search.weigh(House(line), shape.box(box), size) || !search.weigh(shape.box(box), House(line), size)) return;
      }
    }
  }
}

}  // namespace cp::techniques
