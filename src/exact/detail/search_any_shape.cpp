// SPDX-License-Identifier: Apache-2.0
// Exact search for every shape up to 16x16.
//
// The board keeps each candidate twice: as a digit of its cell, and as a place of its digit in three houses. Striking
// one out costs four mask updates; a mask with one bit left asks for a placement, a mask with none ends the branch.
// So naked and hidden singles are followed to the end at no extra search cost. Branching takes the smallest
// choice of either kind: a cell with few digits, or a digit with few places in a house.
#include <array>
#include <bit>
#include <optional>
#include <span>
#include <utility>

#include "exact/detail/search.h"

namespace cp::detail {

namespace {

using Mask = std::uint16_t;

constexpr int kMaxHouses = 3 * kMaxSide;

// Which houses a cell lies in, and where in them. Row and column coordinates fit every shape.
struct Geometry {
  explicit Geometry(const Shape& shape) : side(shape.side()), cells(shape.cell_count()), houses(shape.house_count()) {
    std::array<std::uint8_t, kMaxHouses> filled{};
    for (const Cell cell : shape.all_cells()) {
      std::size_t kind = 0;
      for (const House house : shape.houses_of(cell)) {
        house_of[cell.index][kind] = house.index;
        place_in[cell.index][kind] = filled[house.index];
        cell_at[house.index][filled[house.index]++] = cell.index;
        ++kind;
      }
    }
  }

  int side;
  int cells;
  int houses;
  std::array<std::array<std::uint8_t, 3>, kMaxCells> house_of{};
  std::array<std::array<std::uint8_t, 3>, kMaxCells> place_in{};
  std::array<std::array<std::uint8_t, kMaxSide>, kMaxHouses> cell_at{};
};

struct Move {
  std::uint8_t cell = 0;
  std::uint8_t digit = 0;
};

struct Board {
  std::array<Mask, kMaxCells> digits;                          // candidates of a cell
  std::array<std::array<Mask, kMaxSide>, kMaxHouses> places;   // places of a digit in a house
  CellSet settled;                                             // placements already carried out
};

// Brings a board to the end of naked and hidden singles. The queue lives outside the board: it is empty between calls.
class Propagator {
 public:
  explicit Propagator(const Geometry& geometry) : geometry_(geometry) {}

  // Fills the board from a position; false when a contradiction shows.
  bool load(const Position& position, Board& board) {
    const Mask all = position.shape().digits().bits();
    for (const Cell cell : position.shape().all_cells()) board.digits[cell.index] = all;
    for (auto& house : board.places) house.fill(all);
    head_ = tail_ = 0;
    for (const Cell cell : position.shape().all_cells()) {
      for (const Digit digit : position.shape().digits() - position.candidates(cell)) {
        if (!strike(board, cell.index, digit.index)) return false;
      }
    }
    return run(board);
  }

  bool place(Board& board, Move move) {
    head_ = tail_ = 0;
    push(move.cell, move.digit);
    return run(board);
  }

 private:
  void push(int cell, int digit) {
    queue_[tail_++] = {static_cast<std::uint8_t>(cell), static_cast<std::uint8_t>(digit)};
  }

  // Takes one candidate away. Pushes what has become single; false when nothing is left.
  bool strike(Board& board, int cell, int digit) {
    const auto c = static_cast<std::size_t>(cell);
    const auto d = static_cast<std::size_t>(digit);
    const Mask digits = board.digits[c] = static_cast<Mask>(board.digits[c] & ~(1U << d));
    if (digits == 0) return false;
    if (std::has_single_bit(digits)) push(cell, std::countr_zero(digits));
    for (std::size_t kind = 0; kind < 3; ++kind) {
      const auto house = geometry_.house_of[c][kind];
      Mask& places = board.places[house][d];
      places = static_cast<Mask>(places & ~(1U << geometry_.place_in[c][kind]));
      if (places == 0) return false;
      if (std::has_single_bit(places)) push(geometry_.cell_at[house][static_cast<std::size_t>(std::countr_zero(places))], digit);
    }
    return true;
  }

  bool settle(Board& board, Move move) {
    const Mask bit = static_cast<Mask>(1U << move.digit);
    if ((board.digits[move.cell] & bit) == 0) return false;
    if (board.settled.has(Cell(move.cell))) return true;
    board.settled.add(Cell(move.cell));
    for (auto rest = static_cast<Mask>(board.digits[move.cell] & ~bit); rest != 0; rest = static_cast<Mask>(rest & (rest - 1))) {
      if (!strike(board, move.cell, std::countr_zero(rest))) return false;
    }
    for (std::size_t kind = 0; kind < 3; ++kind) {
      const auto house = geometry_.house_of[move.cell][kind];
      auto others = static_cast<Mask>(board.places[house][move.digit] & ~(1U << geometry_.place_in[move.cell][kind]));
      for (; others != 0; others = static_cast<Mask>(others & (others - 1))) {
        if (!strike(board, geometry_.cell_at[house][static_cast<std::size_t>(std::countr_zero(others))], move.digit)) return false;
      }
    }
    return true;
  }

  bool run(Board& board) {
    while (head_ < tail_) {
      if (!settle(board, queue_[head_++])) return false;
    }
    return true;
  }

  const Geometry& geometry_;
  // A cell becomes single once, a digit in a house once: the queue never holds more than that.
  std::array<Move, kMaxCells + std::size_t{kMaxHouses} * kMaxSide + 1> queue_{};
  std::size_t head_ = 0;
  std::size_t tail_ = 0;
};

// The ways on from a board, to be tried in this order. No moves: the board is solved.
struct Branch {
  std::array<Move, kMaxSide> moves{};
  int count = 0;
  int next = 0;
};

Branch branch_on_cell(const Board& board, int cell) {
  Branch branch;
  for (Mask left = board.digits[static_cast<std::size_t>(cell)]; left != 0; left = static_cast<Mask>(left & (left - 1))) {
    branch.moves[static_cast<std::size_t>(branch.count++)] = {static_cast<std::uint8_t>(cell), static_cast<std::uint8_t>(std::countr_zero(left))};
  }
  return branch;
}

Branch branch_on_places(const Geometry& geometry, const Board& board, int house, int digit) {
  Branch branch;
  const auto h = static_cast<std::size_t>(house);
  for (Mask left = board.places[h][static_cast<std::size_t>(digit)]; left != 0; left = static_cast<Mask>(left & (left - 1))) {
    branch.moves[static_cast<std::size_t>(branch.count++)] = {geometry.cell_at[h][static_cast<std::size_t>(std::countr_zero(left))], static_cast<std::uint8_t>(digit)};
  }
  return branch;
}

// The smallest choice: cells before houses, lower numbers first. Two ways are the fewest there can be.
Branch smallest_branch(const Geometry& geometry, const Board& board) {
  int fewest = kMaxSide + 1;
  int best_cell = -1;
  for (int cell = 0; cell < geometry.cells; ++cell) {
    const int size = std::popcount(board.digits[static_cast<std::size_t>(cell)]);
    if (size < 2 || size >= fewest) continue;
    fewest = size;
    best_cell = cell;
    if (size == 2) return branch_on_cell(board, cell);
  }
  if (best_cell < 0) return {};
  int best_house = -1;
  int best_digit = -1;
  for (int house = 0; house < geometry.houses && fewest > 2; ++house) {
    for (int digit = 0; digit < geometry.side; ++digit) {
      const int size = std::popcount(board.places[static_cast<std::size_t>(house)][static_cast<std::size_t>(digit)]);
      if (size < 2 || size >= fewest) continue;
      fewest = size;
      best_house = house;
      best_digit = digit;
    }
  }
  return best_house < 0 ? branch_on_cell(board, best_cell) : branch_on_places(geometry, board, best_house, best_digit);
}

FullGrid read_grid(const Shape& shape, const Board& board) {
  FullGrid grid(shape);
  for (const Cell cell : shape.all_cells()) grid.set(cell, Digit(std::countr_zero(board.digits[cell.index])));
  return grid;
}

// Depth-first search on an explicit stack, because some hosts have little stack of their own.
class Search {
 public:
  Search(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids)
      : shape_(position.shape()), geometry_(position.shape()), propagator_(geometry_), limits_(limits), grids_(grids) {
    Board root;
    ++outcome_.nodes;
    if (propagator_.load(position, root)) visit(root);
  }

  SolutionCount run() {
    while (!stack_.empty()) {
      if (outcome_.count >= limits_.solutions) {
        outcome_.end = SearchEnd::kSolutionLimit;
        return outcome_;
      }
      if (outcome_.nodes >= limits_.nodes) {
        outcome_.end = SearchEnd::kNodeLimit;
        return outcome_;
      }
      step();
    }
    // A solution that was the last thing in the tree meets the limit too, but nothing was left to look at.
    return outcome_;
  }

 private:
  struct Frame {
    Board board;
    Branch branch;
  };

  void step() {
    Frame& frame = stack_.back();
    const Move move = frame.branch.moves[static_cast<std::size_t>(frame.branch.next++)];
    Board child = frame.board;
    if (frame.branch.next == frame.branch.count) stack_.pop_back();
    ++outcome_.nodes;
    if (propagator_.place(child, move)) visit(child);
  }

  // A board at rest: solved, or to be branched on.
  void visit(const Board& board) {
    const Branch branch = smallest_branch(geometry_, board);
    if (branch.count > 0) {
      stack_.push_back({board, branch});
      return;
    }
    ++outcome_.count;
    if (grids_ != nullptr) grids_->push_back(read_grid(shape_, board));
  }

  const Shape& shape_;
  Geometry geometry_;
  Propagator propagator_;
  SearchLimits limits_;
  std::vector<FullGrid>* grids_;
  SolutionCount outcome_;
  std::vector<Frame> stack_;
};

// A cell with the fewest digits left (of those with several), chosen at random, its digits in random order.
Branch random_branch(const Geometry& geometry, const Board& board, Rng& rng) {
  std::array<std::uint8_t, kMaxCells> smallest{};
  std::uint32_t ties = 0;
  int fewest = kMaxSide + 1;
  for (int cell = 0; cell < geometry.cells; ++cell) {
    const int size = std::popcount(board.digits[static_cast<std::size_t>(cell)]);
    if (size < 2 || size > fewest) continue;
    if (size < fewest) ties = 0;
    fewest = size;
    smallest[ties++] = static_cast<std::uint8_t>(cell);
  }
  if (ties == 0) return {};
  Branch branch = branch_on_cell(board, smallest[rng.below(ties)]);
  std::span<Move> moves(branch.moves.data(), static_cast<std::size_t>(branch.count));
  rng.shuffle(moves);
  return branch;
}

// One attempt at a random grid; empty when it needed more than `node_limit` nodes.
std::optional<FullGrid> try_random_grid(const Shape& shape, const Geometry& geometry, Rng& rng, int node_limit) {
  Propagator propagator(geometry);
  std::vector<std::pair<Board, Branch>> stack;
  Board board;
  propagator.load(Position(shape), board);
  stack.emplace_back(board, random_branch(geometry, board, rng));
  for (int node = 0; node < node_limit && !stack.empty(); ++node) {
    auto& [parent, branch] = stack.back();
    if (branch.next == branch.count) {
      stack.pop_back();
      continue;
    }
    board = parent;
    if (!propagator.place(board, branch.moves[static_cast<std::size_t>(branch.next++)])) continue;
    const Branch further = random_branch(geometry, board, rng);
    if (further.count == 0) return read_grid(shape, board);
    stack.emplace_back(board, further);
  }
  return std::nullopt;
}

}  // namespace

FullGrid random_full_grid(const Shape& shape, Rng& rng) {
  const Geometry geometry(shape);
  while (true) {
    if (auto grid = try_random_grid(shape, geometry, rng, 4 * shape.cell_count())) return *grid;
  }
}

SolutionCount search_any_shape(const Position& position, SearchLimits limits, std::vector<FullGrid>* grids) {
  return Search(position, limits, grids).run();
}

}  // namespace cp::detail
