// SPDX-License-Identifier: Apache-2.0
// How far does the catalogue get? For every puzzle of a table (tests/data/puzzles.tsv): solved or stuck, with what is left,
// by the basics, with balances, by all techniques without forcing and uniqueness, and so on. Every elimination is compared with
// the solution of the table; a wrong one ends the program with 1. Writes Markdown (docs/reach.md).
//
//   reach_report TABLE.tsv
#include <array>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "grid/notation.h"
#include "path/path.h"

namespace cp {
namespace {

struct Setting {
  const char* name;
  std::vector<std::string> only;
  std::vector<std::string> without;
};

const std::vector<Setting>& settings() {
  static const std::vector<Setting> kSettings = {
      {"basics", {"single", "locked", "subset", "fish"}, {}},
      {"basics and balances", {"single", "locked", "subset", "fish", "balance"}, {}},
      {"all but forcing, uniqueness, balances", {}, {"forcing", "uniqueness", "balance"}},
      {"all but forcing, uniqueness", {}, {"forcing", "uniqueness"}},
      {"all but forcing", {}, {"forcing"}},
      {"all but uniqueness", {}, {"uniqueness"}},
      {"everything", {}, {}},
  };
  return kSettings;
}

// Steps that contradict the solution.
int wrong_steps(const Path& path, const std::string& solution) {
  int wrong = 0;
  for (const PathStep& at : path.steps) {
    for (const Candidate& placed : at.step.placements) wrong += solution[placed.cell.index] == Shape::name_of(placed.digit) ? 0 : 1;
    for (const Candidate& gone : at.step.eliminations) wrong += solution[gone.cell.index] == Shape::name_of(gone.digit) ? 1 : 0;
  }
  return wrong;
}

int run(const std::string& file) {
  std::ifstream in(file);
  if (!in) return std::fprintf(stderr, "reach_report: %s cannot be read\n", file.c_str()), 64;
  std::string header = "| puzzle |";
  std::string rule = "|---|";
  for (const Setting& setting : settings()) {
    header += std::string(" ") + setting.name + " |";
    rule += "---:|";
  }
  std::printf("%s\n%s\n", header.c_str(), rule.c_str());
  std::array<int, 16> solved{};
  int puzzles = 0;
  int wrong = 0;
  long long conclusions = 0;
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    std::string name, puzzle, solution;
    if (!(words >> name >> puzzle >> solution) || name[0] == '#') continue;
    const auto position = parse_position(puzzle);
    if (!position) continue;
    ++puzzles;
    std::printf("| %s |", name.c_str());
    for (std::size_t k = 0; k < settings().size(); ++k) {
      PathOptions options;
      options.only = settings()[k].only;
      options.without = settings()[k].without;
      const auto path = find_path(*position, options);
      if (!path) return std::fprintf(stderr, "reach_report: %s\n", path.error().message.c_str()), 70;
      wrong += wrong_steps(*path, solution);
      for (const PathStep& at : path->steps) conclusions += static_cast<long long>(at.step.placements.size() + at.step.eliminations.size());
      if (path->end == PathEnd::kSolved) {
        ++solved[k];
        std::printf(" solved, %d |", measure(*path).hardest);
      } else {
        std::printf(" %d open |", path->end_position.open().size());
      }
    }
    std::printf("\n");
    std::fflush(stdout);
  }
  std::printf("| **solved of %d** |", puzzles);
  for (std::size_t k = 0; k < settings().size(); ++k) std::printf(" **%d** |", solved[k]);
  std::printf("\n\n%lld conclusions compared with the solutions, %d wrong.\n", conclusions, wrong);
  return wrong == 0 ? 0 : 1;
}

}  // namespace
}  // namespace cp

int main(int count, char** words) {
  if (count != 2) return std::fprintf(stderr, "reach_report TABLE.tsv\n"), 64;
  return cp::run(words[1]);
}
