// SPDX-License-Identifier: Apache-2.0
// Naked single: an open cell with one candidate left. A cell holds exactly one digit, so that candidate is true.
// Costs one look at each open cell. Steps go by cell.
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

void naked_single(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "naked-single";
  const int allowed = deduce::is_weakened(kId, deduce::Guard::kSound) ? 2 : 1;
  for (const Cell cell : position.open()) {
    const DigitSet candidates = position.candidates(cell);
    if (candidates.is_empty() || candidates.size() > allowed) continue;
    if (!sink.take({kId, {{cell, candidates.lowest()}}, {}, LoneReason{Constraint::of(cell)}})) return;
  }
}

}  // namespace cp::techniques
