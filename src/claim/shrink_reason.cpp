// SPDX-License-Identifier: Apache-2.0
// Fewer facts. First by deletion: leave one fact after the other out, and keep it when the rest is not enough. Then,
// while the allowance lasts, from below: a reason must hit every set of facts without which the denial can hold
// ("correction sets"); when the smallest set that hits all those known is enough, it is a smallest reason
// (implicit hitting sets, as in A. Ignatiev, A. Previti, M. Liffiton, J. Marques-Silva, CP 2015).
#include <algorithm>
#include <optional>

#include "claim/fact_search.h"

namespace cp {

namespace {

using Facts = std::vector<int>;
using End = FactSearch::End;

constexpr std::uint64_t kMostOnOne = 20'000;      // failures spent on whether one fact can go

Facts without(const Facts& facts, const Facts& removed) {
  Facts left;
  std::set_difference(facts.begin(), facts.end(), removed.begin(), removed.end(), std::back_inserter(left));
  return left;
}

// The smallest set that hits all the sets: branches on the first set not hit, with disjoint sets as a bound.
class HittingSets {
 public:
  void add(Facts set) {
    sets_.push_back(std::move(set));
    // Small sets first: they branch least.
    std::stable_sort(sets_.begin(), sets_.end(), [](const Facts& a, const Facts& b) { return a.size() < b.size(); });
  }

  // Empty when it takes more than `most` elements or too many steps.
  std::optional<Facts> smallest(std::size_t most) {
    for (std::size_t size = bound({}); size <= most; ++size) {
      Facts chosen;
      steps_ = 0;
      if (search(chosen, size)) {
        std::sort(chosen.begin(), chosen.end());
        return chosen;
      }
      if (steps_ > kMostSteps) break;
    }
    return std::nullopt;
  }

 private:
  static constexpr int kMostSteps = 20'000;

  static bool meets(const Facts& set, const Facts& chosen) {
    return std::any_of(chosen.begin(), chosen.end(), [&set](int fact) { return std::binary_search(set.begin(), set.end(), fact); });
  }

  // Sets not hit that have nothing in common each need an element of their own.
  [[nodiscard]] std::size_t bound(const Facts& chosen) const {
    Facts used = chosen;
    std::size_t count = 0;
    for (const Facts& set : sets_) {
      if (meets(set, used)) continue;
      ++count;
      used.insert(used.end(), set.begin(), set.end());
    }
    return count;
  }

  bool search(Facts& chosen, std::size_t size) {
    if (++steps_ > kMostSteps || chosen.size() + bound(chosen) > size) return false;
    const auto open = std::find_if(sets_.begin(), sets_.end(), [&chosen](const Facts& set) { return !meets(set, chosen); });
    if (open == sets_.end()) return true;
    const Facts choices = *open;
    for (const int fact : choices) {
      chosen.push_back(fact);
      if (search(chosen, size)) return true;
      chosen.pop_back();
    }
    return false;
  }

  std::vector<Facts> sets_;
  int steps_ = 0;
};

class Shrinker {
 public:
  Shrinker(FactSearch& search, Facts among, const SearchLimits& limits) : search_(search), among_(std::move(among)), limits_(limits), failures_left_(limits.shrink_failures) {
    std::sort(among_.begin(), among_.end());
    last_work_ = search_.work() + limits.smaller_work;
  }

  FoundReason run(Facts enough) {
    FoundReason best;
    best.facts = delete_one_by_one(std::move(enough));
    best.is_irreducible = is_sure_;
    best.is_smallest = is_sure_ && best.facts.size() <= 1;
    if (best.facts.size() > 1 && best.facts.size() <= kLargestToImprove) improve(best);
    return best;
  }

 private:
  [[nodiscard]] bool has_work_left() const { return search_.work() < last_work_; }

  Facts delete_one_by_one(Facts candidates) {
    Facts needed;
    while (!candidates.empty()) {
      const int fact = candidates.back();
      candidates.pop_back();
      Facts rest = needed;
      rest.insert(rest.end(), candidates.begin(), candidates.end());
      // Whether one fact can go may be as hard as the claim itself; then it stays.
      std::uint64_t failures = std::min(failures_left_, kMostOnOne);
      const std::uint64_t before = failures;
      const End end = search_.solve(rest, failures);
      failures_left_ -= before - failures;
      if (end == End::kImpossible) {
        const Facts& core = search_.core();
        std::erase_if(candidates, [&core](int other) { return !std::binary_search(core.begin(), core.end(), other); });
      } else {
        needed.push_back(fact);
        if (end == End::kMet) keep_missed();
        else is_sure_ = false;
      }
    }
    std::sort(needed.begin(), needed.end());
    return needed;
  }

  // The facts that the last assignment does not meet: every reason has one of them.
  void keep_missed() { hitting_.add(without(among_, search_.met_facts())); }

  // Makes the assignment meet as many facts as a greedy choice gives.
  void grow() {
    Facts met = search_.met_facts();
    Facts missed = without(among_, met);
    for (const int fact : missed) {
      if (std::binary_search(met.begin(), met.end(), fact) || !has_work_left()) continue;
      Facts more = met;
      more.push_back(fact);
      std::uint64_t failures = 300;
      if (search_.solve(more, failures) == End::kMet) met = search_.met_facts();
    }
    hitting_.add(without(among_, met));
  }

  void improve(FoundReason& best) {
    while (has_work_left() && is_sure_) {
      const auto chosen = hitting_.smallest(best.facts.size() - 1);
      if (!chosen) {
        best.is_smallest = hitting_is_exact(best.facts.size());
        return;
      }
      std::uint64_t failures = limits_.failures;
      const End end = search_.solve(*chosen, failures);
      if (end == End::kImpossible) {
        best = {*chosen, true, true};
        return;
      }
      if (end == End::kLimit) return;
      grow();
    }
  }

  // smallest() may have given up for want of steps; then nothing is known.
  bool hitting_is_exact(std::size_t size) { return hitting_.smallest(size).has_value(); }

  FactSearch& search_;
  Facts among_;
  const SearchLimits& limits_;
  HittingSets hitting_;
  std::uint64_t last_work_ = 0;
  std::uint64_t failures_left_;
  bool is_sure_ = true;
};

}  // namespace

FoundReason shrink(FactSearch& search, std::vector<int> enough, const std::vector<int>& among, const SearchLimits& limits) {
  return Shrinker(search, among, limits).run(std::move(enough));
}

}  // namespace cp
