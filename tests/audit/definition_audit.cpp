// SPDX-License-Identifier: Apache-2.0
// Does each technique find all that its definition says, and nothing else? Compared with the slow twins on: every
// position that steps in any order reach from a fixed list of 4x4 puzzles (breadth first, up to a number for each),
// on states of random 6x6 and 9x9 puzzles (fresh, along paths, struck), and on random noise of candidates.
//
//   definition_audit [--full] [--seed N] [--markdown FILE]
#include <array>
#include <deque>
#include <set>

#include "audit/audit_report.h"
#include "audit/audit_twins.h"
#include "audit/rare_states.h"
#include "base/text.h"
#include "deduce/technique.h"
#include "exact/solve.h"
#include "grid/position.h"
#include "oracle/definitions/plain_definition.h"
#include "step/step.h"

namespace {

using namespace cp;
using namespace cp::audit;

constexpr std::size_t kFaultsShown = 5;

// The first two are printed in OEIS A198297 and A109252; the others are our own, drawn at random, all proper.
constexpr std::array<std::string_view, 8> kSmallPuzzles = {
    ".12.......1....3", ".4.2...1.....3..", ".......41...4.2.", ".......44..3.1..",
    "......1..4...1.3", ".....2.....34..2", ".....21.......43", "....13...2.....3",
};

struct Effort {
  std::size_t reached_per_puzzle;
  StatePlan middle;
  StatePlan large;
  std::uint64_t keep_one_in;  // of the states of random puzzles
  int noise;
  int every;         // techniques beyond the basics have their turn at every n-th state
  long long enough;  // instances of one of them after which it has none
  long long floor;   // fewer instances than this: not audited. The quick run is content with less
  int rare;          // paths of hard puzzles along which the rare ones are sought
};

// All positions reachable by single steps of any technique, and by striking one candidate at a time in between.
void look_at_reachable(std::string_view puzzle, const Effort& effort, TwinComparison& twins) {
  const auto start = parse_position(puzzle);
  std::deque<Position> waiting = {*start};
  std::set<std::string> seen = {to_candidate_text(*start)};
  while (!waiting.empty() && twins.faults().size() < kFaultsShown) {
    const Position position = waiting.front();
    waiting.pop_front();
    twins.look_at(position, effort.every, effort.enough);
    for (const Technique& technique : catalogue()) {
      for (const Step& step : steps_of(technique, position)) {
        Position next = position;
        apply(step, next);
        if (seen.size() < effort.reached_per_puzzle && seen.insert(to_candidate_text(next)).second) waiting.push_back(next);
      }
    }
    for (const Candidate& wrong : false_candidates(position, find_backbone(position))) {
      Position next = position;
      next.eliminate(wrong);
      if (seen.size() < effort.reached_per_puzzle && seen.insert(to_candidate_text(next)).second) waiting.push_back(next);
    }
  }
}

void look_at_random(const StatePlan& plan, std::uint64_t seed, const Effort& effort, TwinComparison& twins) {
  std::uint64_t number = 0;
  visit_states(plan, seed, [&](const AuditState& state) {
    if (state.origin != Origin::kPath || number++ % effort.keep_one_in == 0) twins.look_at(state.position, effort.every, effort.enough);
    return twins.faults().size() < kFaultsShown;
  });
}

void look_at_noise(const Effort& effort, std::uint64_t seed, TwinComparison& twins) {
  Rng rng(seed);
  for (int i = 0; i < effort.noise && twins.faults().size() < kFaultsShown; ++i) {
    for (const std::string_view shape : {"4x4", "6x6", "9x9"}) {
      const Position position = noise(*find_shape(shape), rng);
      // Where a cell or house is left with nothing, only the basics are defined (deduce/technique.h).
      if (position.has_clash()) twins.look_at(position, [](const Technique& technique) { return is_basic(technique); });
      else twins.look_at(position, effort.every, effort.enough);
    }
  }
}

// Techniques that are still below the floor, in rare states.
void look_for_rare(const Effort& effort, std::uint64_t seed, TwinComparison& twins) {
  const auto is_rare = [&](const Technique& technique) { return twins.instances(static_cast<std::size_t>(&technique - catalogue().data())) < effort.floor; };
  if (twins.faults().size() >= kFaultsShown) return;
  seek_rare(seed, {effort.rare, effort.rare, 5 * effort.rare}, is_rare, [&](const AuditState& state, auto is_wanted) {
    twins.look_at(state.position, is_wanted, true);
    return twins.faults().size() < kFaultsShown;
  });
}

Table make_table(const TwinComparison& twins) {
  Table table{{"technique", "instances compared", "states with any"}, {}};
  long long total = 0;
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    table.rows.push_back({std::string(catalogue()[i].id), to_text(twins.instances(i)), to_text(twins.states_with_any(i))});
    total += twins.instances(i);
  }
  table.rows.push_back({"total", to_text(total), ""});
  return table;
}

}  // namespace

int main(int count, char** words) {
  const AuditOptions options = read_options(count, words);
  const Effort effort = options.full ? Effort{4'000, {"6x6", 120, 6}, {"9x9", 60, 8}, 4, 1'500, 4, 2'000, 200, 600} : Effort{250, {"6x6", 20, 4}, {"9x9", 8, 4}, 10, 150, 8, 30, 20, 60};
  TwinComparison twins;
  for (const std::string_view puzzle : kSmallPuzzles) look_at_reachable(puzzle, effort, twins);
  look_at_random(effort.middle, options.seed, effort, twins);
  look_at_random(effort.large, options.seed, effort, twins);
  look_at_noise(effort, options.seed, twins);
  look_for_rare(effort, options.seed, twins);
  const Table table = make_table(twins);
  print_table(table);
  const std::string closing = to_text(twins.states()) + " states compared, " + to_text(static_cast<long long>(twins.faults().size())) + " disagreements.";
  std::printf("%s\n", closing.c_str());
  for (const std::string& fault : twins.faults()) std::printf("\nFAULT %s", fault.c_str());
  bool enough = true;
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    const long long floor = effort.floor;
    if (twins.instances(i) >= floor) continue;
    std::printf("NOT AUDITED: %s was seen %lld times, the floor is %lld\n", std::string(catalogue()[i].id).c_str(), twins.instances(i), floor);
    enough = false;
  }
  return write_markdown(options.markdown_file, "Techniques against their definitions", table, closing) && enough && twins.faults().empty() ? 0 : 1;
}
