// SPDX-License-Identifier: Apache-2.0
// Hidden single: a digit with one place left in a house. The house holds the digit exactly once, so it goes there. The
// same placement is reported once for each house that shows it, the box first. A cell that is a naked single as well
// counts here too. Costs one intersection for each house and digit.
#include "deduce/detail/guard.h"
#include "deduce/detail/tables.h"
#include "deduce/technique.h"

namespace cp::techniques {

void hidden_single(const Position& position, StepSink& sink) {
  constexpr std::string_view kId = "hidden-single";
  const int allowed = deduce::is_weakened(kId, deduce::Guard::kSound) ? 2 : 1;
  const Shape& shape = position.shape();
  for (const House house : deduce::houses_in_order(shape)) {
    for (const Digit digit : shape.digits()) {
      const CellSet places = position.places(house, digit);
      if (places.is_empty() || places.size() > allowed) continue;
      if (!sink.take({kId, {{places.first(), digit}}, {}, LoneReason{Constraint::of(house, digit)}})) return;
    }
  }
}

}  // namespace cp::techniques
