// SPDX-License-Identifier: Apache-2.0
// Is anything a technique says ever wrong? Every step on every audited state is compared with all solutions of that
// state, on a sample once more with CaDiCaL and a plain search; its reason is replayed; the state is printed, read and
// asked again. Techniques that need a unique solution are judged where the givens have one. A technique with fewer than 200 firings counts as not audited, and the audit fails.
//
//   soundness_audit [--full] [--seed N] [--markdown FILE]
#include "audit/audit_judge.h"
#include "audit/audit_report.h"
#include "audit/rare_states.h"
#include "base/text.h"
#include "deduce/technique.h"
#include "exact/solve.h"
#include "grid/position.h"
#include "oracle/cadical_oracle.h"
#include "step/step.h"

namespace {

using namespace cp;
using namespace cp::audit;

constexpr long long kFloor = 200;
constexpr std::size_t kFaultsShown = 5;

std::vector<StatePlan> plans(bool full) {
  if (full) return {{"4x4", 400, 4}, {"6x6", 400, 6}, {"9x9", 360, 12}, {"16x16", 1, 1}};
  return {{"4x4", 50, 4}, {"6x6", 40, 6}, {"9x9", 20, 10}, {"16x16", 1, 1}};
}

Table make_table(const Judge& judge) {
  Table table{{"technique", "firings", "conclusions checked", "checked by CaDiCaL too", "wrong"}, {}};
  Tally total;
  const auto row = [](std::string name, const Tally& tally) {
    return std::vector<std::string>{std::move(name), to_text(tally.firings), to_text(tally.conclusions), to_text(tally.second_opinions), to_text(tally.wrong)};
  };
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    const Tally& tally = judge.tallies()[i];
    table.rows.push_back(row(std::string(catalogue()[i].id), tally));
    total.firings += tally.firings;
    total.conclusions += tally.conclusions;
    total.second_opinions += tally.second_opinions;
    total.wrong += tally.wrong;
  }
  table.rows.push_back(row("total", total));
  return table;
}

std::string closing_words(const Judge& judge, int sought) {
  return "The basics were asked at every state, the others at a part of them; what was rare was then sought along " +
         to_text(sought) + " further paths (hard puzzles, grids of pairs, half-filled grids, rectangles). States: " + to_text(judge.states(Origin::kFresh)) + " fresh puzzles, " + to_text(judge.states(Origin::kPath)) + " along random paths, " +
         to_text(judge.states(Origin::kStruck)) + " with random false candidates struck out; " + to_text(judge.states_with_several_solutions()) +
         " of them with several solutions. Each was also printed, read and asked again.";
}

// What is still below the floor is sought in rare states.
int look_for_rare(Judge& judge, std::uint64_t seed, int most) {
  const auto is_rare = [&](const Technique& technique) {
    return judge.tallies()[static_cast<std::size_t>(&technique - catalogue().data())].firings < kFloor;
  };
  if (judge.faults().size() >= kFaultsShown) return 0;
  return seek_rare(seed, {most, most, 4 * most}, is_rare, [&](const AuditState& state, auto is_wanted) {
    judge.look_at(state, is_wanted);
    return judge.faults().size() < kFaultsShown;
  });
}

bool enough_firings(const Judge& judge) {
  bool enough = true;
  for (std::size_t i = 0; i < catalogue().size(); ++i) {
    if (judge.tallies()[i].firings >= kFloor) continue;
    std::printf("NOT AUDITED: %s fired %lld times, the floor is %lld\n", std::string(catalogue()[i].id).c_str(), judge.tallies()[i].firings, kFloor);
    enough = false;
  }
  return enough;
}

}  // namespace

int main(int count, char** words) {
  const AuditOptions options = read_options(count, words);
  Judge judge(options.full ? 40 : 20);
  for (const StatePlan& plan : plans(options.full)) {
    visit_states(plan, options.seed, [&](const AuditState& state) {
      judge.look_at(state, options.full ? 30 : 20);
      return judge.faults().size() < kFaultsShown;
    });
  }
  const int sought = look_for_rare(judge, options.seed, options.full ? 2'000 : 250);
  const Table table = make_table(judge);
  print_table(table);
  std::printf("%s\n", closing_words(judge, sought).c_str());
  for (const std::string& fault : judge.faults()) std::printf("\nFAULT %s", fault.c_str());
  const bool written = write_markdown(options.markdown_file, "Soundness of the techniques", table, closing_words(judge, sought));
  return judge.faults().empty() && enough_firings(judge) && written ? 0 : 1;
}
