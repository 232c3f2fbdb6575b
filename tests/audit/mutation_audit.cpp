// SPDX-License-Identifier: Apache-2.0
// Would the audits notice? The build gives this program the room of the techniques compiled with CP_MUTATE,
// in which one guard of one technique at a time can be weakened (src/deduce/detail/guard.h). Each such mutant must be caught:
// - a weakened soundness guard by a wrong step, by a reason that does not replay, and by the slow twin;
// - a weakened size guard by the slow twin (its steps are true, only not of that technique).
//
//   mutation_audit [--seed N] [--markdown FILE]
#include "audit/audit_judge.h"
#include "audit/audit_report.h"
#include "audit/audit_twins.h"
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

constexpr long long kMostStates = 600;

// After how many states each check spoke up; 0: it did not.
struct Caught {
  long long wrong_step = 0;
  long long reason = 0;
  long long twin = 0;
};

Caught hunt(const Technique& technique, deduce::Guard guard, std::uint64_t seed) {
  deduce::weakness = {technique.id, guard};
  const auto index = static_cast<std::size_t>(&technique - catalogue().data());
  const bool is_sound = guard == deduce::Guard::kTrueSize;
  Caught caught;
  long long states = 0;
  const auto look = [&](const AuditState& state) {
    ++states;
    std::size_t count = 0;
    const auto possible = possible_digits(state.position, count);
    if (!possible) return true;
    const std::vector<Step> steps = steps_of(technique, state.position);
    for (const Step& step : steps) {
      if (caught.wrong_step == 0 && is_wrong(step, *possible)) caught.wrong_step = states;
      if (caught.reason == 0 && !oracle::replay_fault(state.position, step).empty()) caught.reason = states;
    }
    if (caught.twin == 0 && conclusions_of(steps) != kTwins[index](state.position)) caught.twin = states;
    const bool is_done = caught.twin > 0 && (is_sound || (caught.wrong_step > 0 && caught.reason > 0));
    return !is_done && states < kMostStates;
  };
  visit_states({"9x9", 40, 10}, seed, look);
  deduce::weakness = {};
  return caught;
}

std::string shown(long long states) { return states == 0 ? "-" : to_text(states); }

}  // namespace

int main(int count, char** words) {
  const AuditOptions options = read_options(count, words);
  Table table{{"technique", "weakened guard", "wrong step after", "bad reason after", "twin differs after"}, {}};
  int mutants = 0;
  int survivors = 0;
  for (const Technique& technique : catalogue()) {
    for (const deduce::Guard guard : {deduce::Guard::kSound, deduce::Guard::kTrueSize}) {
      const bool is_sound = guard == deduce::Guard::kTrueSize;
      if (is_sound && technique.family == "single") continue;  // nothing is smaller than a single
      ++mutants;
      const Caught caught = hunt(technique, guard, options.seed);
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
