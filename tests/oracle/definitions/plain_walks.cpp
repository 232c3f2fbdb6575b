// SPDX-License-Identifier: Apache-2.0
#include "oracle/definitions/plain_walks.h"

#include <map>

namespace cp::oracle {

namespace {

// "The digit is in one of these cells."
using Claim = std::pair<Digit, std::set<Cell>>;
using Claims = std::set<Claim>;

// When a claim fails, these hold: the other digits of every set that has it.
std::map<Claim, Claims> what_follows(const Position& position) {
  std::map<Claim, Claims> follows;
  for (const PlainSet& set : plain_almost_locked_sets(position)) {
    for (const Digit lost : set.digits) {
      for (const Digit kept : minus(set.digits, {lost})) follows[{lost, holders(position, set.cells, lost)}].insert({kept, holders(position, set.cells, kept)});
    }
  }
  return follows;
}

}  // namespace

Conclusions plain_set_walks(const Position& position, std::size_t fewest, std::size_t most) {
  const std::map<Claim, Claims> follows = what_follows(position);
  std::map<Claim, Claims> beats, next;  // what fails when a claim holds; what fails one set later when it fails
  for (const auto& [claim, ignored] : follows) {
    for (const auto& [other, also_ignored] : follows) {
      if (claim.first == other.first && see_each_other(position, claim.second, other.second)) beats[claim].insert(other);
    }
  }
  for (const auto& [claim, holding] : follows) {
    for (const Claim& held : holding) next[claim].insert(beats[held].begin(), beats[held].end());
  }
  Conclusions found;
  for (const auto& [start, ignored] : follows) {
    Claims failing = {start}, proved;
    for (std::size_t length = 1; length <= most; ++length) {
      Claims fresh, later;
      for (const Claim& failed : failing) fresh.insert(follows.at(failed).begin(), follows.at(failed).end());
      for (const Claim& end : minus(fresh, proved)) {
        std::set<Cell> both = start.second;
        both.insert(end.second.begin(), end.second.end());
        const bool is_double = end == start || (length == 2 && see_each_other(position, start.second, end.second));
        if (length >= fewest && end.first == start.first && !is_double) note_new(found, plain_seeing_all(position, both, start.first));
      }
      proved.merge(fresh);
      for (const Claim& failed : failing) later.insert(next[failed].begin(), next[failed].end());
      failing = later;
    }
  }
  return found;
}

}  // namespace cp::oracle
