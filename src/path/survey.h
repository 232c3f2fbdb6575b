// SPDX-License-Identifier: Apache-2.0
// What fires now, and how close does a technique come?
#pragma once

#include <vector>

#include "path/path.h"

namespace cp {

inline constexpr std::size_t kMostPlaces = 200;  // steps of one technique that are counted

// The places of one technique at a position.
struct TechniquePlaces {
  const Technique* technique = nullptr;
  std::vector<PathStep> steps;  // cheapest first; their `open` is not filled in
  bool is_cut = false;          // there are more than kMostPlaces
};

struct Survey {
  std::vector<TechniquePlaces> places;  // in the order of the selection; only techniques that fire
  std::vector<FoundBalance> balances;   // the best so many; empty when balances are not selected
};

struct SurveyOptions {
  int most_free_slack = 1;
  std::size_t most_balances = 5;  // 0: all
};
Survey survey(const Position& position, const Selection& selection, const SurveyOptions& options = {});

// A technique one candidate away from firing.
struct NearMiss {
  Candidate missing;  // if this were struck out ...
  Step step;          // ... this step would be there
};

// Strikes each of the candidates out by itself and asks the technique again; the first step it then has, for each. Steps that
// would strike out only what is known already are not among them, since a technique never reports those. `candidates` are
// what may be struck: to say "close" honestly, those that are false. At most `most`, fewest facts first.
std::vector<NearMiss> near_misses(const Position& position, const Technique& technique, const std::vector<Candidate>& candidates, std::size_t most);

}  // namespace cp
