// SPDX-License-Identifier: Apache-2.0
// Nishio: a candidate is supposed true, and naked and hidden singles are followed until a cell has no candidate left, or a
// digit no place in a house. So the candidate is false.
//
// Sound: everything that is followed holds if the candidate is true.
// Cost: one round of singles for each candidate of the grid.
// Does not find: what needs more than singles on the way (forcing-net). What singles take away with nothing supposed is
// left to them; a position that they show impossible says nothing. Shorter arguments come first.
#include <algorithm>

#include "deduce/detail/guard.h"
#include "deduce/detail/supposition.h"
#include "deduce/technique.h"

namespace cp::techniques {

using namespace deduce;

void nishio(const Position& position, StepSink& sink) {
  constexpr std::string_view kNishio = "nishio";
  const FactTable table(position);
  Supposition supposition(table, Following::kSingles);
  supposition.suppose(Supposition::kNothing);
  if (supposition.is_impossible()) return;
  const std::vector<std::uint64_t> by_singles = supposition.struck();
  struct Refuted {
    int candidate;
    std::vector<Line> lines;
  };
  std::vector<Refuted> found;
  for (const int candidate : table.all_candidates()) {
    if (((by_singles[static_cast<std::size_t>(candidate) >> 6] >> (candidate & 63)) & 1U) != 0) continue;
    supposition.suppose(candidate);
    if (supposition.is_impossible() || is_weakened(kNishio, Guard::kSound)) found.push_back({candidate, supposition.lines_to_end()});
  }
  std::stable_sort(found.begin(), found.end(), [](const Refuted& a, const Refuted& b) { return a.lines.size() < b.lines.size(); });
  for (Refuted& each : found) {
    if (!sink.take(by_supposing(kNishio, {table.candidate(each.candidate)}, std::move(each.lines)))) return;
  }
}

}  // namespace cp::techniques
