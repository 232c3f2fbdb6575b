// SPDX-License-Identifier: Apache-2.0
// How long does an answer to a claim take, and how large is its reason? Next to a plain deletion of facts over CaDiCaL.
//
//   claim_bench [claims]
//
// Random claims, half of them true, on the hardest of the published puzzles as they stand (footing: position and all rules). One run,
// both sides in turn on every claim, CPU time of this process. Both shrink the same facts: houses, and the marks of
// cells. Ours includes the verdict, the certificate and, while its allowance lasts, the search for a smallest reason; the other
// side finds any irreducible reason of the true claims. Read the ratios, not the times.
#include <algorithm>
#include <cadical.hpp>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>

#include "claim/additions.h"
#include "support/claim_states.h"
#include "support/data_rows.h"

namespace cp::bench {
namespace {

constexpr int kSatisfiable = 10;

// The textbook way: every fact has a switch; leave one after the other out, keep it when the rest is not enough.
class PlainDeletion : public oracle::ClaimOracle {
 public:
  PlainDeletion(const Position& position, const std::vector<CertificateFact>& facts) : ClaimOracle(position.shape()) {
    const Shape& shape = position.shape();
    for (const CertificateFact& fact : facts) {
      const int on = fresh();
      switches_.push_back(on);
      if (fact.kind == CertificateFact::Kind::kMarks) {
        for (const Digit digit : shape.digits() - fact.digits) clause({-on, -literal(fact.cell.index, digit.number())});
        continue;
      }
      for (int digit = 1; digit <= shape.side(); ++digit) {
        std::vector<int> literals;
        for (const Cell cell : shape.cells(fact.house)) literals.push_back(literal(cell.index, digit));
        exactly_one(literals, -on);
      }
    }
  }

  // The number of facts of an irreducible reason; -1 when the claim does not follow.
  int reason_size(const oracle::Saying& saying) {
    const int denied = -meaning(saying);
    std::vector<int> open = switches_;
    std::vector<int> needed;
    if (!refutes(denied, needed, open)) return -1;
    while (!open.empty()) {
      const int tried = open.back();
      open.pop_back();
      if (!refutes(denied, needed, open)) needed.push_back(tried);
    }
    return static_cast<int>(needed.size());
  }

 private:
  // Shrinks the open switches to the failed ones.
  bool refutes(int denied, const std::vector<int>& needed, std::vector<int>& open) {
    solver().assume(denied);
    for (const int each : needed) solver().assume(each);
    for (const int each : open) solver().assume(each);
    if (solver().solve() == kSatisfiable) return false;
    std::erase_if(open, [this](int each) { return !solver().failed(each); });
    return true;
  }

  std::vector<int> switches_;
};

double cpu_milliseconds(const std::function<void()>& work) {
  std::timespec before{};
  std::timespec after{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &before);
  work();
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &after);
  return static_cast<double>(after.tv_sec - before.tv_sec) * 1e3 + static_cast<double>(after.tv_nsec - before.tv_nsec) * 1e-6;
}

double share_below(std::vector<double> values, double share) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[std::min(values.size() - 1, static_cast<std::size_t>(share * static_cast<double>(values.size())))];
}

struct Series {
  std::vector<double> times;
  std::vector<double> sizes;
};

void print(const char* name, const Series& series) {
  std::printf("%-34s %10.2f %10.2f %10.2f %10.2f", name, share_below(series.times, 0.5), share_below(series.times, 0.9), share_below(series.times, 0.95), share_below(series.times, 1));
  std::printf("   %6.0f %6.0f\n", share_below(series.sizes, 0.5), share_below(series.sizes, 0.95));
}

struct Figures {
  Series ours_true;
  Series ours_false;
  Series plain;
  int smallest = 0;
  int smaller = 0;
  int larger = 0;
};

bool measure(const Board& board, PlainDeletion& plain, const oracle::Saying& saying, Figures& figures) {
  const Ground ground{true, Footing::all_rules(board.position.shape()).houses, {}, {}};
  const auto claim = parse_claim(board.position, {}, oracle::text_of(saying, board.position.shape().side()));
  if (!claim) return false;
  std::optional<ClaimAnswer> answer;
  const double ours = cpu_milliseconds([&] {
    auto judged = judge_claim(board, *claim, ground);
    if (judged) answer = std::move(*judged);
  });
  if (!answer) return false;
  if (answer->verdict != Verdict::kProved) {
    figures.ours_false.times.push_back(ours);
    if (answer->certificate) figures.ours_false.sizes.push_back(static_cast<double>(answer->certificate->facts.size()));
    return true;
  }
  int size = 0;
  const double theirs = cpu_milliseconds([&] { size = plain.reason_size(saying); });
  if (size < 0) return false;
  const int own_size = static_cast<int>(answer->certificate->facts.size());
  figures.ours_true.times.push_back(ours);
  figures.ours_true.sizes.push_back(own_size);
  figures.plain.times.push_back(theirs);
  figures.plain.sizes.push_back(size);
  figures.smallest += answer->is_smallest ? 1 : 0;
  figures.smaller += own_size < size ? 1 : 0;
  figures.larger += own_size > size ? 1 : 0;
  return true;
}

int run(int wanted) {
#ifndef NDEBUG
  std::puts("warning: asserts are on, these figures mean nothing");
#endif
  const std::vector<std::string> hard = {"Escargot", "Inkala2010", "Inkala2012", "PlatinumBlonde", "GoldenNugget", "EasterMonster", "FataMorgana", "W-main", "TAOCP-29a", "gecode0"};
  Figures figures;
  for (std::size_t i = 0; i < hard.size(); ++i) {
    const auto board = judge_board(support::read(support::published_puzzle(hard[i])));
    if (!board || !board->truth) return 1;
    const Ground ground{true, Footing::all_rules(board->position.shape()).houses, {}, {}};
    PlainDeletion plain(board->position, facts_of(board->position, ground));
    support::RandomSayings sayings(board->position.shape(), support::digits_of(*board->truth), 1000 + i);
    for (int claim = 0; claim < wanted; ++claim) {
      if (measure(*board, plain, sayings.make(), figures)) continue;
      std::printf("a claim on %s has no answer or the two sides do not agree\n", hard[i].c_str());
      return 1;
    }
  }
  std::printf("%zu hard puzzles, %d claims each, footing: position and all rules; %zu proved, %zu refuted\n\n", hard.size(), wanted, figures.ours_true.times.size(), figures.ours_false.times.size());
  std::printf("%-34s %10s %10s %10s %10s   %6s %6s\n", "", "median ms", "90 % ms", "95 % ms", "most ms", "facts", "95 %");
  print("ours, claims that are proved", figures.ours_true);
  print("ours, claims that are refuted", figures.ours_false);
  Series all = figures.ours_true;
  all.times.insert(all.times.end(), figures.ours_false.times.begin(), figures.ours_false.times.end());
  all.sizes.insert(all.sizes.end(), figures.ours_false.sizes.begin(), figures.ours_false.sizes.end());
  print("ours, all", all);
  print("plain deletion over CaDiCaL", figures.plain);
  std::printf("\nof the proved claims: %d reasons are known to be smallest; ours is smaller than the other %d times, larger %d times\n", figures.smallest, figures.smaller, figures.larger);
  return 0;
}

}  // namespace
}  // namespace cp::bench

int main(int count, char** words) {
  const int claims = count > 1 ? std::atoi(words[1]) : 60;
  if (claims < 1) {
    std::fprintf(stderr, "claim_bench [claims]: how many on each puzzle, 1 or more\n");
    return 64;
  }
  return cp::bench::run(claims);
}
