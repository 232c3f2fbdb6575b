// SPDX-License-Identifier: Apache-2.0
#include "compose/crew.h"

#include <algorithm>

#include "grid/canonical_form.h"

#ifndef __wasi__
#include <atomic>
#include <condition_variable>
#include <map>
#include <mutex>
#include <thread>
#endif

namespace cp {

namespace {

struct Block {
  std::array<std::uint64_t, kStageCount> reached{};
  std::vector<Composed> found;
};

// Stops early, with what it has, when `is_off` says so; the block is then not taken up.
template <typename IsOff>
Block run_block(const Workshop& workshop, std::uint64_t seed, std::uint64_t number, IsOff is_off) {
  constexpr std::uint64_t kBlockStream = 0x706C616E;  // keeps the blocks apart from other uses of the seed
  Rng rng(Rng(seed).next() ^ Rng(number + kBlockStream).next());
  Block block;
  for (int i = 0; i < kTriesInBlock && !is_off(); ++i) {
    Attempt attempt = workshop.attempt(rng);
    for (std::size_t stage = 0; stage <= static_cast<std::size_t>(attempt.stage); ++stage) ++block.reached[stage];
    if (!attempt.way) continue;
    std::string form = canonical_form(attempt.puzzle).text;
    block.found.push_back({std::move(attempt.puzzle), std::move(*attempt.way), std::move(form)});
  }
  return block;
}

void take_up(Block block, ComposeState& state) {
  for (std::size_t stage = 0; stage < kStageCount; ++stage) state.reached[stage] += block.reached[stage];
  for (Composed& each : block.found) {
    const bool is_new = std::none_of(state.found.begin(), state.found.end(), [&](const Composed& other) { return other.form == each.form; });
    if (is_new) state.found.push_back(std::move(each));
    else ++state.repeated;
  }
  ++state.next_block;
}

bool is_done(const ComposeState& state, std::size_t wanted, std::uint64_t most_blocks) {
  return state.found.size() >= wanted || state.next_block >= most_blocks;
}

void compose_alone(const Workshop& workshop, ComposeState& state, std::size_t wanted, std::uint64_t most_blocks, ComposeWatch& watch) {
  while (!is_done(state, wanted, most_blocks) && watch.goes_on(state)) {
    take_up(run_block(workshop, state.seed, state.next_block, [] { return false; }), state);
  }
}

#ifndef __wasi__

// Workers take the next number; the caller's thread takes finished blocks up in order.
class Crew {
 public:
  Crew(const Workshop& workshop, ComposeState& state) : workshop_(workshop), state_(state), next_(state.next_block), seed_(state.seed) {}

  void run(std::size_t wanted, std::uint64_t most_blocks, int threads, ComposeWatch& watch) {
    std::vector<std::thread> workers;
    workers.reserve(static_cast<std::size_t>(threads));
    for (int i = 0; i < threads; ++i) workers.emplace_back([this, most_blocks] { work(most_blocks); });
    while (!is_done(state_, wanted, most_blocks) && watch.goes_on(state_)) {
      std::unique_lock lock(mutex_);
      news_.wait(lock, [this] { return tries_ > 0; });  // after every try, so that the watch is heard soon
      tries_ = 0;
      while (!is_done(state_, wanted, most_blocks)) {
        const auto first = finished_.find(state_.next_block);
        if (first == finished_.end()) break;
        take_up(std::move(first->second), state_);
        finished_.erase(first);
      }
    }
    {
      const std::scoped_lock lock(mutex_);
      is_off_ = true;
    }
    for (std::thread& worker : workers) worker.join();
  }

 private:
  void work(std::uint64_t most_blocks) {
    // Asked before every try.
    const auto is_off = [this] {
      const std::scoped_lock lock(mutex_);
      ++tries_;
      news_.notify_one();
      return is_off_;
    };
    while (!is_off()) {
      const std::uint64_t number = next_++;
      if (number >= most_blocks) return;  // others are at the last ones
      Block block = run_block(workshop_, seed_, number, is_off);
      if (is_off()) return;
      const std::scoped_lock lock(mutex_);
      finished_.emplace(number, std::move(block));
      ++tries_;
      news_.notify_one();
    }
  }

  const Workshop& workshop_;
  ComposeState& state_;  // touched by the caller's thread only
  std::atomic<std::uint64_t> next_;
  const std::uint64_t seed_;
  std::mutex mutex_;
  bool is_off_ = false;
  int tries_ = 0;  // since the caller's thread last looked
  std::condition_variable news_;
  std::map<std::uint64_t, Block> finished_;
};

#endif

}  // namespace

void compose(const Workshop& workshop, ComposeState& state, std::size_t wanted, std::uint64_t most_blocks, int threads, ComposeWatch& watch) {
#ifndef __wasi__
  if (threads > 1) return Crew(workshop, state).run(wanted, most_blocks, threads, watch);
#else
  static_cast<void>(threads);
#endif
  compose_alone(workshop, state, wanted, most_blocks, watch);
}

}  // namespace cp
