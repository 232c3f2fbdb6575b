// SPDX-License-Identifier: Apache-2.0
// Checks that need no oracle. A technique must say the same in every world: rename digits, move rows and columns, turn
// the grid over, and its conclusions must move along. The catalogue, and any part of it without gaps in size, must reach
// the same end in whatever order it is used; run_basics must reach that end too, for every choice of groups.
//
//   worlds_audit [--full] [--seed N] [--markdown FILE]
#include "audit/audit_report.h"
#include "audit/audit_twins.h"
#include "audit/audit_worlds.h"
#include "base/text.h"
#include "deduce/basics.h"
#include "exact/solve.h"
#include "grid/position.h"
#include "oracle/definitions/plain_definition.h"
#include "step/step.h"

namespace {

using namespace cp;
using namespace cp::audit;

struct Counts {
  long long mapped_states = 0;
  long long mapped_conclusions = 0;
  long long ends = 0;
  long long ends_of_basics = 0;
  std::vector<std::string> faults;
};

void look_through_world(const Position& position, Rng& rng, Counts& counts) {
  const World world(position.shape(), rng);
  const Position there = world.map(position);
  ++counts.mapped_states;
  for (const Technique& technique : catalogue()) {
    if (!is_its_turn(technique, position, counts.mapped_states, 16)) continue;
    const oracle::Conclusions here = conclusions_of(steps_of(technique, position));
    counts.mapped_conclusions += static_cast<long long>(here.size());
    if (world.map(here) == conclusions_of(steps_of(technique, there))) continue;
    counts.faults.push_back(std::string(technique.id) + " says something else in another world\n" + to_candidate_text(position));
  }
}

void compare_with_basics(const Position& position, Rng& rng, Counts& counts) {
  for (unsigned choice = 0; choice < 16; ++choice) {
    const BasicsGroups groups{(choice & 1U) != 0, (choice & 2U) != 0, (choice & 4U) != 0, (choice & 8U) != 0};
    const Position end = end_in_random_order(position, techniques_of(groups), rng);
    Position fast = position;
    const bool is_possible = run_basics(fast, groups);
    ++counts.ends_of_basics;
    if (is_possible && fast == end) continue;
    counts.faults.push_back("run_basics ends elsewhere than the catalogue, groups " + to_text(choice) + "\n" + to_candidate_text(position));
  }
}

void compare_orders(const Position& position, Rng& rng, Counts& counts) {
  for (const auto& techniques : {techniques_of({}), choice_without_gaps(rng), choice_without_gaps(rng)}) {
    ++counts.ends;
    if (end_in_random_order(position, techniques, rng) == end_in_random_order(position, techniques, rng)) continue;
    counts.faults.push_back("the end depends on the order\n" + to_candidate_text(position));
  }
}

}  // namespace

int main(int count, char** words) {
  const AuditOptions options = read_options(count, words);
  Counts counts;
  Rng rng(options.seed);
  const int times = options.full ? 10 : 1;
  for (const StatePlan& plan : {StatePlan{"4x4", 20 * times, 4}, {"6x6", 20 * times, 4}, {"9x9", 12 * times, 6}, {"16x16", times > 1 ? 2 : 0, 1}}) {
    std::uint64_t number = 0;
    visit_states(plan, options.seed + 100, [&](const AuditState& state) {
      look_through_world(state.position, rng, counts);
      const bool is_sampled = state.origin != Origin::kPath || number++ % 12 == 0;
      if (is_sampled && how_many(state.position) != HowMany::kNone) {
        compare_with_basics(state.position, rng, counts);
        compare_orders(state.position, rng, counts);
      }
      return counts.faults.size() < 5;
    });
  }
  const Table table{{"check", "number"},
                    {{"states seen in another world", to_text(counts.mapped_states)},
                     {"conclusions that had to move along", to_text(counts.mapped_conclusions)},
                     {"ends reached in two random orders (all techniques; choices without gaps)", to_text(counts.ends)},
                     {"ends of run_basics compared (16 choices of groups)", to_text(counts.ends_of_basics)},
                     {"faults", to_text(static_cast<long long>(counts.faults.size()))}}};
  print_table(table);
  for (const std::string& fault : counts.faults) std::printf("\nFAULT %s", fault.c_str());
  return write_markdown(options.markdown_file, "Other worlds, other orders", table, "") && counts.faults.empty() ? 0 : 1;
}
