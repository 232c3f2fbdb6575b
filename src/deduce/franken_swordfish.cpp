// SPDX-License-Identifier: Apache-2.0
// Franken swordfish: three houses (bases), rows and boxes, whose places for a digit all lie in three others (covers), columns and boxes; or
// columns and boxes in rows and boxes. At least one box takes part. The bases share no place, so they need the digit three times,
// and the covers have room for it three times: it leaves the covers' other cells, and the cells that lie in two covers.
// It is searched on grids up to 9x9 only. It does not look at bases that share a place, at fins, or at a base
// that lies in one cover altogether (locked candidates); nor where fewer covers would do, which no grid allows.
#include "deduce/detail/mixed_houses.h"
#include "deduce/technique.h"

namespace cp::techniques {

void franken_swordfish(const Position& position, StepSink& sink) { deduce::find_mixed_fish("franken-swordfish", 3, deduce::MixedKind::kFranken, position, sink); }

}  // namespace cp::techniques
