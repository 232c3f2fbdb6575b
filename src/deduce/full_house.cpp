// SPDX-License-Identifier: Apache-2.0
// Full house: a house with one open cell. The house holds every digit once, so the one that is missing goes there. A cell that is the
// last one of several houses is reported once, the box first. It does not look at a house with two open cells, however
// little they can take. Costs one count for each house.
#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

// The smallest digit that the house has not got yet, if the cell can take it.
DigitSet missing_digit(const Position& position, House house, Cell cell) {
  DigitSet placed;
  for (const Cell each : position.shape().cells(house) & position.placed()) placed |= position.candidates(each);
  const DigitSet missing = position.shape().digits() - placed;
  return missing.is_empty() ? missing : DigitSet::of(missing.lowest()) & position.candidates(cell);
}

}  // namespace

void full_house(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "full-house";
  const int allowed = deduce::is_weakened(kId, deduce::Guard::kSound) ? 2 : 1;
  CellSet reported;
  for (const House house : deduce::houses_in_order(position.shape())) {
    const CellSet open = position.shape().cells(house) - position.placed();
    if (open.is_empty() || open.size() > allowed || reported.has(open.first())) continue;
    const DigitSet digit = missing_digit(position, house, open.first());
    if (digit.is_empty()) continue;
    reported.add(open.first());
    if (!sink.take({kId, {{open.first(), digit.lowest()}}, {}, LoneReason{Constraint::of(house, digit.lowest())}})) return;
  }
}

}  // namespace cp::techniques
