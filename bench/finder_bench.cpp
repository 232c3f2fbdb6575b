// SPDX-License-Identifier: Apache-2.0
// How long does the finder take? Random minimal puzzles where the basics are stuck, one core. Per position, in turn:
// the bare weighing of all pairs of sides, the distinct balances, the complete ranked search for the best 20 and for the
// single best. Prints medians and the ratio to the bare weighing, which any way of finding all balances has to pay.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "balance/distinct.h"
#include "balance/finder.h"
#include "support/random_balances.h"

namespace cp {
namespace {

double milliseconds(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

// Tally and slack of all 7.5 million ordered pairs, nothing kept.
std::uint64_t weigh_all_pairs(const Position& position) {
  const auto lefts = left_sides(position);
  const auto rights = right_sides(position);
  std::uint64_t within = 0;
  for (const Side& left : lefts) {
    for (const Side& right : rights) {
      const DigitBytes tally = right.known - left.known;
      const DigitBytes zero = {};
      const DigitBytes positive = tally & (tally > zero);
      std::uint64_t words[2];
      __builtin_memcpy(words, &positive, sizeof(words));
      const int asked = static_cast<int>(((words[0] + words[1]) * 0x0101010101010101ULL) >> 56);
      within += (left.open - right.open).size() - asked <= kMostRawSlack ? 1U : 0U;
    }
  }
  return within;
}

int run(int wanted) {
#ifndef NDEBUG
  std::puts("warning: asserts are on, these figures mean nothing");
#endif
  std::vector<double> bare;
  std::vector<double> distinct;
  std::vector<double> best20;
  std::vector<double> best1;
  int found = 0;
  std::uint64_t seed = 1;
  std::uint64_t sum = 0;
  for (int i = 0; i < wanted; ++i) {
    const Position position = support::stuck_position(standard_shape(), seed);
    bare.push_back(milliseconds([&] { sum += weigh_all_pairs(position); }));
    distinct.push_back(milliseconds([&] { sum += DistinctBalances(position, kMostRawSlack).all().size(); }));
    FinderOptions options;
    best20.push_back(milliseconds([&] { found += find_balances(position, options).balances.empty() ? 0 : 1; }));
    options.limit = 1;
    best1.push_back(milliseconds([&] { sum += find_balances(position, options).examined; }));
  }
  std::printf("positions %d, with an eliminating balance (free slack <= 1) %d\n", wanted, found);
  const double base = median(bare);
  std::printf("%-34s %10s %10s %10s\n", "", "median ms", "max ms", "ratio");
  const auto line = [&](const char* name, const std::vector<double>& values) {
    std::printf("%-34s %10.1f %10.1f %10.1f\n", name, median(values), *std::max_element(values.begin(), values.end()), median(values) / base);
  };
  line("weigh all pairs, keep nothing", bare);
  line("distinct balances, raw slack <= 4", distinct);
  line("complete search, best 20", best20);
  line("complete search, best 1", best1);
  std::printf("checksum %llu, compiler %s\n", static_cast<unsigned long long>(sum), __VERSION__);
  return 0;
}

}  // namespace
}  // namespace cp

int main(int argc, char** argv) { return cp::run(argc > 1 ? std::atoi(argv[1]) : 100); }
