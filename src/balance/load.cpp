// SPDX-License-Identifier: Apache-2.0
#include "balance/load.h"

#include <algorithm>
#include <cstdlib>

namespace cp {

Load load_of(const Weighing& weighing, const BalanceReason& reason) {
  Load load;
  for (const Weight& weight : weighing.weights) load.houses += std::abs(weight.weight);
  load.cells = (weighing.open_left | weighing.open_right).size();
  load.shares = 2 * static_cast<int>(reason.forced.size());
  for (const ShareCase& share_case : reason.cases) load.lemmas += static_cast<int>(share_case.lemmas.size());
  load.cases = reason.cases.empty() ? 0 : 4 * (static_cast<int>(reason.cases.size()) - 1);
  load.search = reason.level == 5 ? 60 : 0;
  return load;
}

Pointing pointing_of(const Position& position, const Weighing& weighing) {
  const int all_cells = position.shape().cell_count();
  const int all_givens = position.givens().size();
  Pointing pointing;
  const auto look = [&](const CellSet& cells, Pointing::Region region, int& cell_count, int& given_count) {
    cell_count = cells.size();
    given_count = (cells & position.givens()).size();
    const int more = givens_above_even(cell_count, given_count, all_cells, all_givens);
    if (more <= pointing.hint) return;
    pointing.hint = std::min(more, kMostHint);
    pointing.region = region;
  };
  look(weighing.left, Pointing::Region::kLeft, pointing.left_cells, pointing.left_givens);
  look(weighing.right, Pointing::Region::kRight, pointing.right_cells, pointing.right_givens);
  look(weighing.cancelled, Pointing::Region::kCancelled, pointing.cancelled_cells, pointing.cancelled_givens);
  return pointing;
}

}  // namespace cp
