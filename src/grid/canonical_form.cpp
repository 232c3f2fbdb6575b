// SPDX-License-Identifier: Apache-2.0
#include "grid/canonical_form.h"

#include <algorithm>
#include <cassert>

#include "grid/detail/least_digits.h"

namespace cp {

namespace {

using Digits = std::array<std::uint8_t, kMaxCells>;
using Order = std::array<std::uint8_t, kMaxSide>;

constexpr int kFastSide = 9;      // with the boxes three by three: the search of detail/
constexpr int kMostTrialSide = 6; // here all images are looked at

// The transform that takes row `rows[i]` to row i, and so on, and names the digits in the order of their appearance.
Transform gather(const Shape& shape, const Digits& digits, bool turned, const std::uint8_t* rows, const std::uint8_t* columns) {
  const auto side = static_cast<std::uint8_t>(shape.side());
  Transform transform(shape);
  transform.transposes = turned;
  for (std::uint8_t i = 0; i < side; ++i) {
    transform.row_to[rows[i]] = i;
    transform.column_to[columns[i]] = i;
  }
  DigitSet named;
  std::uint8_t next = 0;
  const auto name = [&](Digit digit) {
    if (named.has(digit)) return;
    named.add(digit);
    transform.digit_to[digit.index] = next++;
  };
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column) {
      const Cell from = turned ? shape.cell_at(columns[column], rows[row]) : shape.cell_at(rows[row], columns[column]);
      if (digits[from.index] != 0) name(Digit(digits[from.index] - 1));
    }
  }
  for (const Digit digit : shape.digits()) name(digit);  // those that do not appear come last
  return transform;
}

std::string image_line(const Shape& shape, const Digits& digits, const Transform& transform) {
  std::string text(static_cast<std::size_t>(shape.cell_count()), '.');
  for (const Cell cell : shape.all_cells()) {
    const int digit = digits[cell.index];
    if (digit != 0) text[transform.image(cell).index] = Shape::name_of(transform.image(Digit(digit - 1)));
  }
  return text;
}

CanonicalForm by_search(const Shape& shape, const Digits& digits) {
  const detail::BothWays board = detail::both_ways(digits.data());
  const detail::LeastPattern pattern = detail::least_pattern(board);
  const detail::LeastDigits least = detail::least_digits(board, pattern);
  const Transform transform = gather(shape, digits, least.turned != 0, least.rows.data(), least.columns.data());
  return {image_line(shape, digits, transform), transform, least.count};
}

// All images, one after the other.
class Trial {
 public:
  Trial(const Shape& shape, const Digits& digits) : shape_(shape), side_(static_cast<std::size_t>(shape.side())), digits_(digits) {
    givens_ = static_cast<std::size_t>(std::count_if(digits.begin(), digits.end(), [](std::uint8_t digit) { return digit != 0; }));
  }

  CanonicalForm run() {
    const auto row_orders = line_orders(shape_.side(), shape_.box_rows());
    const auto column_orders = line_orders(shape_.side(), shape_.box_columns());
    for (const bool turned : {false, true}) {
      if (turned && shape_.box_rows() != shape_.box_columns()) break;
      for (const Order& rows : row_orders) {
        for (const Order& columns : column_orders) look_at(turned, rows, columns);
      }
    }
    const Transform transform = gather(shape_, digits_, turned_, rows_.data(), columns_.data());
    return {image_line(shape_, digits_, transform), transform, count_};
  }

 private:
  // Goes through the digits of an image row by row until `visit(place, digit)` says stop with anything but 0.
  template <typename Visit>
  int walk(bool turned, const Order& rows, const Order& columns, Visit visit) const {
    std::size_t place = 0;
    for (std::size_t i = 0; i < side_; ++i) {
      for (std::size_t j = 0; j < side_; ++j, ++place) {
        const int stop = visit(place, digits_[turned ? columns[j] * side_ + rows[i] : rows[i] * side_ + columns[j]]);
        if (stop != 0) return stop;
      }
    }
    return 0;
  }

  // Below 0, 0, above 0: less than the best, equal, greater. First where the givens stand, then their names.
  int compare(bool turned, const Order& rows, const Order& columns) const {
    if (count_ == 0) return -1;
    if (givens_ < side_ * side_) {
      const int compared = walk(turned, rows, columns, [&](std::size_t place, std::uint8_t digit) { return (best_[place] != 0 ? 1 : 0) - (digit != 0 ? 1 : 0); });
      if (compared != 0) return compared;
    }
    std::array<std::uint8_t, kMaxSide + 1> name{};
    std::uint8_t last = 0;
    return walk(turned, rows, columns, [&](std::size_t place, std::uint8_t digit) {
      if (digit != 0 && name[digit] == 0) name[digit] = ++last;
      return name[digit] - best_[place];
    });
  }

  void look_at(bool turned, const Order& rows, const Order& columns) {
    const int compared = compare(turned, rows, columns);
    if (compared == 0) ++count_;
    if (compared >= 0) return;
    count_ = 1;
    turned_ = turned;
    rows_ = rows;
    columns_ = columns;
    std::array<std::uint8_t, kMaxSide + 1> name{};
    std::uint8_t last = 0;
    walk(turned, rows, columns, [&](std::size_t place, std::uint8_t digit) {
      if (digit != 0 && name[digit] == 0) name[digit] = ++last;
      best_[place] = name[digit];
      return 0;
    });
  }

  const Shape& shape_;
  std::size_t side_;
  const Digits& digits_;
  std::size_t givens_ = 0;
  Digits best_{};
  bool turned_ = false;
  Order rows_{};
  Order columns_{};
  std::uint64_t count_ = 0;
};

}  // namespace

bool has_canonical_form(const Shape& shape) {
  return shape.side() <= kMostTrialSide || (shape.side() == kFastSide && shape.box_rows() == 3 && shape.box_columns() == 3);
}

CanonicalForm canonical_form(const Shape& shape, const Digits& digits) {
  assert(has_canonical_form(shape));
  return shape.side() == kFastSide ? by_search(shape, digits) : Trial(shape, digits).run();
}

CanonicalForm canonical_form(const Position& position) {
  Digits digits{};
  for (const Cell cell : position.placed()) digits[cell.index] = static_cast<std::uint8_t>(position.digit_at(cell)->number());
  return canonical_form(position.shape(), digits);
}

}  // namespace cp
