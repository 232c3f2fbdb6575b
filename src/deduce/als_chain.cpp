// SPDX-License-Identifier: Apache-2.0
// A chain of four to six almost locked sets: each passes a digit on to the next (the cells for it all see one another, so only
// one of the two can hold it), a different one than it was robbed of. Without Z the first set holds its digit, so the
// next is robbed and holds another, and so on: the last holds Z. So Z is in the first or the last set.
// Sets of up to four cells, which may overlap and come twice. Left to ALS-XZ and the ALS-XY-wing: cells for Z that two or
// three sets join. Cost: one breadth-first search for each digit of each set. Left out: chains of
// more than six sets, and chains that come back to the same cells for Z.
#include "deduce/detail/set_walks.h"
#include "deduce/technique.h"

namespace cp::techniques {

void als_chain(const Position& position, StepSink& sink) { deduce::find_set_walks("als-chain", 4, 6, position, sink); }

}  // namespace cp::techniques
