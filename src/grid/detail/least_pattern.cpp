// SPDX-License-Identifier: Apache-2.0
#include "grid/detail/least_pattern.h"

#include <algorithm>

namespace cp::detail {

namespace {

// What a stack's three bits become, given the order of its columns and their ties: the bits as early as the ties allow,
// the order of columns that does it, and the ties that are left.
struct Settled {
  std::uint8_t value;
  std::uint8_t inside;
  std::uint8_t tied;
};

constexpr Settled settle(std::size_t inside, std::size_t tied, std::size_t bits) {
  std::array<std::uint8_t, 3> order{0, 1, 2};
  const auto bit = [&](std::size_t place) { return (bits >> (2U - kOrders[inside][order[place]])) & 1U; };
  for (const std::size_t at : {0U, 1U, 0U}) {  // all exchanges that three things can need
    if (((tied >> at) & 1U) != 0 && bit(at) < bit(at + 1)) {
      const std::uint8_t moved = order[at];
      order[at] = order[at + 1];
      order[at + 1] = moved;
    }
  }
  Settled result{static_cast<std::uint8_t>(bit(0) << 2U | bit(1) << 1U | bit(2)), 0, 0};
  for (std::size_t next = 0; next < 6; ++next) {
    if (kOrders[next] == order) result.inside = kOrderOfOrder[inside][next];
  }
  for (const std::size_t at : {0U, 1U}) {
    if (((tied >> at) & 1U) != 0 && bit(at) == bit(at + 1)) result.tied = static_cast<std::uint8_t>(result.tied | (1U << at));
  }
  return result;
}

constexpr auto kSettled = [] {
  std::array<std::array<std::array<Settled, 8>, 4>, 6> table{};
  for (std::size_t inside = 0; inside < 6; ++inside) {
    for (std::size_t tied = 0; tied < 4; ++tied) {
      for (std::size_t bits = 0; bits < 8; ++bits) table[inside][tied][bits] = settle(inside, tied, bits);
    }
  }
  return table;
}();

const Settled& settled(const LineOrder& order, std::size_t place, std::uint16_t givens) {
  const auto bits = (givens >> (6U - 3U * order.stacks[place])) & 7U;
  return kSettled[order.inside[place]][order.columns_tied[place]][bits];
}

// Exchanges tied neighbours so that the greater value comes first; true where it did.
template <typename Exchange>
void sort_tied(unsigned tied, std::array<std::uint8_t, 3>& values, Exchange exchange) {
  for (const std::size_t at : {0U, 1U, 0U}) {
    if (((tied >> at) & 1U) != 0 && values[at] < values[at + 1]) {
      std::swap(values[at], values[at + 1]);
      exchange(at);
    }
  }
}

std::uint16_t joined(const std::array<std::uint8_t, 3>& values) { return static_cast<std::uint16_t>(values[0] << 6U | values[1] << 3U | values[2]); }

// The earliest the givens of a row can stand under this order.
std::uint16_t best_of(const LineOrder& order, std::uint16_t givens) {
  std::array<std::uint8_t, 3> values{settled(order, 0, givens).value, settled(order, 1, givens).value, settled(order, 2, givens).value};
  sort_tied(order.stacks_tied, values, [](std::size_t) {});
  return joined(values);
}

// Takes the row into the order as its next one.
LineOrder with_row(const LineOrder& order, std::size_t level, std::uint8_t row, std::uint16_t givens) {
  LineOrder next = order;
  next.rows[level] = row;
  next.used = static_cast<std::uint16_t>(order.used | (1U << row));
  std::array<std::uint8_t, 3> values{};
  for (std::size_t place = 0; place < 3; ++place) {
    const Settled& stack = settled(order, place, givens);
    values[place] = stack.value;
    next.inside[place] = stack.inside;
    next.columns_tied[place] = stack.tied;
  }
  sort_tied(order.stacks_tied, values, [&](std::size_t at) {
    std::swap(next.stacks[at], next.stacks[at + 1]);
    std::swap(next.inside[at], next.inside[at + 1]);
    std::swap(next.columns_tied[at], next.columns_tied[at + 1]);
  });
  for (const std::size_t at : {0U, 1U}) {
    if (values[at] != values[at + 1]) next.stacks_tied = static_cast<std::uint8_t>(next.stacks_tied & ~(1U << at));
  }
  return next;
}

// The rows that may come next, each band's rows without givens only once, and bands without givens only once.
template <typename Visit>
void for_next_rows(const LineOrder& order, std::size_t level, const HeldBoard& board, Visit visit) {
  const bool begins_band = level % 3 == 0;
  const std::size_t first = begins_band ? 0 : order.rows[level - 1] / 3U;
  const std::size_t last = begins_band ? 2 : first;
  bool had_empty_band = false;
  for (std::size_t band = first; band <= last; ++band) {
    if (begins_band && ((order.used >> (3 * band)) & 7U) != 0) continue;
    if ((board.givens[3 * band] | board.givens[3 * band + 1] | board.givens[3 * band + 2]) == 0) {
      if (begins_band && had_empty_band) continue;
      had_empty_band = true;
    }
    bool had_empty_row = false;
    for (std::size_t row = 3 * band; row < 3 * band + 3; ++row) {
      if (((order.used >> row) & 1U) != 0) continue;
      if (board.givens[row] == 0) {
        if (had_empty_row) continue;
        had_empty_row = true;
      }
      visit(static_cast<std::uint8_t>(row));
    }
  }
}

}  // namespace

BothWays both_ways(const std::uint8_t* digits) {
  BothWays board;
  for (std::size_t row = 0; row < 9; ++row) {
    for (std::size_t column = 0; column < 9; ++column) {
      const std::uint8_t digit = digits[9 * row + column];
      board[0].digits[row][column] = digit;
      board[1].digits[column][row] = digit;
      if (digit == 0) continue;
      board[0].givens[row] = static_cast<std::uint16_t>(board[0].givens[row] | (256U >> column));
      board[1].givens[column] = static_cast<std::uint16_t>(board[1].givens[column] | (256U >> row));
    }
  }
  return board;
}

LeastPattern least_pattern(const BothWays& board) {
  LeastPattern least;
  std::vector<LineOrder> orders;
  for (const std::uint8_t turned : {std::uint8_t{0}, std::uint8_t{1}}) orders.push_back({turned, {}, 0, {0, 1, 2}, {0, 0, 0}, {3, 3, 3}, 3});
  std::vector<LineOrder> next;
  for (std::size_t level = 0; level < 9; ++level) {
    next.clear();
    std::uint16_t best = 0;
    for (const LineOrder& order : orders) {
      const HeldBoard& held = board[order.turned];
      for_next_rows(order, level, held, [&](std::uint8_t row) {
        const std::uint16_t value = best_of(order, held.givens[row]);
        if (value < best) return;
        if (value > best) next.clear();
        best = value;
        next.push_back(with_row(order, level, row, held.givens[row]));
      });
    }
    least.rows[level] = best;
    orders.swap(next);
  }
  least.orders = std::move(orders);
  return least;
}

}  // namespace cp::detail
