// SPDX-License-Identifier: Apache-2.0
#include "grid/transform.h"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace cp {

namespace {

using Map = std::array<std::uint8_t, kMaxSide>;

Map first_then(const Map& first, const Map& next, int side) {
  Map both{};
  for (std::size_t i = 0; i < static_cast<std::size_t>(side); ++i) both[i] = next[first[i]];
  return both;
}

Map reversed(const Map& map, int side) {
  Map back{};
  for (std::size_t i = 0; i < static_cast<std::size_t>(side); ++i) back[map[i]] = static_cast<std::uint8_t>(i);
  return back;
}

bool names_each_once(const Map& map, int side) {
  std::uint32_t seen = 0;
  for (int i = 0; i < side; ++i) {
    const auto to = map[static_cast<std::size_t>(i)];
    if (to >= side || ((seen >> to) & 1U) != 0) return false;
    seen |= 1U << to;
  }
  return true;
}

bool keeps_boxes(const Map& map, int side, int box_lines) {
  for (int i = 0; i < side; ++i) {
    const int leader = i / box_lines * box_lines;
    if (map[static_cast<std::size_t>(i)] / box_lines != map[static_cast<std::size_t>(leader)] / box_lines) return false;
  }
  return true;
}

Map random_line_map(int side, int box_lines, Rng& rng) {
  std::vector<int> groups(static_cast<std::size_t>(side / box_lines));
  std::iota(groups.begin(), groups.end(), 0);
  rng.shuffle(groups);
  Map map{};
  std::size_t from = 0;
  for (const int group : groups) {
    std::vector<int> lines(static_cast<std::size_t>(box_lines));
    std::iota(lines.begin(), lines.end(), group * box_lines);
    rng.shuffle(lines);
    for (const int line : lines) map[from++] = static_cast<std::uint8_t>(line);
  }
  return map;
}

}  // namespace

Transform::Transform(const Shape& shape) : shape_(&shape) {
  for (Map* map : {&row_to, &column_to, &digit_to}) std::iota(map->begin(), map->end(), std::uint8_t{0});
}

Transform Transform::random(const Shape& shape, std::uint64_t seed) {
  Rng rng(seed);
  Transform transform(shape);
  transform.transposes = shape.box_rows() == shape.box_columns() && rng.below(2) == 1;
  transform.row_to = random_line_map(shape.side(), shape.box_rows(), rng);
  transform.column_to = random_line_map(shape.side(), shape.box_columns(), rng);
  transform.digit_to = random_line_map(shape.side(), shape.side(), rng);
  return transform;
}

bool Transform::is_valid() const {
  const int side = shape_->side();
  return names_each_once(row_to, side) && names_each_once(column_to, side) && names_each_once(digit_to, side) &&
         keeps_boxes(row_to, side, shape_->box_rows()) && keeps_boxes(column_to, side, shape_->box_columns()) &&
         (!transposes || shape_->box_rows() == shape_->box_columns());
}

Cell Transform::image(Cell cell) const {
  int row = shape_->row_of(cell);
  int column = shape_->column_of(cell);
  if (transposes) std::swap(row, column);
  return shape_->cell_at(row_to[static_cast<std::size_t>(row)], column_to[static_cast<std::size_t>(column)]);
}

House Transform::image(House house) const {
  if (shape_->kind(house) == HouseKind::kBox) return shape_->box(shape_->box_of(image(shape_->cells(house).first())));
  const auto number = static_cast<std::size_t>(shape_->number(house));
  const bool becomes_row = (shape_->kind(house) == HouseKind::kRow) != transposes;
  return becomes_row ? shape_->row(row_to[number]) : shape_->column(column_to[number]);
}

CellSet Transform::image(const CellSet& cells) const {
  CellSet images;
  for (const Cell cell : cells) images.add(image(cell));
  return images;
}

Position Transform::image(const Position& position) const {
  assert(is_valid() && &position.shape() == shape_);
  Position result(*shape_);
  for (const Cell cell : position.placed()) {
    const Digit digit = image(*position.digit_at(cell));
    if (position.givens().has(cell)) result.place_given(image(cell), digit);
    else result.place(image(cell), digit);
  }
  for (const Cell cell : position.open()) {
    DigitSet left;
    for (const Digit digit : position.candidates(cell)) left.add(image(digit));
    for (const Digit digit : result.candidates(image(cell)) - left) result.eliminate({image(cell), digit});
  }
  return result;
}

Transform Transform::then(const Transform& next) const {
  assert(shape_ == next.shape_);
  const int side = shape_->side();
  Transform both(*shape_);
  both.transposes = transposes != next.transposes;
  // A turn in the second one makes columns of this one's rows.
  both.row_to = first_then(next.transposes ? column_to : row_to, next.row_to, side);
  both.column_to = first_then(next.transposes ? row_to : column_to, next.column_to, side);
  both.digit_to = first_then(digit_to, next.digit_to, side);
  return both;
}

Transform Transform::inverse() const {
  const int side = shape_->side();
  Transform back(*shape_);
  back.transposes = transposes;
  back.row_to = reversed(transposes ? column_to : row_to, side);
  back.column_to = reversed(transposes ? row_to : column_to, side);
  back.digit_to = reversed(digit_to, side);
  return back;
}

bool operator==(const Transform& a, const Transform& b) {
  const auto same = [side = a.shape_->side()](const Map& x, const Map& y) { return std::equal(x.begin(), x.begin() + side, y.begin()); };
  return a.shape_ == b.shape_ && a.transposes == b.transposes && same(a.row_to, b.row_to) && same(a.column_to, b.column_to) &&
         same(a.digit_to, b.digit_to);
}

std::vector<std::array<std::uint8_t, kMaxSide>> line_orders(int side, int box_lines) {
  Map order{};
  std::iota(order.begin(), order.begin() + side, std::uint8_t{0});
  std::vector<Map> orders;
  do {
    if (keeps_boxes(order, side, box_lines)) orders.push_back(order);
  } while (std::next_permutation(order.begin(), order.begin() + side));
  return orders;
}

}  // namespace cp
