// SPDX-License-Identifier: Apache-2.0
// A stem of three candidates or more, a petal for each; what sees the Z of one petal for each of them.
#include <map>

#include "oracle/definitions/plain_sets.h"

namespace cp::oracle {

namespace {

// Per candidate: the sets that lose that digit when it is true.
std::map<Candidate, std::vector<PlainSet>> robbed_sets(const Position& position) {
  std::map<Candidate, std::vector<PlainSet>> robbed;
  for (const PlainSet& set : plain_almost_locked_sets(position)) {
    for (const Digit digit : set.digits) {
      for (const Candidate& each : plain_seeing_all(position, holders(position, set.cells, digit), digit)) robbed[each].push_back(set);
    }
  }
  return robbed;
}

}  // namespace

Conclusions death_blossom_twin(const Position& position) {
  Conclusions found;
  const auto robbed = robbed_sets(position);
  for (const auto& [struck, z_sets] : robbed) {
    const std::set<PlainSet> loses_z(z_sets.begin(), z_sets.end());
    for (const Cell stem : position.open()) {
      const std::set<Digit> digits = digits_in(position, {stem});
      bool blossoms = digits.size() >= 3 && !digits.contains(struck.digit);
      for (const Digit digit : digits) {
        bool has_petal = false;
        const auto at = robbed.find({stem, digit});
        if (!blossoms || at == robbed.end()) { blossoms = false; break; }
        for (const PlainSet& set : at->second) has_petal = has_petal || loses_z.contains(set);
        blossoms = blossoms && has_petal;
      }
      if (blossoms) note_new(found, {struck});
    }
  }
  return found;
}

}  // namespace cp::oracle
