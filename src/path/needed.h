// SPDX-License-Identifier: Apache-2.0
// Is a technique needed, or is there a way round it?
#pragma once

#include <string>
#include <vector>

#include "path/path.h"

namespace cp {

struct NeededOptions {
  std::vector<std::string> techniques;  // what may be needed: names of selection.h
  std::vector<std::string> without;     // not to be used either way
  int most_free_slack = 1;
};

struct Needed {
  enum class Answer {
    kNo,    // `without` solves the puzzle: no need
    kYes,   // the catalogue solves it only with them
    kOpen,  // the catalogue solves it neither way
  } answer = Answer::kOpen;
  Path with;         // the easiest path, everything allowed (but what the options exclude)
  Path without;      // a path that avoids the techniques; when there is none, as far as it gets
  int orders = 1;    // orders in which it was tried without them
  bool is_used = false;  // the easiest path uses one of the techniques
};

// A technique may lose a pattern to another's elimination, so the end can depend on the order: before the answer is yes,
// the rest of the catalogue is tried in another order as well, everything that fires at once, round by round.
// Error kBadName when a name means nothing.
Result<Needed> is_needed(const Position& puzzle, const NeededOptions& options);

}  // namespace cp
