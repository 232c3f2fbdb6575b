// SPDX-License-Identifier: Apache-2.0
// How fast is exact search, next to general-purpose solvers?
//
//   solve_bench [rounds]
//
// One run, 50 published puzzles, the uniqueness proof included, all solvers in turn in every round, so that what else
// the machine does hits all of them alike. CPU time of this process, no threads. Every answer is checked against the
// published solution; a wrong one ends the run. Read the ratios, not the rates. Solvers marked "kept" learn from the
// earlier rounds: their first round is shown as well.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

#include "exact/detail/search.h"
#include "exact/solve.h"
#include "external_solvers.h"
#include "support/data_rows.h"

namespace cp::bench {
namespace {

struct Puzzle {
  std::string name;
  std::string solution;
  Position position;
  Digits digits;
};

// A way to work through one puzzle; says how many solutions there are and gives the first as a line.
struct Contestant {
  std::string name;
  std::function<std::pair<int, std::string>(const Puzzle&)> solve;
  int passes = 1;  // over all puzzles in one round: more for the fast ones, so that the clock can see them
  std::vector<double> rates;
};

// Fifty of the 55: without a full grid, one with 70 givens, one that is gecode0 with two more givens, and two others.
constexpr std::array<std::string_view, 5> kLeftOut = {"gecode17", "minizinc-rank8", "z3gist-scungao", "pymath-sage", "cpmpy-tut6"};

std::vector<Puzzle> read_puzzles() {
  std::vector<Puzzle> puzzles;
  for (const support::PublishedPuzzle& row : support::published_puzzles()) {
    if (std::find(kLeftOut.begin(), kLeftOut.end(), row.name) != kLeftOut.end()) continue;
    Puzzle puzzle{row.name, row.solution, support::read(row.puzzle), {}};
    for (const Cell cell : puzzle.position.givens()) puzzle.digits[cell.index] = puzzle.position.digit_at(cell)->number();
    puzzles.push_back(puzzle);
  }
  return puzzles;
}

using Search = SolutionCount (*)(const Position&, detail::SearchLimits, std::vector<FullGrid>*);

Contestant own_engine(std::string name, Search search, int passes) {
  const auto solve = [search](const Puzzle& puzzle) {
    std::vector<FullGrid> grids;
    const SolutionCount found = search(puzzle.position, {2, kNoLimit}, &grids);
    return std::pair<int, std::string>(static_cast<int>(found.count), grids.empty() ? std::string() : grids.front().to_line());
  };
  return {std::move(name), solve, passes, {}};
}

Contestant external_solver(Solver& solver) {
  const auto solve = [&solver](const Puzzle& puzzle) {
    const Answer answer = solver.solve(puzzle.digits);
    std::string line;
    for (const int digit : answer.first) line += static_cast<char>('0' + digit);
    return std::pair<int, std::string>(answer.solutions, line);
  };
  return {solver.name(), solve, 1, {}};
}

double cpu_seconds() {
  std::timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

void run_round(Contestant& contestant, const std::vector<Puzzle>& puzzles) {
  const double start = cpu_seconds();
  for (int pass = 0; pass < contestant.passes; ++pass) {
    for (const Puzzle& puzzle : puzzles) {
      const auto [solutions, line] = contestant.solve(puzzle);
      if (solutions == 1 && line == puzzle.solution) continue;
      std::fprintf(stderr, "wrong answer: %s on %s: %d solutions, %s\n", contestant.name.c_str(), puzzle.name.c_str(), solutions, line.c_str());
      std::exit(1);
    }
  }
  contestant.rates.push_back(static_cast<double>(puzzles.size()) * contestant.passes / (cpu_seconds() - start));
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

void print_surroundings(std::size_t puzzles, int rounds) {
  std::string cpu = "unknown";
  std::ifstream info("/proc/cpuinfo");
  for (std::string line; std::getline(info, line);) {
    if (line.rfind("model name", 0) == 0) cpu = line.substr(line.find(':') + 2);
  }
  std::printf("CPU       %s\ncompiler  %s\nflags     %s\n", cpu.c_str(), __VERSION__, CP_BENCH_FLAGS);
  std::printf("puzzles   %zu, each with the proof that there is one solution; %d rounds\n", puzzles, rounds);
#ifndef NDEBUG
  std::printf("WARNING: asserts are on, our own figures are too low\n");
#endif
#ifndef __OPTIMIZE__
  std::printf("WARNING: built without optimisation, our own figures are too low\n");
#endif
}

void print_table(const std::vector<Contestant>& contestants) {
  const Contestant& ours = contestants.front();
  std::printf("\n%-34s %12s %12s %25s %14s\n", "", "puzzles/s", "first round", "slowest .. fastest", "ours is times");
  for (const Contestant& contestant : contestants) {
    std::vector<double> ratios;
    for (std::size_t i = 0; i < contestant.rates.size(); ++i) ratios.push_back(ours.rates[i] / contestant.rates[i]);
    const auto [low, high] = std::minmax_element(contestant.rates.begin(), contestant.rates.end());
    std::printf("%-34s %12.0f %12.0f %12.0f .. %8.0f %14.1f\n", contestant.name.c_str(), median(contestant.rates), contestant.rates.front(), *low, *high, median(ratios));
  }
}

int run(int rounds) {
  const std::vector<Puzzle> puzzles = read_puzzles();
  print_surroundings(puzzles.size(), rounds);
  const auto solvers = external_solvers();
  if (solvers.empty()) std::printf("no general-purpose solver was found when this was built\n");
  std::vector<Contestant> contestants = {own_engine("Counterpoise, 9x9 engine", detail::search_nine, 20),
                                         own_engine("Counterpoise, engine for any shape", detail::search_any_shape, 4)};
  for (const auto& solver : solvers) contestants.push_back(external_solver(*solver));
  for (int round = 0; round < rounds; ++round) {
    for (Contestant& contestant : contestants) run_round(contestant, puzzles);
  }
  print_table(contestants);
  std::uint64_t nodes = 0;
  for (const Puzzle& puzzle : puzzles) nodes += count_solutions(puzzle.position, 2).nodes;
  std::printf("\nnodes of the 9x9 engine over all puzzles: %llu (the same on every machine)\n", static_cast<unsigned long long>(nodes));
  return 0;
}

}  // namespace
}  // namespace cp::bench

int main(int count, char** words) {
  const int rounds = count > 1 ? std::atoi(words[1]) : 9;
  if (rounds < 1) {
    std::fprintf(stderr, "solve_bench [rounds]: the number of rounds is 1 or more\n");
    return 64;
  }
  return cp::bench::run(rounds);
}
