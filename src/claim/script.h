// SPDX-License-Identifier: Apache-2.0
// A script: names, footings and claims, one a line (docs/formats/claim.md). Each claim is answered on its footing.
#pragma once

#include <string>
#include <vector>

#include "claim/verdict.h"

namespace cp {

// What a line says about the puzzle, before anything else can be read: the shells need it to set up the position.
struct ScriptHead {
  std::string puzzle;         // after "puzzle"; empty: the script names none
  TextSpan where;             // of that text
  bool after_basics = false;  // "basics": first the singles, locked candidates, subsets and basic fish
};
ScriptHead script_head(std::string_view text);

struct ScriptClaim {
  int line = 0;
  std::string text;     // as typed, trimmed
  Claim claim;
  Footing footing;
  std::string footing_text;  // as typed; "position, rules" when nothing was
};

struct Script {
  Vocabulary vocabulary;
  std::vector<ScriptClaim> claims;
};

// Reads all lines but those of the head. Lines may also be separated by semicolons. `footing`: what claims rest on until
// a footing line says otherwise; empty for position and all rules. Errors have their line and column.
Result<Script> parse_script(const Position& position, std::string_view text, std::string_view footing = {});

struct ScriptAnswer {
  std::vector<ClaimAnswer> answers;  // one for each claim
  // The first claim that was not proved, from 1; 0: all were.
  int first_not_implied = 0;
  // For each claim: earlier claims in its reason that were not proved themselves.
  std::vector<std::vector<int>> rests_on_unproved;
};

// Judges one claim after the other. Earlier claims count as facts where the footing says so, proved or not, as a
// teacher goes on with what was said. Error kLimit with the line of the claim on which the search gave up.
Result<ScriptAnswer> judge_script(const Board& board, const Script& script, const SearchLimits& limits = {});

}  // namespace cp
