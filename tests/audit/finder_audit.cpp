// SPDX-License-Identifier: Apache-2.0
// Does the finder have something to say where the basics end? A hundred random minimal puzzles that singles, locked
// candidates, subsets and basic fish leave stuck: how many have an eliminating balance with free slack at most 1?
// Every elimination is checked against all solutions and every reason is replayed.
#include <array>
#include <fstream>
#include <string>

#include "audit/audit_report.h"
#include "balance/finder.h"
#include "exact/backbone.h"
#include "support/random_balances.h"
#include "verify/step_check.h"

namespace cp {
namespace {

struct Totals {
  int positions = 0;
  int with_balance = 0;
  long balances = 0;
  long eliminations = 0;
  long wrong = 0;
  long not_replayed = 0;
  std::array<long, kHighestLevel + 1> by_level{};
};

void audit_position(const Position& position, std::size_t limit, Totals& totals) {
  FinderOptions options;
  options.limit = limit;
  const FinderResult result = find_balances(position, options);
  const Backbone truth = find_backbone(position);
  ++totals.positions;
  totals.with_balance += result.balances.empty() ? 0 : 1;
  for (const FoundBalance& found : result.balances) {
    ++totals.balances;
    ++totals.by_level[static_cast<std::size_t>(found.result.level)];
    const Step step{"balance", {}, found.result.eliminations, found.result.reason};
    if (!check_step(position, step).holds) ++totals.not_replayed;
    for (const Candidate& elimination : found.result.eliminations) {
      ++totals.eliminations;
      if (!truth.is_never(elimination)) ++totals.wrong;
    }
  }
}

audit::Table table_of(const Totals& totals) {
  audit::Table table;
  table.head = {"positions", "with an eliminating balance", "balances", "eliminations checked", "wrong", "not replayed"};
  for (int level = 1; level < kHighestLevel; ++level) table.head.push_back("level " + std::to_string(level));
  table.rows.push_back({std::to_string(totals.positions), std::to_string(totals.with_balance), std::to_string(totals.balances),
                        std::to_string(totals.eliminations), std::to_string(totals.wrong), std::to_string(totals.not_replayed)});
  for (std::size_t level = 1; level < kHighestLevel; ++level) table.rows[0].push_back(std::to_string(totals.by_level[level]));
  return table;
}

int run(const audit::AuditOptions& options) {
  const int wanted = options.full ? 400 : 100;
  const std::size_t limit = options.full ? 20 : 3;
  std::uint64_t seed = options.seed;
  Totals totals;
  while (totals.positions < wanted) audit_position(support::stuck_position(standard_shape(), seed), limit, totals);
  audit::print_table(table_of(totals));
  if (!options.markdown_file.empty()) {
    std::ofstream(options.markdown_file) << "## Balances where the basics end\n\n"
        "Random minimal 9x9 puzzles at the end of singles, locked candidates, subsets and basic fish. The best "
        << limit << " balances of each with free slack at most 1; eliminations are checked against all solutions.\n\n"
        << audit::as_markdown(table_of(totals));
  }
  const bool ok = totals.wrong == 0 && totals.not_replayed == 0 && totals.with_balance == totals.positions && totals.eliminations >= 200;
  return ok ? 0 : 1;
}

}  // namespace
}  // namespace cp

int main(int argc, char** argv) { return cp::run(cp::audit::read_options(argc, argv)); }
