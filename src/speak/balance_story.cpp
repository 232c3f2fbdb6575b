// SPDX-License-Identifier: Apache-2.0
#include "speak/balance_story.h"

#include <algorithm>

#include "base/text.h"
#include "speak/case_groups.h"
#include "speak/case_words.h"
#include "speak/naming.h"
#include "speak/telling.h"

namespace cp {

namespace {

using Kind = StoryPart::Kind;

constexpr int kMostListedTwice = 6;  // longer lists are not read out a second time

std::string cells_word(int count) { return count == 0 ? "no cell" : counted(count, "cell"); }

StoryPart houses_part(const Telling& t) {
  const Scales& s = t.scales;
  StoryPart part;
  part.kind = Kind::kHouses;
  part.heading = balance_headline(t.reason, t.shape);
  part.houses = s.left.houses;
  part.houses.insert(part.houses.end(), s.right.houses.begin(), s.right.houses.end());
  const int left = static_cast<int>(s.left.houses.size());
  const int right = static_cast<int>(s.right.houses.size());
  part.paragraphs.push_back({"Every row, every column and every box holds each digit from " + digit_range(t.shape) +
                                 " exactly once. The trade calls each of them a house. So any two groups of houses can be compared without knowing a "
                                 "single digit: as many houses, as many 1s, as many 2s, and so on.",
                             "house"});
  std::string text = "Think of a pair of scales. Into the left pan put " + house_names(t.shape, s.left.houses) + (right == 0 ? "; leave the right pan empty" : "; into the right pan put " + house_names(t.shape, s.right.houses)) +
                     ". We call this a balance. ";
  if (s.surplus == 0) {
    text += std::string(left == 1 ? "Each pan holds one house" : "Both pans hold " + counted(left, "house")) +
            ", so both hold the same digits, each equally often.";
  } else {
    text += "The left pan holds " + counted(left, "house") + ", the right pan " + (right == 0 ? "none" : spoken_number(right)) +
            ": so the left pan holds whatever the right pan holds, and " + surplus_words(t) + ". That excess is the surplus.";
  }
  part.paragraphs.push_back({text, "balance"});
  return part;
}

std::string repeated_remark(const Telling& t) {
  const CellSet repeated = t.scales.left.repeated | t.scales.right.repeated;
  if (repeated.is_empty()) return {};
  return " Note that " + cells_in_short(t.shape, repeated, t.position.open()) + (repeated.size() == 1 ? " counts" : " count") +
         " more than once, because several houses of the same pan cover " + (repeated.size() == 1 ? "it." : "them.");
}

StoryPart cancel_part(const Telling& t) {
  const Scales& s = t.scales;
  StoryPart part;
  part.kind = Kind::kCancel;
  part.heading = "Take off what lies in both pans";
  part.focus = s.cancelled;
  if (s.cancelled.is_empty()) {
    part.paragraphs.push_back({"No cell lies in both pans, so here nothing can be taken off.", ""});
  } else {
    const bool is_one = s.cancelled.size() == 1;
    part.paragraphs.push_back({counted_in_words(s.cancelled.size(), "cell") + (is_one ? " lies" : " lie") + " in both pans. Whatever " +
                                   (is_one ? "digit it holds" : "digits they hold") +
                                   " weighs the same on either side, so we take " + (is_one ? "it" : "them") + " off and never ask: " +
                                   (is_one ? "it cancels." : "they cancel."),
                               is_one ? "cancels" : "cancel"});
  }
  std::string text = "What stays in a pan is its remainder: " + cells_word(s.left.cell_count) + " on the left, " +
                     (s.right.cell_count == 0 ? "none" : spoken_number(s.right.cell_count)) + " on the right. ";
  if (s.surplus == 0) {
    text += "The two remainders hold the same digits, each equally often.";
  } else if (s.right.cell_count == 0) {
    text += "So the left remainder holds exactly " + surplus_words(t) + ".";
  } else {
    text += "The left remainder holds what the right one holds, and " + surplus_words(t) + ".";
  }
  part.paragraphs.push_back({text + repeated_remark(t), "remainder"});
  return part;
}

std::string known_words(const ScalesSide& side, const Telling& t, const std::string& name) {
  if (side.cells.is_empty()) return "The " + name + " remainder is empty.";
  const std::string copies = copies_in_words(side.known, t.shape);
  if (copies.empty()) return "In the " + name + " remainder no digit is known yet.";
  return "In the " + name + " remainder we can already read " + copies + ".";
}

// The account of one digit, as a sample of how the tally is made.
std::string tally_example(const Telling& t) {
  const Scales& s = t.scales;
  Digit sample(0);
  for (const Digit digit : t.shape.digits()) {
    const bool is_better = s.tally[digit.index] != 0 && s.left.known[digit.index] + s.right.known[digit.index] > 0;
    if (is_better && s.tally[sample.index] == 0) sample = digit;
  }
  const int owed = s.tally[sample.index];
  if (owed == 0) return s.surplus == 0 ? std::string() : "The surplus has to be added to the right side. ";
  const auto shown = [](int count) { return count == 0 ? std::string("none") : spoken_number(count); };
  const int left = s.left.known[sample.index];
  const int wanted = s.right.known[sample.index] + s.surplus;
  std::string text = "Take the " + digit_name(sample) + "s: the right side shows " + shown(s.right.known[sample.index]) + ", ";
  if (s.surplus == 0) {
    text += "the left side " + shown(left);
  } else {
    text += "the surplus asks for " + spoken_number(s.surplus) + " more, so the left side has to come to " + spoken_number(wanted) + "; it shows " + shown(left);
  }
  const std::string copies = counted(owed > 0 ? owed : -owed, "more " + digit_name(sample));
  return text + ". So the open " + (owed > 0 ? "left" : "right") + " cells must hold " + copies + " than the open " + (owed > 0 ? "right" : "left") + " cells. ";
}

StoryPart known_part(const Telling& t) {
  StoryPart part;
  part.kind = Kind::kKnown;
  part.heading = "Read the digits we know";
  part.focus = (t.scales.left.cells | t.scales.right.cells) & t.position.placed();
  part.paragraphs.push_back({known_words(t.scales.left, t, "left") + " " + known_words(t.scales.right, t, "right"), ""});
  std::string text = "Picture every digit we know as a weight in its pan, and every open cell as an empty place.";
  if (t.scales.surplus > 0) text += " The hollow weights on the right are the surplus: with them the pans balance.";
  part.paragraphs.push_back({text, ""});
  return part;
}

StoryPart tally_part(const Telling& t) {
  StoryPart part;
  part.kind = Kind::kTally;
  part.heading = "Settle the account, digit by digit";
  part.paragraphs.push_back({"Equal digits on both sides cancel as well. " + tally_example(t) + "What is left of this account for each digit is the tally.", "tally"});
  part.paragraphs.push_back({"It says: " + tally_words(t), ""});
  return part;
}

std::string open_words(const CellSet& cells, int count, const Telling& t) {
  const std::string names = cells.size() <= 6 ? " (" + cell_names(t.shape, cells) + ")" : "";
  return counted(count, "open cell") + names;
}

StoryPart slack_part(const Telling& t) {
  const Scales& s = t.scales;
  StoryPart part;
  part.kind = Kind::kSlack;
  part.heading = s.slack == 0 ? "The open cells fit the tally exactly" : "How much room is left over";
  part.focus = s.left.open | s.right.open;
  const DigitCounts none{};
  const int asked = sum_of(held(t, Pan::kLeft, none));
  std::string text;
  if (s.left.open_count == 0 && s.right.open_count > 0) {
    const int wanted = sum_of(held(t, Pan::kRight, none));
    text = "On the left nothing is open any more. The right side has " + open_words(s.right.open, s.right.open_count, t) + ", and the tally asks for " + counted(wanted, "digit") + " there";
  } else {
    text = "The left side has " + open_words(s.left.open, s.left.open_count, t) + ", and the tally asks for ";
    text += asked == 0 ? "no digit there" : counted(asked, "digit") + " there: " + digits_in_full(held(t, Pan::kLeft, none), t.shape);
  }
  if (s.slack == 0) {
    text += ". Nothing is left over: we say that the slack is zero.";
    part.paragraphs.push_back({text, "slack"});
    part.paragraphs.push_back({"So " + exact_fit_words(t, none) + ".", ""});
    return part;
  }
  text += ". That leaves " + counted(s.slack, "cell") + " over. This number is the slack.";
  part.paragraphs.push_back({text, "slack"});
  const bool is_one = s.slack == 1;
  std::string other = is_one ? "We do not know which digit goes into the cell left over. But the pans must still balance, so the same digit has to "
                               "stand once more among the open right cells: we say that it is shared."
                             : "We do not know which digits go into the " + spoken_number(s.slack) +
                                   " cells left over. But the pans must still balance, so the same digits have to stand once more among the open right "
                                   "cells: we say that they are shared.";
  other += " The right side, with " + open_words(s.right.open, s.right.open_count, t) + ", therefore holds " +
           certain_and_more(t, held(t, Pan::kRight, none), is_one ? "the shared digit" : "the shared digits") + ".";
  part.paragraphs.push_back({other, "shared"});
  return part;
}

StoryPart forced_part(const Telling& t) {
  StoryPart part;
  part.kind = Kind::kForced;
  const int known = sum_of(t.forced);
  part.heading = known == 1 ? "One shared digit is known beforehand" : "Shared digits that are known beforehand";
  part.shares = t.forced;
  for (const ForcedCopies& forced : t.reason.forced) {
    part.paragraphs.push_back({forced_in_words(forced, t.scales, t.position), ""});
    for (const House house : forced.houses) {
      part.houses.push_back(house);
      part.focus |= t.position.places(house, forced.digit);
    }
  }
  if (t.free_slack > 0) {
    part.paragraphs.push_back({"That leaves " + (t.free_slack == 1 ? "one shared digit" : counted(t.free_slack, "shared digit")) + " unknown.", ""});
  } else {
    part.paragraphs.push_back({"That uses up the slack, so nothing else is shared. Now " + exact_fit_words(t, t.forced) + ".", ""});
  }
  return part;
}

// Levels 1 to 3: every count is exact, the lemmas follow one another.
StoryPart deduction_part(const Telling& t) {
  const ShareCase& share_case = t.reason.cases[0];
  StoryPart part;
  part.kind = Kind::kCase;
  part.heading = "Follow the count";
  for (std::string& sentence : lemmas_in_words(share_case, t.scales, t.position)) part.paragraphs.push_back({std::move(sentence), ""});
  part.focus = cells_of_case(share_case, t.scales, t.position);
  part.removed = removed_in_case(share_case);
  part.shares = share_case.shares;
  for (const Lemma& lemma : share_case.lemmas) part.houses.insert(part.houses.end(), lemma.houses.begin(), lemma.houses.end());
  return part;
}

StoryPart falls_part(const Telling& t, bool has_deduction_part) {
  StoryPart part;
  part.kind = Kind::kFalls;
  part.heading = "What falls";
  part.removed = t.eliminations;
  for (const Candidate& gone : t.eliminations) part.focus.add(gone.cell);
  const bool has_one_case = t.reason.cases.size() == 1;
  part.shares = has_one_case ? t.reason.cases[0].shares : t.forced;
  if (has_one_case && !has_deduction_part) {
    for (std::string& sentence : lemmas_in_words(t.reason.cases[0], t.scales, t.position)) part.paragraphs.push_back({std::move(sentence), ""});
    if (!part.paragraphs.empty()) return part;
  }
  if (t.reason.level >= 5) {
    part.paragraphs.push_back({"Which digits fall was checked exhaustively. Each of the candidates below was put into its cell in turn, and every time no filling of "
                               "the open cells survived: none agrees with the tally and repeats no digit in a house.",
                               ""});
  }
  if (t.reason.cases.size() > 1) part.paragraphs.push_back({verdict_of_cases(t), ""});
  // After a chain of deductions every candidate has been named already.
  part.paragraphs.push_back({falls_words(t, !has_one_case || static_cast<int>(t.eliminations.size()) <= kMostListedTwice), ""});
  return part;
}

bool needs_deduction_part(const BalanceReason& reason) { return reason.cases.size() == 1 && reason.cases[0].lemmas.size() > 1; }

}  // namespace

std::vector<StoryPart> balance_story(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) {
  const Telling t = telling(reason, position, eliminations);
  std::vector<StoryPart> parts = {houses_part(t), cancel_part(t), known_part(t), tally_part(t), slack_part(t)};
  if (!reason.forced.empty() && t.scales.slack > 0) parts.push_back(forced_part(t));
  if (reason.cases.size() > 1) add_case_parts(t, parts);
  if (needs_deduction_part(reason)) parts.push_back(deduction_part(t));
  parts.push_back(falls_part(t, needs_deduction_part(reason)));
  return parts;
}

}  // namespace cp
