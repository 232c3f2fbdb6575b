// SPDX-License-Identifier: Apache-2.0
// Cells with the same two candidates, each seeing the next; ends after an odd number of links that do not see each
// other. Both digits leave what sees both ends.
#include "oracle/definitions/plain_sight.h"

namespace cp::oracle {

Conclusions remote_pairs_twin(const Position& position) {
  Conclusions found;
  const std::set<Cell> pairs = cells_with_count(position, 2);
  for (const Cell start : pairs) {
    const std::set<Digit> digits = digits_in(position, {start});
    std::set<Cell> even = {start};
    std::set<Cell> odd;
    for (std::size_t before = 0; before != even.size() + odd.size();) {
      before = even.size() + odd.size();
      for (const Cell cell : pairs) {
        if (digits_in(position, {cell}) != digits) continue;
        for (const Cell last : std::set<Cell>(even)) if (cells_see(position, last, cell)) odd.insert(cell);
        for (const Cell last : std::set<Cell>(odd)) if (cells_see(position, last, cell)) even.insert(cell);
      }
    }
    for (const Cell end : odd) {
      if (end == start || cells_see(position, start, end)) continue;
      std::set<Candidate> struck;
      for (const Digit digit : digits) struck.merge(excluded_by_all(position, candidates_there(position, {start, end}, {digit})));
      note_as_new(found, struck);
    }
  }
  return found;
}

}  // namespace cp::oracle
