// SPDX-License-Identifier: Apache-2.0
// Skyscraper: two parallel lines in which a digit has two places each; one place of each stands in the same crossing line,
// the other two (the roofs) do not. The digit cannot be at both feet, so it is at one of the roofs at least: it leaves every
// cell that sees both. Costs a look at each pair of such lines. With both pairs in line it would be an X-wing, which
// is left to that; nor does it look at feet that only share a box.
#include "deduce/detail/guard.h"
#include "deduce/detail/one_digit_links.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "skyscraper";

// Two lines of one direction; false when the sink asked to stop.
bool look_at(const Position& position, Digit digit, const deduce::StrongLink& one, const deduce::StrongLink& other, deduce::ReportedOnce& reported, StepSink& sink) {
  const Shape& shape = position.shape();
  const bool are_rows = shape.kind(one.house) == HouseKind::kRow;
  const auto are_in_line = [&](Cell a, Cell b) { return are_rows ? shape.column_of(a) == shape.column_of(b) : shape.row_of(a) == shape.row_of(b); };
  for (const Cell foot : {one.first, one.second}) {
    for (const Cell other_foot : {other.first, other.second}) {
      const Cell roof = one.other(foot);
      const Cell other_roof = other.other(other_foot);
      if (!are_in_line(foot, other_foot)) continue;
      if (are_in_line(roof, other_roof) && !deduce::is_weakened(kId, deduce::Guard::kTrueSize)) continue;
      if (!deduce::report_ends(kId, position, digit, roof, other_roof, {one.house, other.house}, reported, sink)) return false;
    }
  }
  return true;
}

}  // namespace

void skyscraper(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  deduce::ReportedOnce reported;
  for (const Digit digit : shape.digits()) {
    const std::vector<deduce::StrongLink> links = deduce::strong_links(position, digit);
    for (std::size_t i = 0; i < links.size(); ++i) {
      if (shape.kind(links[i].house) == HouseKind::kBox) continue;
      for (std::size_t j = i + 1; j < links.size(); ++j) {
        if (shape.kind(links[i].house) != shape.kind(links[j].house)) continue;
        if (!look_at(position, digit, links[i], links[j], reported, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
