// SPDX-License-Identifier: Apache-2.0
#include "speak/telling.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "speak/case_words.h"
#include "speak/naming.h"
#include "speak/words.h"

namespace cp {

Telling telling(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) {
  Scales scales = lay_out(reason, position);
  const DigitCounts forced = shares_known_beforehand(reason, scales, position);
  const int free_slack = scales.slack - sum_of(forced);
  return {reason, position, eliminations, position.shape(), std::move(scales), forced, free_slack};
}

DigitCounts held(const Telling& t, Pan pan, const DigitCounts& shares) {
  DigitCounts counts{};
  for (const Digit digit : t.shape.digits()) counts[digit.index] = t.scales.need(pan, digit, shares[digit.index]);
  return counts;
}

std::string surplus_words(const Telling& t) {
  return spoken_number(t.scales.surplus) + (t.scales.surplus == 1 ? " more of each digit from " : " more of every digit from ") + digit_range(t.shape);
}

std::string tally_words(const Telling& t) {
  const DigitCounts none{};
  const std::string on_left = copies_in_words(held(t, Pan::kLeft, none), t.shape, "more");
  const std::string on_right = copies_in_words(held(t, Pan::kRight, none), t.shape, "more");
  if (on_left.empty() && on_right.empty()) return "the open cells of both sides hold the same digits, each equally often.";
  if (on_right.empty()) return "the open left cells must hold " + on_left + " than the open right cells.";
  if (on_left.empty()) return "the open right cells must hold " + on_right + " than the open left cells.";
  return "the open left cells must hold " + on_left + " than the open right cells, and the open right cells " + on_right + " than the left ones.";
}

std::string certain_and_more(const Telling& t, const DigitCounts& certain, const std::string& more) {
  const std::string sure = digits_in_full(certain, t.shape);
  if (sure.empty()) return more;
  return sure + (sum_of(certain) > 1 ? ", and " : " and ") + more;
}

std::string exact_fit_words(const Telling& t, const DigitCounts& shares) {
  const auto side = [&t, &shares](Pan pan, const std::string& name, int open) {
    return "the open " + name + (open == 1 ? " cell holds" : " cells hold exactly") + " " + digits_in_full(held(t, pan, shares), t.shape);
  };
  std::vector<std::string> sides;
  if (t.scales.left.open_count > 0) sides.push_back(side(Pan::kLeft, "left", t.scales.left.open_count));
  if (t.scales.right.open_count > 0) sides.push_back(side(Pan::kRight, "right", t.scales.right.open_count));
  return sides.empty() ? "no cell is left open" : joined(sides, ", and ");
}

std::string counted_in_words(int number, std::string_view noun) {
  const Words words("en");
  const std::string key = "number." + to_text(number);
  const std::string spelt = words.has(key) ? words.say(key) : to_text(number);
  return capitalised(number == 0 ? "no" : spelt) + " " + std::string(noun) + (number == 1 ? "" : "s");
}

std::string falls_words(const Telling& t, bool is_listed) {
  const int count = static_cast<int>(t.eliminations.size());
  if (count == 0) return "No candidate falls.";
  const std::string text = counted_in_words(count, "candidate") + (count == 1 ? " falls" : " fall");
  return is_listed ? text + ": " + eliminations_in_words(t.shape, t.eliminations) + "." : text + " altogether.";
}

}  // namespace cp
