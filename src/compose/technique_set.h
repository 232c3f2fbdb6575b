// SPDX-License-Identifier: Apache-2.0
// Techniques run to their common end, as quickly as it can be done: what deduce/basics.h knows goes there.
#pragma once

#include <string>
#include <vector>

#include "deduce/basics.h"
#include "path/selection.h"

namespace cp {

class TechniqueSet {
 public:
  // Names of path/selection.h, all of them known.
  explicit TechniqueSet(const std::vector<std::string>& names);

  // Applies them until none changes anything. False when the position contradicts itself. The balances of a set are
  // asked last, with at most this free slack.
  bool run(Position& position, int most_free_slack) const;

  [[nodiscard]] const Selection& selection() const { return selection_; }
  // The first technique of the set that says something, cheapest first; null when none does. Balances are not asked.
  [[nodiscard]] const Technique* first_that_speaks(const Position& position) const;

 private:
  bool run_others(Position& position, int most_free_slack, bool& changed) const;

  Selection selection_;
  bool is_quick_ = false;       // the groups below are part of the set
  BasicsGroups groups_{};
  std::vector<const Technique*> others_;  // what the quick part does not know, cheapest first
};

}  // namespace cp
