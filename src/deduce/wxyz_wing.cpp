// SPDX-License-Identifier: Apache-2.0
// WXYZ-wing: four cells with four digits between them. Three of the digits are tied: all cells that can hold such a digit
// lie in one house, so the four cells hold it at most once. The fourth digit, Z, is loose. Were Z nowhere in the four
// cells, three digits would have to fill them; so it is in one of them, and falls wherever all its cells there are seen.
// Cost: every four cells with up to four candidates whose digits stay within four.
// Left out: four cells of which some already are a locked set or an XYZ-wing (k cells with k digits), and four tied digits.
#include <array>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "wxyz-wing";
constexpr int kCells = 4;

class WingSearch {
 public:
  WingSearch(const Position& position, StepSink& sink) : position_(position), sink_(sink) {
    for (const Cell cell : position.open()) {
      const int size = position.candidates(cell).size();
      if (size >= 2 && size <= kCells) cells_.push_back(cell);
    }
  }

  // False when the sink has had enough.
  bool grow(std::size_t from, int size, DigitSet digits) {
    if (size == kCells) return digits.size() != kCells || decide(digits);
    for (std::size_t i = from; i < cells_.size(); ++i) {
      const DigitSet more = digits | position_.candidates(cells_[i]);
      if (more.size() > kCells) continue;
      chosen_[static_cast<std::size_t>(size)] = cells_[i];
      if (size < kCells - 1 && has_smaller_part(size + 1)) continue;
      if (!grow(i + 1, size + 1, more)) return false;
    }
    return true;
  }

 private:
  // Do some of the first cells, the last of them included, have as few digits as cells?
  [[nodiscard]] bool has_smaller_part(int count) const {
    if (deduce::is_weakened(kId, deduce::Guard::kTrueSize)) return false;
    const unsigned last = 1U << (count - 1);
    for (unsigned rest = 0; rest < last; ++rest) {
      const unsigned part = rest | last;
      DigitSet digits;
      for (int i = 0; i < count; ++i) {
        if (((part >> i) & 1U) != 0) digits |= position_.candidates(chosen_[static_cast<std::size_t>(i)]);
      }
      if (std::popcount(part) < kCells && digits.size() <= std::popcount(part)) return true;
    }
    return false;
  }

  bool decide(DigitSet digits) {
    if (has_smaller_part(kCells)) return true;
    CellSet cells;
    for (const Cell cell : chosen_) cells.add(cell);
    DigitSet loose;
    deduce::SumOfSets sum;
    for (const Cell cell : cells) sum.add_base(Constraint::of(cell));
    for (const Digit digit : digits) {
      if (const auto house = deduce::house_around(position_.shape(), position_.places(digit) & cells)) sum.add_cover(*house, digit);
      else loose.add(digit);
    }
    const bool is_wing = loose.size() == 1 || (deduce::is_weakened(kId, deduce::Guard::kSound) && loose.size() == 2);
    if (!is_wing) return true;
    const Digit z = loose.lowest();
    std::vector<Candidate> struck = deduce::seeing_all(position_, z, position_.places(z) & cells);
    if (struck.empty() || !reported_.is_new(struck)) return true;
    return sink_.take(deduce::by_supposing(kId, std::move(struck), {{sum.terms()}}));
  }

  const Position& position_;
  StepSink& sink_;
  std::vector<Cell> cells_;
  std::array<Cell, kCells> chosen_{};
  deduce::Reported reported_;
};

}  // namespace

void wxyz_wing(const Position& position, StepSink& sink) { WingSearch(position, sink).grow(0, 0, {}); }

}  // namespace cp::techniques
