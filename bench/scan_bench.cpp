// SPDX-License-Identifier: Apache-2.0
// How fast does a collection go through a scan, and what takes the time?
//
//   scan_bench [puzzles] [threads]
//
// Random minimal puzzles and images of published puzzles with 17 givens; first one core, depth by depth (CPU time, depths in turn in
// each of three rounds, the median), then the parts of a survey at depth `balances`, then a whole scan with 1, 2, ... threads (wall
// time: read the ratios, and only on a machine that does nothing else). Ranks: bench/ranks_bench.sh.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "balance/finder.h"
#include "cpu_seconds.h"
#include "deduce/basics.h"
#include "exact/random_grid.h"
#include "exact/solve.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "support/data_rows.h"
#include "sweep/sweep.h"

namespace cp::bench {
namespace {

constexpr int kRounds = 3;

template <typename Work>
double seconds_of(const Work& work) {
  const double start = cpu_seconds();
  work();
  return cpu_seconds() - start;
}

std::vector<Position> minimal_puzzles(std::size_t count) {
  std::vector<Position> puzzles;
  for (std::size_t i = 0; i < count; ++i) puzzles.push_back(random_minimal_puzzle(standard_shape(), i));
  return puzzles;
}

std::vector<Position> few_givens(std::size_t count) {
  std::vector<Position> puzzles;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string line = support::published_puzzle(i % 2 == 0 ? "OEIS-A372224" : "W-anti-bruteforce");
    puzzles.push_back(Transform::random(standard_shape(), i).image(support::read(line)));
  }
  return puzzles;
}

void depths(const char* name, const std::vector<Position>& puzzles) {
  constexpr SurveyDepth kDepths[] = {SurveyDepth::kForm, SurveyDepth::kBasics, SurveyDepth::kBalances, SurveyDepth::kFull};
  std::printf("%s, %zu puzzles, one core\n", name, puzzles.size());
  std::vector<std::vector<double>> times(4);
  for (int round = 0; round < kRounds; ++round) {
    for (std::size_t depth = 0; depth < 4; ++depth) {
      // The whole catalogue is dear: a share of the puzzles, once.
      const bool is_full = kDepths[depth] == SurveyDepth::kFull;
      if (is_full && round > 0) continue;
      const std::size_t count = is_full ? std::max<std::size_t>(1, puzzles.size() / 20) : puzzles.size();
      times[depth].push_back(seconds_of([&] {
                               for (std::size_t i = 0; i < count; ++i) survey_puzzle(puzzles[i], {kDepths[depth]});
                             }) /
                             static_cast<double>(count));
    }
  }
  for (std::size_t depth = 0; depth < 4; ++depth) {
    std::sort(times[depth].begin(), times[depth].end());
    const double median = times[depth][times[depth].size() / 2];
    std::printf("  %-10s %10.1f us each, %9.1f a second a core\n", std::string(name_of(kDepths[depth])).c_str(), 1e6 * median, 1 / median);
  }
}

// Where the time of a survey at depth `balances` goes.
void parts(const std::vector<Position>& puzzles) {
  std::size_t stuck = 0;
  double form = 0;
  double basics = 0;
  double pairs = 0;
  double finder = 0;
  double path = 0;
  for (const Position& puzzle : puzzles) {
    form += seconds_of([&] { is_proper(puzzle) ? canonical_form(puzzle).symmetries : 0; });
    Position after = puzzle;
    basics += seconds_of([&] { run_basics(after); });
    path += seconds_of([&] { survey_puzzle(puzzle, {SurveyDepth::kBasics}); });
    if (after.is_complete()) continue;
    ++stuck;
    pairs += seconds_of([&] { DistinctBalances(after, 0); });
    FinderOptions options;
    options.most_free_slack = 0;
    options.most_raw_slack = 0;
    options.limit = 3;
    finder += seconds_of([&] { find_balances(after, options); });
  }
  const auto micros = [](double seconds, std::size_t count) { return count == 0 ? 0.0 : 1e6 * seconds / static_cast<double>(count); };
  std::printf("  parts: properness and form %.1f us, basics %.1f us, survey to basics %.1f us; where the basics end (%zu puzzles): all pairs %.1f us, finder in all %.1f us\n",
              micros(form, puzzles.size()), micros(basics, puzzles.size()), micros(path, puzzles.size()), stuck, micros(pairs, stuck), micros(finder, stuck));
}

void scaling(const std::vector<Position>& puzzles, int most_threads) {
  const std::filesystem::path folder = std::filesystem::temp_directory_path();
  const std::string in = (folder / "counterpoise-scan-bench.txt").string();
  const std::string out = (folder / "counterpoise-scan-bench.jsonl").string();
  {
    std::ofstream file(in);
    for (const Position& puzzle : puzzles) file << to_line(puzzle) << '\n';
  }
  double alone = 0;
  for (int threads = 1; threads <= most_threads; ++threads) {
    SweepWish wish;
    wish.input = in;
    wish.output = out;
    wish.replace = true;
    wish.threads = threads;
    const auto start = std::chrono::steady_clock::now();
    const double cpu = cpu_seconds();
    const auto end = sweep(wish, {});
    const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
    if (!end || end->count.puzzles != puzzles.size()) std::exit(1);
    if (threads == 1) alone = spent.count();
    std::printf("  scan with %d threads: %8.1f a second (wall), %.2f times one thread, %.2f cores busy\n", threads, static_cast<double>(puzzles.size()) / spent.count(), alone / spent.count(),
                (cpu_seconds() - cpu) / spent.count());
  }
  std::filesystem::remove(in);
  std::filesystem::remove(out);
}

}  // namespace
}  // namespace cp::bench

int main(int argc, char** argv) {
  const auto count = static_cast<std::size_t>(argc > 1 ? std::max(20L, std::atol(argv[1])) : 400);
  const int threads = argc > 2 ? std::atoi(argv[2]) : 2;
#ifndef NDEBUG
  std::printf("warning: asserts are on; these figures mean nothing\n");
#endif
  const auto minimal = cp::bench::minimal_puzzles(count);
  cp::bench::depths("random minimal", minimal);
  cp::bench::parts(minimal);
  cp::bench::scaling(minimal, threads);
  const auto few = cp::bench::few_givens(count / 4);
  cp::bench::depths("images of 17 givens", few);
  cp::bench::parts(few);
  return 0;
}
