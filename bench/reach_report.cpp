// SPDX-License-Identifier: Apache-2.0
// How far does the catalogue get? For every puzzle of a table (tests/data/puzzles.tsv): solved or stuck, with what is left,
// by the basics, with balances, by all techniques without forcing and uniqueness, and so on. Every elimination is compared with
// the solution of the table; a wrong one ends the program with 1. Then the three questions, asked of the puzzles that
// are known by a name for being hard: what fires after the basics (survey), what else gives the same (alternatives, for every
// elimination of the easiest steps), is it needed. Writes Markdown (docs/reach.md).
//
//   reach_report TABLE.tsv
#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "deduce/basics.h"
#include "grid/notation.h"
#include "path/alternatives.h"
#include "path/needed.h"
#include "path/path.h"
#include "path/survey.h"

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

// Conclusions compared with the solution.
struct Compared {
  long long conclusions = 0;
  long long wrong = 0;

  void add(const Step& step, const std::string& solution) {
    conclusions += static_cast<long long>(step.placements.size() + step.eliminations.size());
    for (const Candidate& placed : step.placements) wrong += solution[placed.cell.index] == Shape::name_of(placed.digit) ? 0 : 1;
    for (const Candidate& gone : step.eliminations) wrong += solution[gone.cell.index] == Shape::name_of(gone.digit) ? 1 : 0;
  }
  void add(const std::vector<PathStep>& steps, const std::string& solution) {
    for (const PathStep& at : steps) add(at.step, solution);
  }
};

constexpr std::size_t kMostTargets = 12;

const char* to_word(Needed::Answer answer) {
  switch (answer) {
    case Needed::Answer::kNo: return "no";
    case Needed::Answer::kYes: return "yes";
    case Needed::Answer::kOpen: return "unsolved either way";
  }
  return "";
}

// One row: what the three questions say of a puzzle, every conclusion compared.
int ask(const std::string& name, const Position& puzzle, const std::string& solution, Compared& compared) {
  const auto everything = select_techniques({}, {});
  if (!everything) return 70;
  Position position = puzzle;
  if (!run_basics(position)) return 70;
  const Survey seen = survey(position, *everything);
  std::size_t steps = 0;
  std::vector<Candidate> targets;
  for (const TechniquePlaces& places : seen.places) {
    steps += places.steps.size();
    compared.add(places.steps, solution);
    for (const PathStep& at : places.steps) {
      for (const Candidate& gone : at.step.eliminations) {
        if (targets.size() < kMostTargets && std::find(targets.begin(), targets.end(), gone) == targets.end()) targets.push_back(gone);
      }
    }
  }
  for (const FoundBalance& found : seen.balances) compared.add(to_step(found), solution);
  std::size_t others = 0;
  for (const Candidate& target : targets) {
    const Alternatives found = alternatives(position, target, *everything);
    others += found.found;
    compared.add(found.steps, solution);
  }
  std::printf("| %s | %zu | %zu | %zu | %zu |", name.c_str(), seen.places.size(), steps, targets.size(), others);
  for (const char* technique : {"balance", "uniqueness", "forcing"}) {
    const auto needed = is_needed(puzzle, {{technique}, {}, 1});
    if (!needed) return 70;
    compared.add(needed->with.steps, solution);
    compared.add(needed->without.steps, solution);
    std::printf(" %s |", to_word(needed->answer));
  }
  std::printf("\n");
  std::fflush(stdout);
  return 0;
}

int ask_named(const std::vector<std::array<std::string, 3>>& rows) {
  // Named in the table for being hard; the literature behind each stands there.
  const std::vector<std::string> hard = {"W-anti-bruteforce", "OEIS-A372224", "Weber-fig3", "Escargot", "Inkala2010", "Inkala2012", "PlatinumBlonde", "GoldenNugget", "EasterMonster", "FataMorgana"};
  std::printf("\n## The three questions, asked of the hard puzzles with names\n\n");
  std::printf("| puzzle | techniques that fire after the basics | their steps | eliminations asked about | steps that give them | balances needed? | uniqueness needed? | forcing needed? |\n|---|---:|---:|---:|---:|---|---|---|\n");
  Compared compared;
  for (const auto& [name, puzzle, solution] : rows) {
    if (std::find(hard.begin(), hard.end(), name) == hard.end()) continue;
    if (ask(name, *parse_position(puzzle), solution, compared) != 0) return 70;
  }
  std::printf("\n%lld conclusions compared with the solutions, %lld wrong.\n", compared.conclusions, compared.wrong);
  return compared.wrong == 0 ? 0 : 1;
}

// The proper puzzles of the table: name, puzzle, solution.
std::vector<std::array<std::string, 3>> read_rows(std::ifstream& in) {
  std::vector<std::array<std::string, 3>> rows;
  for (std::string line; std::getline(in, line);) {
    std::istringstream words(line);
    std::string name, puzzle, solution;
    if (words >> name >> puzzle >> solution && name[0] != '#' && parse_position(puzzle)) rows.push_back({name, puzzle, solution});
  }
  return rows;
}

int report_reach(const std::vector<std::array<std::string, 3>>& rows) {
  std::string header = "| puzzle |";
  std::string rule = "|---|";
  for (const Setting& setting : settings()) {
    header += std::string(" ") + setting.name + " |";
    rule += "---:|";
  }
  std::printf("# How far the catalogue gets\n\nWritten by `reach_report tests/data/puzzles.tsv` (`bench/`), not edited by hand. Each cell: solved, and the cost of the hardest step of the easiest\n"
              "path ([measure](measure.md)); or how many cells stay open.\n\n%s\n%s\n", header.c_str(), rule.c_str());
  std::array<int, 16> solved{};
  Compared compared;
  for (const auto& [name, puzzle, solution] : rows) {
    std::printf("| %s |", name.c_str());
    for (std::size_t k = 0; k < settings().size(); ++k) {
      PathOptions options;
      options.only = settings()[k].only;
      options.without = settings()[k].without;
      const auto path = find_path(*parse_position(puzzle), options);
      if (!path) return std::fprintf(stderr, "reach_report: %s\n", path.error().message.c_str()), 70;
      compared.add(path->steps, solution);
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
  std::printf("| **solved of %zu** |", rows.size());
  for (std::size_t k = 0; k < settings().size(); ++k) std::printf(" **%d** |", solved[k]);
  std::printf("\n\n%lld conclusions compared with the solutions, %lld wrong.\n", compared.conclusions, compared.wrong);
  return compared.wrong == 0 ? 0 : 1;
}

int run(const std::string& file) {
  std::ifstream in(file);
  if (!in) return std::fprintf(stderr, "reach_report: %s cannot be read\n", file.c_str()), 64;
  const auto rows = read_rows(in);
  const int outcome = report_reach(rows);
  return outcome != 0 ? outcome : ask_named(rows);
}

}  // namespace
}  // namespace cp

int main(int count, char** words) {
  if (count != 2) return std::fprintf(stderr, "reach_report TABLE.tsv\n"), 64;
  return cp::run(words[1]);
}
