// SPDX-License-Identifier: Apache-2.0
#include "grid/detail/least_digits.h"

#include <algorithm>
#include <span>

namespace cp::detail {

namespace {

using Columns = std::array<std::uint8_t, 9>;

struct Place {
  std::uint8_t row;
  std::uint8_t column;
};

// Orders of three places that only move tied ones.
std::span<const std::uint8_t> orders_within(unsigned tied) {
  static constexpr std::array<std::uint8_t, 6> kAll{0, 1, 2, 3, 4, 5};
  static constexpr std::array<std::uint8_t, 2> kFirstTwo{0, 2};
  static constexpr std::array<std::uint8_t, 2> kLastTwo{0, 1};
  if (tied == 3) return kAll;
  if (tied == 1) return kFirstTwo;
  if (tied == 2) return kLastTwo;
  return {kAll.data(), 1};
}

std::uint64_t factorial(int number) { return number < 2 ? 1 : static_cast<std::uint64_t>(number) * factorial(number - 1); }

// Orders of lines without givens, which the search counts once: `lines` are the nine lines' givens.
std::uint64_t orders_of_empty(const std::array<std::uint16_t, 9>& lines) {
  std::uint64_t orders = 1;
  int empty_groups = 0;
  for (std::size_t group = 0; group < 3; ++group) {
    int empty = 0;
    for (std::size_t line = 3 * group; line < 3 * group + 3; ++line) empty += lines[line] == 0 ? 1 : 0;
    orders *= factorial(empty);
    empty_groups += empty == 3 ? 1 : 0;
  }
  return orders * factorial(empty_groups);
}

class Search {
 public:
  Search(const BothWays& board, const LeastPattern& pattern) : board_(board), pattern_(pattern) {
    for (std::uint8_t row = 0; row < 9; ++row) {
      for (std::uint8_t column = 0; column < 9; ++column) {
        if (((pattern.rows[row] >> (8U - column)) & 1U) == 0) continue;
        places_[count_++] = {row, column};
        column_givens_[column] = static_cast<std::uint16_t>(column_givens_[column] | (1U << row));
        if (row == 0) first_row_names_[column] = static_cast<std::uint8_t>(count_);
      }
      if (row < 3) count_in_rows_[row] = count_;
    }
    least_.givens = static_cast<int>(count_);
  }

  LeastDigits run() {
    std::size_t total = 0;
    for (const LineOrder& order : pattern_.orders) total += ties_of(order).orders();
    if (total > kMany) look_by_rows();
    else look_at_all();
    least_.count *= orders_of_empty(pattern_.rows) * orders_of_empty(column_givens_);
    return least_;
  }

 private:
  static constexpr std::size_t kMany = 64;  // above, it pays to compare a band first for all orders that share it

  struct ColumnOrder {
    Columns columns;  // sources, from left to right
    Columns places;   // the way back: where each source goes
  };

  // What the pattern leaves open; columns without givens keep one order.
  struct Ties {
    unsigned stacks;
    std::array<unsigned, 3> inside;
    [[nodiscard]] std::size_t orders() const {
      return orders_within(stacks).size() * orders_within(inside[0]).size() * orders_within(inside[1]).size() * orders_within(inside[2]).size();
    }
  };
  Ties ties_of(const LineOrder& order) const {
    const auto is_empty = [&](std::size_t column) { return column_givens_[column] == 0; };
    Ties ties{order.stacks_tied, {}};
    for (std::size_t stack = 0; stack < 3; ++stack) {
      ties.inside[stack] = order.columns_tied[stack];
      for (const std::size_t at : {0U, 1U}) {
        if (is_empty(3 * stack + at)) ties.inside[stack] &= ~(1U << at);
      }
      const bool empty = is_empty(3 * stack) && is_empty(3 * stack + 1) && is_empty(3 * stack + 2);
      if (empty && stack < 2) ties.stacks &= ~(1U << stack);
    }
    return ties;
  }

  std::vector<ColumnOrder> column_orders(const LineOrder& order) const {
    const Ties ties = ties_of(order);
    std::vector<ColumnOrder> all;
    all.reserve(ties.orders());
    for (const std::uint8_t outer : orders_within(ties.stacks)) {
      for (const std::uint8_t first : orders_within(ties.inside[0])) {
        for (const std::uint8_t second : orders_within(ties.inside[1])) {
          for (const std::uint8_t third : orders_within(ties.inside[2])) {
            ColumnOrder& one = all.emplace_back(ColumnOrder{columns_of(order, outer, {first, second, third}), {}});
            for (std::uint8_t place = 0; place < 9; ++place) one.places[one.columns[place]] = place;
          }
        }
      }
    }
    return all;
  }

  // `inner` belongs to the places before the stacks move: tied stacks have equal ties.
  static Columns columns_of(const LineOrder& order, std::uint8_t outer, const std::array<std::uint8_t, 3>& inner) {
    Columns columns{};
    for (std::size_t place = 0; place < 3; ++place) {
      const std::size_t from = kOrders[outer][place];
      const auto& inside = kOrders[kOrderOfOrder[order.inside[from]][inner[from]]];
      for (std::size_t i = 0; i < 3; ++i) columns[3 * place + i] = static_cast<std::uint8_t>(3 * order.stacks[from] + inside[i]);
    }
    return columns;
  }

  enum class Compared { kLess, kEqual, kGreater };

  // Names the digits of the first `count` givens as they appear. When they are less than the best, they become the best.
  Compared compare(const LineOrder& order, const Columns& columns, std::size_t count) {
    const HeldBoard& held = board_[order.turned];
    std::array<std::uint8_t, 10> name{};
    std::uint8_t last = 0;
    bool is_less = false;
    for (std::size_t i = 0; i < count; ++i) {
      const Place place = places_[i];
      std::uint8_t& own = name[held.digits[order.rows[place.row]][columns[place.column]]];
      if (own == 0) own = ++last;
      if (!is_less) {
        if (own > best_[i]) return Compared::kGreater;
        if (own == best_[i]) continue;
        is_less = true;
        std::fill(best_.begin() + static_cast<std::ptrdiff_t>(i), best_.end(), kNothing);
      }
      best_[i] = own;
    }
    return is_less ? Compared::kLess : Compared::kEqual;
  }

  void look_at(const LineOrder& order, const Columns& columns) {
    const Compared compared = compare(order, columns, count_);
    if (compared == Compared::kGreater) return;
    if (compared == Compared::kEqual && least_.count > 0) {
      ++least_.count;
      return;
    }
    least_.names = best_;
    least_.count = 1;
    least_.turned = order.turned;
    least_.rows = order.rows;
    least_.columns = columns;
  }

  void look_at_all() {
    for (const LineOrder& order : pattern_.orders) {
      for (const ColumnOrder& one : column_orders(order)) look_at(order, one.columns);
    }
  }

  // Have the two the same columns, and ties of them?
  static bool hold_columns_alike(const LineOrder& a, const LineOrder& b) {
    return a.stacks == b.stacks && a.inside == b.inside && a.columns_tied == b.columns_tied && a.stacks_tied == b.stacks_tied;
  }

  // Do the two share their first band and the columns? Such orders stand side by side.
  static bool begin_alike(const LineOrder& a, const LineOrder& b) {
    return a.turned == b.turned && a.rows[0] == b.rows[0] && a.rows[1] == b.rows[1] && hold_columns_alike(a, b);
  }

  // A quick look at the names in the second row. A digit that is in the first row too has a name that only depends on where
  // that column went; `partner` has for each column of the second row that column, or kNothing.
  struct SecondRow {
    std::array<std::uint8_t, 9> partner{};
    bool can_tell = true;  // no digit twice in the first row
  };
  SecondRow second_row_of(const LineOrder& order) const {
    const auto& first = board_[order.turned].digits[order.rows[0]];
    const auto& second = board_[order.turned].digits[order.rows[1]];
    SecondRow row;
    std::array<std::uint8_t, 10> at{};
    at.fill(kNothing);
    for (std::uint8_t column = 0; column < 9; ++column) {
      if (first[column] == 0) continue;
      row.can_tell = row.can_tell && at[first[column]] == kNothing;
      at[first[column]] = column;
    }
    at[0] = kNothing;
    for (std::size_t column = 0; column < 9; ++column) row.partner[column] = at[second[column]];
    return row;
  }
  bool is_greater(const SecondRow& row, const ColumnOrder& order) const {
    if (!row.can_tell) return false;
    for (std::size_t i = count_in_rows_[0]; i < count_in_rows_[1]; ++i) {
      const std::uint8_t partner = row.partner[order.columns[places_[i].column]];
      if (partner == kNothing) return false;  // a new name: no longer a quick look
      const std::uint8_t name = first_row_names_[order.places[partner]];
      if (name != best_[i]) return name > best_[i];
    }
    return false;
  }

  void look_by_rows() {
    struct Survivor {
      std::size_t begin;
      std::size_t end;
      Columns columns;
    };
    std::vector<Survivor> survivors;
    const auto& orders = pattern_.orders;
    std::vector<ColumnOrder> columns;
    for (std::size_t begin = 0, end = 0; begin < orders.size(); begin = end) {
      while (end < orders.size() && begin_alike(orders[begin], orders[end])) ++end;
      if (begin == 0 || !hold_columns_alike(orders[begin - 1], orders[begin])) columns = column_orders(orders[begin]);
      const SecondRow second = second_row_of(orders[begin]);
      for (const ColumnOrder& one : columns) {
        if (is_greater(second, one)) continue;
        const Compared compared = compare(orders[begin], one.columns, count_in_rows_[2]);
        if (compared == Compared::kGreater) continue;
        if (compared == Compared::kLess) survivors.clear();
        survivors.push_back({begin, end, one.columns});
      }
    }
    for (const Survivor& survivor : survivors) {
      for (std::size_t i = survivor.begin; i < survivor.end; ++i) look_at(orders[i], survivor.columns);
    }
  }

  static constexpr std::uint8_t kNothing = 255;  // greater than every name

  const BothWays& board_;
  const LeastPattern& pattern_;
  std::array<Place, 81> places_{};
  std::size_t count_ = 0;
  std::array<std::size_t, 3> count_in_rows_{};            // up to the end of rows 1, 2, 3
  std::array<std::uint8_t, 9> first_row_names_{};         // by place, when no digit is twice in the first row
  std::array<std::uint16_t, 9> column_givens_{};
  std::array<std::uint8_t, 81> best_ = [] {
    std::array<std::uint8_t, 81> nothing{};
    nothing.fill(kNothing);
    return nothing;
  }();
  LeastDigits least_;
};

}  // namespace

LeastDigits least_digits(const BothWays& board, const LeastPattern& pattern) { return Search(board, pattern).run(); }

}  // namespace cp::detail
