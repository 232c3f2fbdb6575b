// SPDX-License-Identifier: Apache-2.0
// A balance in one line, in two sentences, in one paragraph.
#include "base/text.h"
#include "speak/balance_story.h"
#include "speak/case_groups.h"
#include "speak/case_words.h"
#include "speak/naming.h"
#include "speak/telling.h"

namespace cp {

std::string balance_headline(const BalanceReason& reason, const Shape& shape) {
  std::vector<House> left;
  std::vector<House> right;
  for (const Weight& weight : reason.weights) {
    std::vector<House>& pan = weight.weight > 0 ? left : right;
    pan.insert(pan.end(), static_cast<std::size_t>(weight.weight > 0 ? weight.weight : -weight.weight), weight.house);
  }
  if (right.empty()) return "Weigh " + house_names(shape, left);
  return "Weigh " + house_names(shape, left) + " against " + house_names(shape, right);
}

std::string balance_in_short(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) {
  const Telling t = telling(reason, position, eliminations);
  const std::string falls = eliminations.empty() ? std::string() : eliminations_in_words(t.shape, eliminations);
  std::string text = balance_headline(reason, t.shape) + ". After everything known has cancelled, ";
  if (t.free_slack <= 0) return text + exact_fit_words(t, t.forced) + (falls.empty() ? "." : ": " + falls + ".");
  const std::string more = t.free_slack == 1 ? "one digit more" : spoken_number(t.free_slack) + " digits more";
  text += "the open left cells hold " + certain_and_more(t, held(t, Pan::kLeft, t.forced), more) + ", which the open right cells must repeat.";
  if (falls.empty()) return text;
  if (reason.level >= 5) return text + " No filling of these cells leaves room for what falls: " + falls + ".";
  return text + " Whichever " + (t.free_slack == 1 ? "digit that is, " : "digits these are, ") + falls + ".";
}

namespace {

// Headline, what cancels, the tally, the slack, the shares known beforehand.
void add_account(const Telling& t, std::vector<std::string>& sentences) {
  const Scales& s = t.scales;
  if (!s.cancelled.is_empty()) {
    const bool is_one = s.cancelled.size() == 1;
    sentences.push_back(counted_in_words(s.cancelled.size(), "cell") + (is_one ? " lies in both pans and cancels; " : " lie in both pans and cancel; ") +
                        (s.left.cell_count == 0 ? std::string("none stay") : counted(s.left.cell_count, "cell") + (s.left.cell_count == 1 ? " stays" : " stay")) +
                        " on the left and " + (s.right.cell_count == 0 ? "none" : spoken_number(s.right.cell_count)) + " on the right.");
  }
  if (s.surplus > 0) sentences.push_back("The left side holds " + surplus_words(t) + ".");
  sentences.push_back("By the digits known so far, " + tally_words(t));
  const DigitCounts none{};
  if (s.slack == 0) {
    sentences.push_back("So " + exact_fit_words(t, none) + ".");
    return;
  }
  sentences.push_back("The left side has " + counted(s.left.open_count, "open cell") + ", so " +
                      (s.slack == 1 ? std::string("one digit is") : counted(s.slack, "digit") + " are") + " shared with the right side.");
  for (const ForcedCopies& forced : t.reason.forced) sentences.push_back(forced_in_words(forced, s, t.position));
  if (t.free_slack == 0) sentences.push_back("So " + exact_fit_words(t, t.forced) + ".");
}

}  // namespace

std::string balance_text(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) {
  const Telling t = telling(reason, position, eliminations);
  std::vector<std::string> sentences = {balance_headline(reason, t.shape) + "."};
  if (t.scales.slack < 0) {
    sentences.push_back("The tally asks for more digits than the left side has open cells, so this position has no solution.");
    return joined(sentences, " ");
  }
  add_account(t, sentences);
  if (reason.level >= 5) sentences.push_back("What follows was checked exhaustively: no filling of the open cells survives with any of these candidates.");
  if (reason.cases.size() == 1) {
    for (std::string& sentence : lemmas_in_words(reason.cases[0], t.scales, position)) sentences.push_back(std::move(sentence));
  }
  if (reason.cases.size() > 1) {
    for (const CaseGroup& group : group_cases(t)) sentences.push_back(group_text(t, group));
    sentences.push_back(verdict_of_cases(t));
  }
  // One deduction has named everything already.
  const bool is_said = reason.cases.size() == 1 && !reason.cases[0].lemmas.empty();
  if (!is_said || reason.cases[0].lemmas.size() > 1) sentences.push_back(falls_words(t, !is_said));
  return joined(sentences, " ");
}

}  // namespace cp
