// SPDX-License-Identifier: Apache-2.0
// The search for puzzles, on several threads. Tries are cut into numbered blocks, each with random numbers of its own, and
// what blocks find is taken up in the order of their numbers: the result depends on plan and seed, not on threads or speed.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "compose/attempt.h"

namespace cp {

inline constexpr int kTriesInBlock = 64;

struct Composed {
  Position puzzle;
  WayIn way;
  std::string form;  // the canonical form; no two found have the same
};

// What a search has come to. With the plan it is all that is needed to go on later.
struct ComposeState {
  std::uint64_t seed = 0;
  std::uint64_t next_block = 0;                          // all blocks before it are done
  std::array<std::uint64_t, kStageCount> reached{};      // tries that got to each stage or further
  std::uint64_t repeated = 0;                            // finds that were another one in other clothes
  std::vector<Composed> found;                           // in the order of blocks
};

// Asked now and then, from the thread that called compose().
class ComposeWatch {
 public:
  virtual ~ComposeWatch() = default;
  // False ends the search; whole blocks are kept.
  virtual bool goes_on(const ComposeState& state) = 0;
};

// Goes on from the state until so many puzzles are found (all of the last block are kept), so many blocks in all are done,
// or the watch has had enough. Threads: at least 1; one in the WebAssembly module, whatever is asked.
void compose(const Workshop& workshop, ComposeState& state, std::size_t wanted, std::uint64_t most_blocks, int threads, ComposeWatch& watch);

}  // namespace cp
