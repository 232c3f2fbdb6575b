// SPDX-License-Identifier: Apache-2.0
// Exact search for grids of 3x3 boxes, the whole board in nine 128-bit words.
//
// Layout. Word p stands for the place p in a box (0..8 in reading order) and holds that cell of all nine boxes at once:
// lane = band (three of the four 32-bit lanes), field of ten bits in the lane = stack, bit in the field = digit. The tenth
// bit is a guard that catches carries. So
// - the nine words counted against one another, bit by bit, tell for every box and digit whether it has no, one or
//   several places (27 logical operations for all 81 box-digit pairs);
// - adding 0x1FF to a field and looking at the guard tells for every cell whether it is empty, and after taking the
//   lowest bit away, whether it has one digit or several;
// - turning the fields of a lane, or the lanes of a word, lines up the boxes of a band or stack.
//
// Inference, repeated until nothing changes: hidden singles in boxes; naked singles within their box; and for every
// digit in every band, which of its nine box rows can take part in a way to place it: the three rows of a band take the
// three boxes in one of six orders, and what is in no possible order is struck out (likewise for stacks, with columns). That
// last rule contains locked candidates and carries singles along rows and columns.
//
// Plain vector arithmetic of GCC and Clang, no tables; without vector registers the same code still compiles.
#include <array>
#include <bit>

#include "exact/detail/search.h"

namespace cp::detail {

namespace {

using Word = std::uint32_t;
using Lanes = Word __attribute__((vector_size(16)));
using Nine = std::array<Lanes, 9>;

constexpr int kFieldBits = 10;
constexpr int kGuardBit = 9;
constexpr Word kFieldDigits = 0x1FF;

// The same word in the three lanes in use.
constexpr Lanes in_all_lanes(Word word) { return Lanes{word, word, word, 0}; }
// The same bits in the three fields of all lanes.
constexpr Lanes in_all_fields(Word bits) { return in_all_lanes(bits | (bits << kFieldBits) | (bits << (2 * kFieldBits))); }

constexpr Lanes kLowest = in_all_fields(1);
constexpr Lanes kDigits = in_all_fields(kFieldDigits);
constexpr Lanes kGuards = in_all_fields(1U << kGuardBit);

struct Board {
  Nine places;
};

inline bool is_zero(Lanes lanes) {
  const auto halves = std::bit_cast<std::array<std::uint64_t, 2>>(lanes);
  return (halves[0] | halves[1]) == 0;
}

// All nine bits of every field that is not empty.
inline Lanes nonempty_fields(Lanes lanes) {
  const Lanes guards = (lanes + kDigits) & kGuards;
  return guards - (guards >> kGuardBit);
}

// The stacks of every band moved on by one and by two, cyclically. Stray bits above the third field are left to the
// caller, who masks the result.
inline Lanes next_stack(Lanes lanes) { return (lanes << kFieldBits) | (lanes >> (2 * kFieldBits)); }
inline Lanes stack_after_next(Lanes lanes) { return (lanes << (2 * kFieldBits)) | (lanes >> kFieldBits); }
inline Lanes next_band(Lanes lanes) { return __builtin_shufflevector(lanes, lanes, 1, 2, 0, 3); }
inline Lanes band_after_next(Lanes lanes) { return __builtin_shufflevector(lanes, lanes, 2, 0, 1, 3); }

// Where a digit has several places in its box, and where it has one; `missing` gets the digits without any.
struct BoxCount {
  Lanes single;
  Lanes missing;
};

inline BoxCount count_in_boxes(const Nine& places) {
  Lanes one = places[0];
  Lanes several{};
  for (std::size_t p = 1; p < 9; ++p) {
    several |= one & places[p];
    one |= places[p];
  }
  return {one & ~several, one ^ kDigits};
}

// What hidden and naked singles leave in every cell.
struct SinglesResult {
  Nine places;
  Lanes contradiction;
  Lanes undecided;  // not zero while some cell has several digits
};

// An empty cell is not looked for: its box then has nine digits for eight cells, so it either lacks a digit or keeps a
// cell with two, and is never taken for solved. (The borrow that taking the lowest bit of an empty field sends to its neighbour
// does not hide that: two or more bits less two, and-ed with themselves, still leave a bit.)
inline SinglesResult apply_singles(const Nine& places, const BoxCount& boxes) {
  SinglesResult result{{}, boxes.missing, Lanes{}};
  Nine kept;   // after hidden singles
  Nine alone;  // cells with one digit
  Lanes used{};
  for (std::size_t p = 0; p < 9; ++p) {
    const Lanes hidden = places[p] & boxes.single;
    kept[p] = places[p] & ~(nonempty_fields(hidden) & ~hidden);
    const Lanes more = kept[p] & (kept[p] - kLowest);
    const Lanes several = nonempty_fields(more);
    alone[p] = kept[p] & ~several;
    result.undecided |= several;
    result.contradiction |= (more & boxes.single) | (used & alone[p]);  // two digits for one cell, two cells for one digit
    used |= alone[p];
  }
  for (std::size_t p = 0; p < 9; ++p) result.places[p] = kept[p] & ~(used ^ alone[p]);
  return result;
}

// Nine masks of a 3x3 arrangement in which a digit takes one entry per line and one per column, two of the three lines being
// given turned by one and by two: what the third line may keep.
inline Lanes supported(Lanes first1, Lanes first2, Lanes second1, Lanes second2) {
  return (first1 & second2) | (first2 & second1);
}

// Box rows: line = row of the band, column = stack.
inline void apply_bands(Nine& places) {
  const Lanes top = places[0] | places[1] | places[2];
  const Lanes middle = places[3] | places[4] | places[5];
  const Lanes bottom = places[6] | places[7] | places[8];
  const Lanes top1 = next_stack(top), middle1 = next_stack(middle), bottom1 = next_stack(bottom);
  const Lanes top2 = stack_after_next(top), middle2 = stack_after_next(middle), bottom2 = stack_after_next(bottom);
  const std::array<Lanes, 3> keep = {supported(middle1, middle2, bottom1, bottom2), supported(top1, top2, bottom1, bottom2),
                                     supported(top1, top2, middle1, middle2)};
  for (std::size_t p = 0; p < 9; ++p) places[p] &= keep[p / 3];
}

// Box columns: line = column of the stack, column = band.
inline void apply_stacks(Nine& places) {
  const Lanes left = places[0] | places[3] | places[6];
  const Lanes centre = places[1] | places[4] | places[7];
  const Lanes right = places[2] | places[5] | places[8];
  const Lanes left1 = next_band(left), centre1 = next_band(centre), right1 = next_band(right);
  const Lanes left2 = band_after_next(left), centre2 = band_after_next(centre), right2 = band_after_next(right);
  const std::array<Lanes, 3> keep = {supported(centre1, centre2, right1, right2), supported(left1, left2, right1, right2),
                                     supported(left1, left2, centre1, centre2)};
  for (std::size_t p = 0; p < 9; ++p) places[p] &= keep[p % 3];
}

enum class Rest { kContradiction, kSolved, kOpen };

Rest propagate(Board& board) {
  while (true) {
    SinglesResult singles = apply_singles(board.places, count_in_boxes(board.places));
    if (!is_zero(singles.contradiction)) return Rest::kContradiction;
    apply_bands(singles.places);
    apply_stacks(singles.places);
    Lanes changed{};
    for (std::size_t p = 0; p < 9; ++p) {
      changed |= board.places[p] ^ singles.places[p];
      board.places[p] = singles.places[p];
    }
    // Nothing changed and every cell has one digit: every box is complete, and so are all rows and columns, because the
    // bands and stacks would have struck out a digit that came twice.
    if (is_zero(changed)) return is_zero(singles.undecided) ? Rest::kSolved : Rest::kOpen;
  }
}

// A digit of a cell to try; `rest` are the other digits of the cell.
struct Choice {
  std::size_t place = 0;
  int band = 0;
  Word digit = 0;
  Word rest = 0;
};

// The lowest digit of the first cell with the fewest digits (of those with several). In a sound open board there is one.
Choice choose(const Board& board) {
  Choice best;
  int fewest = 10;
  for (std::size_t place = 0; place < 9; ++place) {
    for (int band = 0; band < 3; ++band) {
      for (int stack = 0; stack < 3; ++stack) {
        const Word digits = board.places[place][band] & (kFieldDigits << (kFieldBits * stack));
        const int size = std::popcount(digits);
        if (size < 2 || size >= fewest) continue;
        fewest = size;
        best = {place, band, digits & (~digits + 1), digits & (digits - 1)};
        if (size == 2) return best;
      }
    }
  }
  return best;
}

Board load(const Position& position) {
  Board board{};
  int cell = 0;
  for (int row = 0; row < 9; ++row) {
    for (int column = 0; column < 9; ++column, ++cell) {
      const Word digits = position.candidates(Cell(cell)).bits();
      board.places[static_cast<std::size_t>(row % 3 * 3 + column % 3)][row / 3] |= digits << (kFieldBits * (column / 3));
    }
  }
  return board;
}

FullGrid read_grid(const Shape& shape, const Board& board) {
  FullGrid grid(shape);
  for (const Cell cell : shape.all_cells()) {
    const int row = shape.row_of(cell);
    const int column = shape.column_of(cell);
    const Word lane = board.places[static_cast<std::size_t>(row % 3 * 3 + column % 3)][row / 3];
    grid.set(cell, Digit(std::countr_zero((lane >> (kFieldBits * (column / 3))) & kFieldDigits)));
  }
  return grid;
}

}  // namespace

SolutionCount search_nine(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids) {
  SolutionCount outcome;
  std::array<Board, 82> stack;  // each level decides a cell that was open
  std::size_t depth = 1;
  stack[0] = load(position);
  while (depth > 0) {
    if (outcome.count >= limits.solutions || outcome.nodes >= limits.nodes) {
      outcome.end = outcome.count >= limits.solutions ? SearchEnd::kSolutionLimit : SearchEnd::kNodeLimit;
      return outcome;
    }
    ++outcome.nodes;
    Board& board = stack[depth - 1];
    const Rest rest = propagate(board);
    const Choice choice = rest == Rest::kOpen ? choose(board) : Choice{};
    if (choice.digit == 0) {
      if (rest == Rest::kSolved) {
        ++outcome.count;
        if (grids != nullptr) grids->push_back(read_grid(position.shape(), board));
      }
      --depth;
      continue;
    }
    // The digit now, on top; the cell without it later, in place.
    Board& child = stack[depth];
    child = board;
    child.places[choice.place][choice.band] &= ~choice.rest;
    ++depth;
    board.places[choice.place][choice.band] &= ~choice.digit;
  }
  return outcome;
}

}  // namespace cp::detail
