// SPDX-License-Identifier: Apache-2.0
// Aligned pair exclusion: two cells of one house. A pair of values for them is out when the values are equal, or when some
// almost locked set (most plainly a cell with just these two candidates) would lose both values and be left with too few
// digits. A value of one cell falls when every pair with it is out. Reason: with the value supposed, one case for
// each value of the other cell, and in each the set that breaks.
// Told once for each value that falls, with the partner of fewest candidates. Sets of up to four cells. The two cells need
// a house in common, and the other cell two candidates at least.
#include "deduce/detail/aligned_exclusion.h"
#include "deduce/technique.h"

namespace cp::techniques {

void aligned_pair_exclusion(const Position& position, StepSink& sink) { deduce::find_aligned_pairs("aligned-pair-exclusion", position, sink); }

}  // namespace cp::techniques
