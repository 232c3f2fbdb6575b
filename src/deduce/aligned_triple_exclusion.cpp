// SPDX-License-Identifier: Apache-2.0
// Aligned triple exclusion: three cells of one house. Three values for them are out when two of them are equal or would take
// two digits from one almost locked set, or when a cell that sees all three has just these three candidates. A value
// of one cell falls when all threes with it are out. Reason: the value supposed, cases for the two other cells in turn.
// Told once for each value that falls. Left to the aligned pair exclusion: what one other cell alone excludes. Sets of up to
// four cells; the two other cells need two candidates at least.
#include "deduce/detail/aligned_exclusion.h"
#include "deduce/technique.h"

namespace cp::techniques {

void aligned_triple_exclusion(const Position& position, StepSink& sink) { deduce::find_aligned_triples("aligned-triple-exclusion", position, sink); }

}  // namespace cp::techniques
