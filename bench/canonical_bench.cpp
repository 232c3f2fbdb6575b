// SPDX-License-Identifier: Apache-2.0
// How fast are properness and canonical form, the two things every puzzle of a collection is asked first?
//
//   canonical_bench [puzzles]
//
// Random minimal puzzles, images of published puzzles with 17 givens, and full grids; one core, CPU time, every part in turn
// in each of five rounds, the median shown. Read the ratios, not the rates.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "cpu_seconds.h"
#include "exact/random_grid.h"
#include "exact/solve.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "support/data_rows.h"

namespace cp::bench {
namespace {

constexpr int kRounds = 5;

struct Sort {
  std::string name;
  std::vector<std::string> lines;
};

std::vector<Sort> sorts(std::size_t count) {
  std::vector<Sort> all;
  Sort& minimal = all.emplace_back(Sort{"random minimal", {}});
  for (std::size_t i = 0; i < count; ++i) minimal.lines.push_back(givens_line(random_minimal_puzzle(standard_shape(), i)));
  Sort& few = all.emplace_back(Sort{"images of 17 givens", {}});
  for (std::size_t i = 0; i < count; ++i) {
    const std::string line = support::published_puzzle(i % 2 == 0 ? "OEIS-A372224" : "W-anti-bruteforce");
    few.lines.push_back(givens_line(Transform::random(standard_shape(), i).image(support::read(line))));
  }
  Sort& full = all.emplace_back(Sort{"full grids", {}});
  for (std::size_t i = 0; i < count / 20; ++i) full.lines.push_back(random_grid(standard_shape(), i).to_line());
  return all;
}

struct Part {
  std::string name;
  std::function<int(const std::string&)> run;
  std::vector<double> micros;
};

void measure(const Sort& sort) {
  std::vector<Part> parts{
      {"reading", [](const std::string& line) { return parse_position(line).value().placed().size(); }, {}},
      {"reading, properness", [](const std::string& line) { return is_proper(parse_position(line).value()) ? 1 : 0; }, {}},
      {"reading, canonical form", [](const std::string& line) { return static_cast<int>(canonical_form(parse_position(line).value()).symmetries); }, {}},
      {"all three",
       [](const std::string& line) {
         const Position puzzle = parse_position(line).value();
         return (is_proper(puzzle) ? 1 : 0) + static_cast<int>(canonical_form(puzzle).symmetries);
       },
       {}}};
  long kept = 0;
  for (int round = 0; round < kRounds; ++round) {
    for (Part& part : parts) {
      const double start = cpu_seconds();
      for (const std::string& line : sort.lines) kept += part.run(line);
      part.micros.push_back(1e6 * (cpu_seconds() - start) / static_cast<double>(sort.lines.size()));
    }
  }
  std::printf("%s (%zu, sum %ld)\n", sort.name.c_str(), sort.lines.size(), kept);
  for (Part& part : parts) {
    std::sort(part.micros.begin(), part.micros.end());
    const double median = part.micros[part.micros.size() / 2];
    std::printf("  %-26s %9.2f us each, %9.0f a second a core (%.2f .. %.2f us)\n", part.name.c_str(), median, 1e6 / median, part.micros.front(), part.micros.back());
  }
}

}  // namespace
}  // namespace cp::bench

int main(int argc, char** argv) {
  const auto count = static_cast<std::size_t>(argc > 1 ? std::atol(argv[1]) : 4000);
#ifndef NDEBUG
  std::printf("warning: asserts are on; these figures mean nothing\n");
#endif
  for (const auto& sort : cp::bench::sorts(std::max<std::size_t>(count, 20))) cp::bench::measure(sort);
  return 0;
}
