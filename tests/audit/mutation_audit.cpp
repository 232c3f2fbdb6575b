// SPDX-License-Identifier: Apache-2.0
// Would the audits notice? The build gives this program the room of the techniques compiled with CP_MUTATE,
// in which one guard of one technique at a time can be weakened (src/deduce/detail/guard.h). Each such mutant must be caught:
// - a weakened soundness guard by a wrong step, by a reason that does not replay, and by the slow twin;
// - a weakened size guard by the slow twin (its steps are true, only not of that technique).
// Every technique must have a soundness guard; not every one has a size guard.
//
//   mutation_audit [--seed N] [--markdown FILE]
#include "audit/audit_judge.h"
#include "audit/audit_report.h"
#include "audit/audit_twins.h"
#include "audit/rare_states.h"
#include "base/text.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"
#include "exact/solve.h"
#include "grid/position.h"
#include "oracle/definitions/plain_definition.h"
#include "step/step.h"

namespace {

using namespace cp;
using namespace cp::audit;

// States with their possible digits, made once with honest techniques.
struct Ground {
  Position position;
  std::array<DigitSet, kMaxCells> possible;
  bool is_proper;
};

std::vector<Ground> make_ground(std::uint64_t seed) {
  std::vector<Ground> ground;
  long long number = 0;
  const auto keep = [&](const AuditState& state) {
    std::size_t count = 0;
    const auto possible = possible_digits(state.position, count);
    if (possible) ground.push_back({state.position, *possible, count == 1 && has_proper_givens(state.position)});
    return true;
  };
  visit_states({"9x9", 40, 10}, seed, [&](const AuditState& state) { return (state.origin == Origin::kPath && number++ % 4 != 0) || keep(state); });
  for (int i = 0; i < 60; ++i) visit_rare(seed, i, [&](const AuditState& state) { return number++ % 6 != 0 || keep(state); });
  // Few cells with more than two candidates: what BUG looks at.
  const auto is_near_pairs = [](const Position& position) {
    int more = 0;
    for (const Cell cell : position.open()) more += position.candidates(cell).size() > 2 ? 1 : 0;
    return more >= 1 && more <= 4;
  };
  for (int i = 0; i < 300; ++i) visit_pairs(seed, i, [&](const AuditState& state) { return !is_near_pairs(state.position) || keep(state); });
  return ground;
}

// After how many states each check spoke up; 0: it did not.
struct Caught {
  long long wrong_step = 0;
  long long reason = 0;
  long long twin = 0;
  bool was_asked = false;  // the technique has this guard at all
};

Caught hunt(const Technique& technique, deduce::Guard guard, const std::vector<Ground>& ground) {
  const auto index = static_cast<std::size_t>(&technique - catalogue().data());
  const bool is_sound = guard == deduce::Guard::kTrueSize;
  deduce::was_asked = false;
  Caught caught;
  long long states = 0;
  for (const Ground& place : ground) {
    if (technique.needs_unique && !place.is_proper) continue;
    ++states;
    deduce::weakness = {};
    const std::vector<Step> honest = steps_of(technique, place.position);
    deduce::weakness = {technique.id, guard};
    const std::vector<Step> steps = steps_of(technique, place.position);
    for (const Step& step : steps) {
      if (caught.wrong_step == 0 && is_wrong(step, place.possible)) caught.wrong_step = states;
      if (caught.reason == 0 && !oracle::replay_fault(place.position, step).empty()) caught.reason = states;
    }
    // The twin is slow: it is asked where the mutant behaves otherwise than the technique.
    const bool differs = conclusions_of(steps) != conclusions_of(honest);
    if (caught.twin == 0 && differs && conclusions_of(steps) != kTwins[index](place.position)) caught.twin = states;
    if (caught.twin > 0 && (is_sound || (caught.wrong_step > 0 && caught.reason > 0))) break;
    if (states > 100 && !deduce::was_asked && is_sound) break;
  }
  caught.was_asked = deduce::was_asked;
  deduce::weakness = {};
  return caught;
}

std::string shown(long long states) { return states == 0 ? "-" : to_text(states); }

}  // namespace

int main(int count, char** words) {
  const AuditOptions options = read_options(count, words);
  Table table{{"technique", "weakened guard", "wrong step after", "bad reason after", "twin differs after"}, {}};
  const std::vector<Ground> ground = make_ground(options.seed);
  int mutants = 0;
  int survivors = 0;
  for (const Technique& technique : catalogue()) {
    for (const deduce::Guard guard : {deduce::Guard::kSound, deduce::Guard::kTrueSize}) {
      const bool is_sound = guard == deduce::Guard::kTrueSize;
      const Caught caught = hunt(technique, guard, ground);
      if (is_sound && !caught.was_asked) continue;  // it leaves nothing to a smaller technique
      ++mutants;
      table.rows.push_back({std::string(technique.id), is_sound ? "true size" : "soundness", shown(caught.wrong_step), shown(caught.reason), shown(caught.twin)});
      const bool is_caught = caught.twin > 0 && (is_sound ? caught.wrong_step == 0 && caught.reason == 0 : caught.wrong_step > 0 && caught.reason > 0);
      if (is_caught) continue;
      ++survivors;
      std::printf("SURVIVED: %s\n", std::string(technique.id).c_str());
    }
  }
  print_table(table);
  const std::string closing = to_text(mutants) + " mutants, " + to_text(survivors) + " survivors. The numbers are states looked at until the check spoke up.";
  std::printf("%s\n", closing.c_str());
  return write_markdown(options.markdown_file, "Mutants", table, closing) && survivors == 0 ? 0 : 1;
}
