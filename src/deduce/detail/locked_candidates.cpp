// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/locked_candidates.h"

#include <utility>

#include "deduce/detail/guard.h"

namespace cp::deduce {

bool report_locked(std::string_view technique, const Position& position, House base, House cover, Digit digit, StepSink& sink) {
  const CellSet places = position.places(base, digit);
  const CellSet overlap = places & position.shape().cells(cover);
  if (overlap.size() < (is_weakened(technique, Guard::kTrueSize) ? 1 : 2)) return true;
  if ((places - overlap).size() > (is_weakened(technique, Guard::kSound) ? 1 : 0)) return true;
  const CellSet struck = position.places(cover, digit) - overlap;
  if (struck.is_empty()) return true;
  Step step;
  step.technique = technique;
  for (const Cell cell : struck) step.eliminations.push_back({cell, digit});
  step.reason = LinearReason{{{Constraint::of(base, digit), -1}, {Constraint::of(cover, digit), 1}}};
  return sink.take(std::move(step));
}

}  // namespace cp::deduce
