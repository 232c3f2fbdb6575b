// SPDX-License-Identifier: Apache-2.0
// Mutant jellyfish: four houses (bases) whose places for a digit all lie in four others (covers), with lines of one direction on both
// sides or lines of both directions on one side: every mixture that is neither a plain nor a franken jellyfish. The bases share no place, so they need
// the digit four times, and the covers have room for it four times: it leaves the covers' other cells, and those in two covers.
// It is searched on grids up to 9x9 only. It does not look at bases that share a place, at fins, or at a base
// that lies in one cover altogether (locked candidates); nor where fewer covers would do, which no grid allows.
#include "deduce/detail/mixed_houses.h"
#include "deduce/technique.h"

namespace cp::techniques {

void mutant_jellyfish(const Position& position, StepSink& sink) { deduce::find_mixed_fish("mutant-jellyfish", 4, deduce::MixedKind::kMutant, position, sink); }

}  // namespace cp::techniques
