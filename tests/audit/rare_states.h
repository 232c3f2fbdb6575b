// SPDX-License-Identifier: Apache-2.0
// Positions in which rare techniques fire: hard puzzles, each in random worlds, along random paths from there; grids
// on the way to two candidates everywhere; grids half filled; grids in which a rectangle is nearly deadly. The floor of firings that plain random puzzles do not reach is
// reached here; of the hard puzzles the states differ, but the puzzles behind them are few.
#pragma once

#include <array>
#include <string_view>

#include "audit/audit_states.h"
#include "audit/audit_worlds.h"
#include "deduce/basics.h"
#include "grid/notation.h"

namespace cp::audit {

// Hard puzzles named in tests/data/puzzles.tsv (their sources are in that table's read-me).
inline constexpr std::array<std::string_view, 9> kRarePuzzles = {
    "1.......2.9.4...5...6...7...5.9.3.......7.......85..4.7.....6...3...9.8...2.....1",
    ".......39.....1..5..3.5.8....8.9...6.7...2...1..4.......9.8..5..2....6..4..7.....",
    ".......12........3..23..4....18....5.6..7.8.......9.....85.....9...4.5..47...6...",
    "........3..1..56...9..4..7......9.5.7.......8.5.4.2....8..2..9...35..1..6........",
    "..53.....8......2..7..1.5..4....53...1..7...6..32...8..6.5....9..4....3......97..",
    "8..........36......7..9.2...5...7.......457.....1...3...1....68..85...1..9....4..",
    "1....7.9..3..2...8..96..5....53..9...1..8...26....4...3......1..4......7..7...3..",
    "...8.1..........435............7.8........1...2..3....6......75..34........2..6..",
    ".2..........6....3.74.8.........3..2.8..4..1.6..5.........1.78.5....9..........4.",
};

// A hard puzzle in a random world, some of its false candidates struck so that paths differ, along a random path.
template <typename Visit>
void visit_hard(Rng& rng, int number, Visit visit) {
  const Position plain = *parse_position(kRarePuzzles[static_cast<std::size_t>(number) % kRarePuzzles.size()]);
  const Position puzzle = World(plain.shape(), rng).map(plain);
  const FullGrid solution = solutions(puzzle, 2).grids.front();
  if (!visit(AuditState{puzzle, Origin::kFresh})) return;
  Position position = puzzle;
  const std::uint32_t share = rng.below(40);
  for (const Candidate& wrong : false_candidates(position, find_backbone(position))) {
    if (rng.below(100) < share) position.eliminate(wrong);
  }
  walk_path(position, solution, rng, visit);
}

// Towards a grid in which all cells have two candidates: the basics, then a false candidate of a cell that has more goes.
template <typename Visit>
void visit_towards_pairs(Rng& rng, Visit visit) {
  const FullGrid solution = random_grid(standard_shape(), rng.next());
  Position position = random_minimal_puzzle(solution, rng.next());
  while (run_basics(position) && !position.is_complete()) {
    if (!visit(AuditState{position, Origin::kStruck})) return;
    std::vector<Candidate> wrong;
    for (const Cell cell : position.open()) {
      if (position.candidates(cell).size() <= 2) continue;
      for (const Digit digit : position.candidates(cell) - DigitSet::of(solution.at(cell))) wrong.push_back({cell, digit});
    }
    if (wrong.empty()) return;
    position.eliminate(wrong[rng.below(static_cast<std::uint32_t>(wrong.size()))]);
  }
}

// A path on which true digits are placed at random in between, so that open cells lie among placed ones that are no givens.
template <typename Visit>
void visit_half_filled(Rng& rng, Visit visit) {
  const FullGrid solution = random_grid(standard_shape(), rng.next());
  Position position = random_minimal_puzzle(solution, rng.next());
  while (!position.is_complete()) {
    if (!visit(AuditState{position, Origin::kStruck})) return;
    if (rng.below(2) == 0 && take_random_step(position, rng)) continue;
    const std::vector<Cell> open = shuffled(position.open(), rng);
    if (open.empty()) return;
    position.place(open[0], solution.at(open[0]));
  }
}

// Puzzles of ours, drawn at random, that the basics leave with two candidates in every cell but one.
inline constexpr std::array<std::string_view, 3> kPairPuzzles = {
    "6.....8...9...3....82....97.1.4.......57..9.27...5....8.....3.....5.7..6.3..2.7..",
    "..3.8...12.....8..96.......61...9..35....41.9...8..2......4....43..95........39.7",
    "4..5.6.3.5.....7..71.....5....1.5.......4..958..6...4......7.....2...6.8.6.91....",
};

// The position with some candidates put back that no placed digit forbids.
inline Position with_back(const Position& position, const std::vector<Candidate>& back) {
  Position loose(position.shape());
  for (const Cell cell : position.placed()) {
    if (position.givens().has(cell)) loose.place_given(cell, *position.digit_at(cell));
    else loose.place(cell, *position.digit_at(cell));
  }
  for (const Cell cell : position.open()) {
    for (const Digit digit : loose.candidates(cell) - position.candidates(cell)) {
      if (std::find(back.begin(), back.end(), Candidate{cell, digit}) == back.end()) loose.eliminate({cell, digit});
    }
  }
  return loose;
}

// Two candidates everywhere but in one cell, in the n-th world; then with one to three further candidates put back.
template <typename Visit>
void visit_pairs(std::uint64_t seed, int number, Visit visit) {
  Rng rng(seed + 104'729 * static_cast<std::uint64_t>(number));
  const Position plain = *parse_position(kPairPuzzles[static_cast<std::size_t>(number) % kPairPuzzles.size()]);
  Position position = World(plain.shape(), rng).map(plain);
  if (!run_basics(position) || !visit(AuditState{position, Origin::kPath})) return;
  std::vector<Candidate> gone;
  for (const Cell cell : position.open()) {
    DigitSet free = position.shape().digits() - position.candidates(cell);
    for (const Cell peer : position.shape().peers(cell) & position.placed()) free.remove(*position.digit_at(peer));
    for (const Digit digit : free) gone.push_back({cell, digit});
  }
  for (int variant = 0; variant < 4 && !gone.empty(); ++variant) {
    rng.shuffle(gone);
    const std::size_t count = std::min<std::size_t>(1 + rng.below(3), gone.size());
    if (!visit(AuditState{with_back(position, {gone.begin(), gone.begin() + static_cast<std::ptrdiff_t>(count)}), Origin::kStruck})) return;
  }
}

// Strikes from the cells what is not among the digits; true digits stay.
inline void keep_only(Position& position, const CellSet& cells, DigitSet digits, const FullGrid& solution) {
  for (const Cell cell : cells) {
    for (const Digit digit : position.candidates(cell) - digits - DigitSet::of(solution.at(cell))) position.eliminate({cell, digit});
  }
}

// Two rows of a band, crossed by a column in each of two or three stacks.
struct Crossing {
  std::array<std::vector<Cell>, 2> rows;
  CellSet cells;
};

inline Crossing random_crossing(const Shape& shape, std::size_t width, Rng& rng) {
  const int top = 3 * static_cast<int>(rng.below(3));
  std::vector<int> rows = {top, top + 1, top + 2};
  std::vector<int> stacks = {0, 1, 2};
  rng.shuffle(rows);
  rng.shuffle(stacks);
  Crossing crossing;
  for (std::size_t k = 0; k < width; ++k) {
    const int column = 3 * stacks[k] + static_cast<int>(rng.below(3));
    for (std::size_t i = 0; i < 2; ++i) {
      crossing.rows[i].push_back(shape.cell_at(rows[i], column));
      crossing.cells.add(crossing.rows[i].back());
    }
  }
  return crossing;
}

// Six cells that hold three digits, but for one cell of the lower row, by the solution: made to look so.
inline bool make_six(Position& position, const Crossing& crossing, const FullGrid& solution) {
  DigitSet digits;
  CellSet plain;
  for (const Cell cell : crossing.rows[0]) digits.add(solution.at(cell));
  for (const Cell cell : crossing.cells) {
    if (digits.has(solution.at(cell))) plain.add(cell);
  }
  keep_only(position, plain, digits, solution);
  return plain.size() == 5;
}

// Four cells, a digit across: plain there, and the digit nowhere else in both rows.
inline bool make_four(Position& position, const Crossing& crossing, const FullGrid& solution) {
  const CellSet plain = CellSet::of(crossing.rows[0][0]) | CellSet::of(crossing.rows[1][1]);
  const Digit digit = solution.at(crossing.rows[0][0]);
  if (solution.at(crossing.rows[1][1]) != digit) return false;
  DigitSet shared = position.shape().digits() - DigitSet::of(digit);
  for (const Cell cell : crossing.cells) shared = shared & position.candidates(cell);
  if (shared.is_empty()) return false;
  keep_only(position, plain, DigitSet::of(digit) | DigitSet::of(*shared.begin()), solution);
  for (const Cell cell : plain) {
    for (const Cell other : position.places(position.shape().houses_of(cell)[0], digit) - crossing.cells) position.eliminate({other, digit});
  }
  return true;
}

// Four cells: two side by side hold a pair, the other two these and one digit more.
inline bool make_roof(Position& position, const Crossing& crossing, const FullGrid& solution) {
  DigitSet pair;
  for (const Cell cell : crossing.rows[0]) pair.add(solution.at(cell));
  DigitSet more;
  for (const Cell cell : crossing.rows[1]) more.add(solution.at(cell));
  more = more - pair;
  if (more.size() != 1) return false;
  for (const Cell cell : crossing.rows[0]) keep_only(position, CellSet::of(cell), pair, solution);
  for (const Cell cell : crossing.rows[1]) keep_only(position, CellSet::of(cell), pair | more, solution);
  return true;
}

// A puzzle, some true digits placed, in which false candidates are struck until a rectangle is nearly deadly.
template <typename Visit>
void visit_rectangles(std::uint64_t seed, int number, Visit visit) {
  Rng rng(seed + 15'485'863 * static_cast<std::uint64_t>(number + 1));
  const Shape& shape = standard_shape();
  const FullGrid solution = random_grid(shape, rng.next());
  const Position puzzle = random_minimal_puzzle(solution, rng.next());
  const World world(shape, rng);
  for (int attempt = 0; attempt < 500; ++attempt) {
    const std::size_t width = 2 + rng.below(2);
    const Crossing crossing = random_crossing(shape, width, rng);
    if (crossing.cells.meets(puzzle.givens())) continue;
    Position position = puzzle;
    const std::vector<Cell> others = shuffled(puzzle.open() - crossing.cells, rng);
    for (std::size_t i = rng.below(12); i > 0; --i) position.place(others[i], solution.at(others[i]));
    const bool is_made = width == 3 ? make_six(position, crossing, solution) : rng.below(2) == 0 ? make_four(position, crossing, solution) : make_roof(position, crossing, solution);
    if (!is_made) continue;
    if (!visit(AuditState{world.map(position), Origin::kStruck})) return;
  }
}

// The n-th source of rare states, the three kinds in turn; the visitor answers false to stop it.
template <typename Visit>
void visit_rare(std::uint64_t seed, int number, Visit visit) {
  Rng rng(seed + 7919 * static_cast<std::uint64_t>(number));
  if (number % 3 == 0) visit_hard(rng, number / 3, visit);
  else if (number % 3 == 1) visit_towards_pairs(rng, visit);
  else visit_half_filled(rng, visit);
}

// How many sources of each kind to try at most.
struct RareEffort {
  int rectangles;
  int paths;
  int pairs;
};

// Visits rare states as long as there is a technique that is still rare: the rectangles while one of the uniqueness family is. The visitor
// is told which techniques are wanted, and answers false to stop everything. Gives the number of sources that were tried.
template <typename IsRare, typename Look>
int seek_rare(std::uint64_t seed, const RareEffort& effort, IsRare is_rare, Look look) {
  const auto is_rare_rectangle = [&](const Technique& technique) { return technique.family == "uniqueness" && is_rare(technique); };
  int sought = 0;
  bool go_on = true;
  const auto seek = [&](int most, auto is_wanted, auto visit_source) {
    for (int i = 0; i < most && go_on && std::any_of(catalogue().begin(), catalogue().end(), is_wanted); ++i, ++sought) {
      visit_source(seed, i, [&](const AuditState& state) { return go_on = look(state, is_wanted); });
    }
  };
  seek(effort.rectangles, is_rare_rectangle, [](auto... all) { visit_rectangles(all...); });
  seek(effort.paths, is_rare, [](auto... all) { visit_rare(all...); });
  seek(effort.pairs, is_rare, [](auto... all) { visit_pairs(all...); });
  return sought;
}

}  // namespace cp::audit
