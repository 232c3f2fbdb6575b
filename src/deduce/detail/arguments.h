// SPDX-License-Identifier: Apache-2.0
// Small words for building the reasons of techniques (step/argument_reason.h).
#pragma once

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

#include "step/step.h"

namespace cp::deduce {

using Facts = std::vector<Constraint>;

// "This fact has one candidate left, so it is true" (or none: impossible).
inline Line lone(Constraint fact) { return {{{fact, -1}}}; }

// The bases need a candidate each, the covers have room for one each.
inline std::vector<LinearTerm> weighed(const Facts& bases, const Facts& covers) {
  std::vector<LinearTerm> terms;
  for (const Constraint& base : bases) terms.push_back({base, -1});
  for (const Constraint& cover : covers) terms.push_back({cover, 1});
  return terms;
}
inline Line sum_of(const Facts& bases, const Facts& covers) { return {weighed(bases, covers)}; }

// Sorts, and takes out what stands twice.
inline void tidy(std::vector<Candidate>& candidates) {
  std::sort(candidates.begin(), candidates.end());
  candidates.erase(std::unique(candidates.begin(), candidates.end()), candidates.end());
}

// A step shown by a sum alone. The eliminations must be all candidates that the sum strikes out.
inline Step by_sum(std::string_view technique, std::vector<Candidate> eliminations, const Facts& bases, const Facts& covers) {
  tidy(eliminations);
  return {technique, {}, std::move(eliminations), LinearReason{weighed(bases, covers)}};
}

// Supposing any of the eliminations true, the lines end in an impossibility.
inline Step by_supposing(std::string_view technique, std::vector<Candidate> eliminations, std::vector<Line> lines, std::vector<DeadlyPattern> patterns = {}) {
  tidy(eliminations);
  return {technique, {}, std::move(eliminations), ArgumentReason{true, std::move(patterns), Argument{std::move(lines), {}, {}}}};
}

// One of the candidates of `split` is true; each case (ordered by cell and digit) strikes out the eliminations or is
// impossible.
inline Step by_cases(std::string_view technique, std::vector<Candidate> eliminations, Constraint split, std::vector<Argument> cases,
                     std::vector<DeadlyPattern> patterns = {}) {
  tidy(eliminations);
  return {technique, {}, std::move(eliminations), ArgumentReason{false, std::move(patterns), Argument{{}, split, std::move(cases)}}};
}

}  // namespace cp::deduce
