// SPDX-License-Identifier: Apache-2.0
// How long does the catalogue take? One core, stuck positions of random minimal puzzles (where the basics end), and
// whole paths from the puzzles. Prints per technique how long the first step (or finding none) and all steps take, the
// sum over the catalogue a position, a path with and without balances, and one balance search for comparison: the
// ratios are what to quote, milliseconds depend on the machine.
//
//   catalogue_bench [POSITIONS]      default 100
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

#include "balance/finder.h"
#include "path/path.h"
#include "support/random_balances.h"

namespace cp {
namespace {

template <typename Work>
double microseconds(const Work& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count();
}

double quantile(std::vector<double> values, double share) {
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

struct Column {
  std::vector<double> first;
  std::vector<double> all;
  int fires = 0;
  std::size_t steps = 0;
};

void print_line(const char* name, const std::vector<double>& values, double base) {
  std::printf("%-40s %10.2f %10.2f %10.2f %8.2f\n", name, quantile(values, 0.5) / 1000, quantile(values, 0.95) / 1000, quantile(values, 1) / 1000,
              quantile(values, 0.5) / base);
}

int run(int wanted) {
#ifndef NDEBUG
  std::puts("warning: asserts are on, these figures mean nothing");
#endif
  std::vector<Column> columns(catalogue().size());
  std::vector<double> all_first;
  std::vector<double> balance;
  std::vector<double> path_with;
  std::vector<double> path_without;
  int solved_with = 0;
  int solved_without = 0;
  std::uint64_t seed = 1;
  for (int i = 0; i < wanted; ++i) {
    const Position position = support::stuck_position(standard_shape(), seed);
    double sum = 0;
    for (std::size_t k = 0; k < columns.size(); ++k) {
      FirstStep first;
      columns[k].first.push_back(microseconds([&] { catalogue()[k].find(position, first); }));
      sum += columns[k].first.back();
      columns[k].fires += first.found ? 1 : 0;
      StepList all;
      columns[k].all.push_back(microseconds([&] { catalogue()[k].find(position, all); }));
      columns[k].steps += all.steps.size();
    }
    all_first.push_back(sum);
    FinderOptions options;
    options.limit = 1;
    balance.push_back(microseconds([&] { columns[0].steps += find_balances(position, options).balances.size() > 1000 ? 1 : 0; }));
    Position puzzle(position.shape());
    for (const Cell cell : position.givens()) puzzle.place_given(cell, *position.digit_at(cell));
    PathOptions without;
    without.without = {std::string(kBalanceId)};
    path_with.push_back(microseconds([&] { solved_with += find_path(puzzle)->end == PathEnd::kSolved ? 1 : 0; }));
    path_without.push_back(microseconds([&] { solved_without += find_path(puzzle, without)->end == PathEnd::kSolved ? 1 : 0; }));
  }
  std::printf("%-28s %12s %12s %12s %12s %8s %8s\n", "technique (microseconds)", "first median", "first p95", "all median", "all p95", "fires", "steps");
  for (std::size_t k = 0; k < columns.size(); ++k) {
    const Column& column = columns[k];
    std::printf("%-28s %12.1f %12.1f %12.1f %12.1f %8d %8zu\n", std::string(catalogue()[k].id).c_str(), quantile(column.first, 0.5), quantile(column.first, 0.95),
                quantile(column.all, 0.5), quantile(column.all, 0.95), column.fires, column.steps);
  }
  const double base = quantile(balance, 0.5);
  std::printf("\n%-40s %10s %10s %10s %8s\n", "", "median ms", "p95 ms", "max ms", "ratio");
  print_line("one balance search, best 1", balance, base);
  print_line("all techniques, first step each", all_first, base);
  print_line("path, everything", path_with, base);
  print_line("path, without balances", path_without, base);
  std::printf("positions %d; paths that solve: %d with balances, %d without; compiler %s\n", wanted, solved_with, solved_without, __VERSION__);
  return 0;
}

}  // namespace
}  // namespace cp

int main(int count, char** words) {
  const int wanted = count > 1 ? std::atoi(words[1]) : 100;
  if (wanted < 1) return std::fprintf(stderr, "catalogue_bench [POSITIONS]\n"), 64;
  return cp::run(wanted);
}
