// SPDX-License-Identifier: Apache-2.0
// Turbot chain: two strong links of one digit, each a house with two places, four different places in all; one place of the first link
// sees one of the second. These two are not both true, so one of the other two (the ends) is: the digit leaves every cell
// that sees both ends. Skyscrapers and two-string kites are turbot chains of a special make and are found here too. Costs a
// look at each pair of strong links. It does not look for a third link, nor for links between groups of cells.
#include "deduce/detail/one_digit_links.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "turbot-chain";

bool look_at(const Position& position, Digit digit, const deduce::StrongLink& one, const deduce::StrongLink& other, deduce::ReportedOnce& reported, StepSink& sink) {
  for (const Cell middle : {one.first, one.second}) {
    if (middle == other.first || middle == other.second || one.other(middle) == other.first || one.other(middle) == other.second) continue;
    for (const Cell other_middle : {other.first, other.second}) {
      if (!position.shape().peers(middle).has(other_middle)) continue;
      if (!deduce::report_ends(kId, position, digit, one.other(middle), other.other(other_middle), {one.house, other.house}, reported, sink)) return false;
    }
  }
  return true;
}

}  // namespace

void turbot_chain(const Position& position, StepSink& sink) {
  deduce::ReportedOnce reported;
  for (const Digit digit : position.shape().digits()) {
    const std::vector<deduce::StrongLink> links = deduce::strong_links(position, digit);
    for (std::size_t i = 0; i < links.size(); ++i) {
      for (std::size_t j = i + 1; j < links.size(); ++j) {
        if (!look_at(position, digit, links[i], links[j], reported, sink)) return;
      }
    }
  }
}

}  // namespace cp::techniques
