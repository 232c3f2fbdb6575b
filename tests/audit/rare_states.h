// SPDX-License-Identifier: Apache-2.0
// Positions in which rare techniques fire: hard puzzles, each in random worlds, along random paths from there. A floor
// of firings that random puzzles do not reach is reached here; the states differ, the puzzles behind them are few.
#pragma once

#include <array>
#include <string_view>

#include "audit/audit_states.h"
#include "audit/audit_worlds.h"
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

// The n-th rare state path: the puzzle in a random world, then along a path; the visitor answers false to stop it.
template <typename Visit>
void visit_rare(std::uint64_t seed, int number, Visit visit) {
  Rng rng(seed + 7919 * static_cast<std::uint64_t>(number));
  const Position plain = *parse_position(kRarePuzzles[static_cast<std::size_t>(number) % kRarePuzzles.size()]);
  const Position puzzle = World(plain.shape(), rng).map(plain);
  const FullGrid solution = solutions(puzzle, 2).grids.front();
  bool goes_on = visit(AuditState{puzzle, Origin::kFresh});
  // Some false candidates go at once, so that the path does not begin with the same steps each time.
  Position position = puzzle;
  const std::uint32_t share = rng.below(40);
  for (const Candidate& wrong : false_candidates(position, find_backbone(position))) {
    if (rng.below(100) < share) position.eliminate(wrong);
  }
  if (goes_on) walk_path(position, solution, rng, visit);
}

}  // namespace cp::audit
