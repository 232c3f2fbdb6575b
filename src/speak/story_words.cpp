// SPDX-License-Identifier: Apache-2.0
// The story of a balance from the catalogue, for every language but English (that one is balance_story.cpp).
#include <algorithm>

#include "base/text.h"
#include "speak/case_words.h"
#include "speak/naming.h"
#include "speak/telling.h"
#include "speak/speaker.h"

namespace cp {

namespace {

using Kind = StoryPart::Kind;

// A sentence with *term* as a paragraph.
Paragraph marked(const std::string& text) {
  Paragraph paragraph;
  bool is_inside = false;
  for (const char c : text) {
    if (c == '*') {
      is_inside = !is_inside;
      continue;
    }
    paragraph.text += c;
    if (is_inside) paragraph.term += c;
  }
  return paragraph;
}

class StoryTeller {
 public:
  StoryTeller(const Speaker& speaker, const Telling& told) : speaker_(speaker), words_(speaker.words()), t_(told) {}

  std::vector<StoryPart> tell() {
    tell_houses();
    tell_cancelled();
    tell_known();
    tell_tally();
    tell_slack();
    if (!t_.reason.forced.empty() && t_.scales.slack > 0) tell_forced();
    const bool is_alone = t_.reason.cases.size() == 1;
    for (std::size_t i = 0; i < t_.reason.cases.size(); ++i) {
      if (!is_alone || t_.reason.cases[i].lemmas.size() > 1) tell_case(i);
    }
    tell_falls();
    return std::move(parts_);
  }

 private:
  StoryPart& start(Kind kind, std::string heading) {
    parts_.emplace_back();
    parts_.back().kind = kind;
    parts_.back().heading = std::move(heading);
    return parts_.back();
  }
  static void add(StoryPart& part, const std::string& text) { part.paragraphs.push_back(marked(text)); }
  std::string names(const CellSet& cells) const { return speaker_.cells(t_.shape, cells, t_.position.open()); }

  void tell_houses() {
    const Scales& s = t_.scales;
    const std::string left = speaker_.houses(t_.shape, s.left.houses);
    const std::string right = speaker_.houses(t_.shape, s.right.houses);
    StoryPart& part = start(Kind::kHouses, capitalised(words_.say("story.houses", {{"left", left}, {"right", right}})));
    part.houses = s.left.houses;
    part.houses.insert(part.houses.end(), s.right.houses.begin(), s.right.houses.end());
    add(part, words_.say("story.house", {{"side", t_.shape.side()}}));
    const auto n = static_cast<int>(s.left.houses.size());
    const auto m = static_cast<int>(s.right.houses.size());
    const std::string pans = words_.say(m == 0 ? "story.pans.alone" : "story.pans", {{"left", left}, {"right", right}});
    const std::string count = s.surplus == 0 ? words_.say("story.equal", {{"n", n}}) : words_.say(m == 0 ? "story.surplus.alone" : "story.surplus", {{"n", n}, {"m", m}, {"s", s.surplus}});
    add(part, pans + " " + count);
  }

  void tell_cancelled() {
    const Scales& s = t_.scales;
    StoryPart& part = start(Kind::kCancel, words_.say("story.cancel"));
    part.focus = s.cancelled;
    add(part, s.cancelled.is_empty() ? words_.say("story.cancelled.none") : words_.say("story.cancelled", {{"n", s.cancelled.size()}}));
    std::string text = words_.say("story.rest", {{"n", s.left.cell_count}, {"m", s.right.cell_count}}) + " ";
    text += s.surplus == 0 ? words_.say("story.rest.equal") : words_.say("story.rest.surplus", {{"s", s.surplus}});
    const CellSet twice = s.left.repeated | s.right.repeated;
    if (!twice.is_empty()) text += " " + words_.say("story.twice", {{"cells", names(twice)}});
    add(part, text);
  }

  void tell_known() {
    const Scales& s = t_.scales;
    StoryPart& part = start(Kind::kKnown, words_.say("story.known"));
    part.focus = (s.left.cells | s.right.cells) & t_.position.placed();
    const std::string left = speaker_.copies(t_.shape, s.left.known);
    const std::string right = speaker_.copies(t_.shape, s.right.known);
    add(part, (left.empty() ? words_.say("story.known.none.left") : words_.say("story.known.left", {{"copies", left}})) + " " +
                  (right.empty() ? words_.say("story.known.none.right") : words_.say("story.known.right", {{"copies", right}})));
    add(part, words_.say("story.weights") + (s.surplus > 0 ? " " + words_.say("story.hollow") : ""));
  }

  void tell_tally() {
    StoryPart& part = start(Kind::kTally, words_.say("story.tally"));
    add(part, words_.say("story.account"));
    const DigitCounts none{};
    const std::string left = speaker_.copies(t_.shape, held(t_, Pan::kLeft, none));
    const std::string right = speaker_.copies(t_.shape, held(t_, Pan::kRight, none));
    if (left.empty() && right.empty()) return add(part, words_.say("story.tally.even"));
    std::string text = left.empty() ? std::string() : words_.say("story.tally.left", {{"copies", left}});
    if (!right.empty()) text += (text.empty() ? "" : " ") + words_.say("story.tally.right", {{"copies", right}});
    add(part, text);
  }

  std::string exact_words(const DigitCounts& shares) const {
    const Scales& s = t_.scales;
    std::string text;
    if (s.left.open_count > 0) text = words_.say("story.exact.left", {{"n", s.left.open_count}, {"digits", speaker_.digits(t_.shape, held(t_, Pan::kLeft, shares))}}) + ".";
    if (s.right.open_count > 0) {
      text += (text.empty() ? "" : " ") + words_.say("story.exact.right", {{"n", s.right.open_count}, {"digits", speaker_.digits(t_.shape, held(t_, Pan::kRight, shares))}}) + ".";
    }
    return text;
  }

  void tell_slack() {
    const Scales& s = t_.scales;
    StoryPart& part = start(Kind::kSlack, words_.say(s.slack == 0 ? "story.fit" : "story.room"));
    part.focus = s.left.open | s.right.open;
    const DigitCounts none{};
    const Pan pan = s.left.open_count > 0 ? Pan::kLeft : Pan::kRight;
    const ScalesSide& shown = pan == Pan::kLeft ? s.left : s.right;
    const std::string asked = speaker_.digits(t_.shape, held(t_, pan, none));
    std::string open = pan == Pan::kLeft ? std::string() : words_.say("story.closed") + " ";
    open += words_.say("story.open", {{"side", side(pan)}, {"n", shown.open_count}, {"cells", names(shown.open)}, {"digits", asked.empty() ? words_.say("story.open.none") : asked}});
    if (s.slack == 0) {
      add(part, open + ". " + words_.say("story.slack.0"));
      return add(part, exact_words(none));
    }
    add(part, open + ". " + words_.say("story.slack", {{"n", s.slack}}));
    add(part, words_.say("story.shared", {{"n", s.slack}, {"cells", names(s.right.open)}}));
  }

  std::string side(Pan pan) const { return words_.say(pan == Pan::kLeft ? "story.side.left" : pan == Pan::kRight ? "story.side.right" : "story.side.both"); }

  void tell_forced() {
    StoryPart& part = start(Kind::kForced, words_.say("story.forced"));
    part.shares = t_.forced;
    for (const ForcedCopies& forced : t_.reason.forced) {
      add(part, words_.say("story.forced.words", {{"houses", speaker_.houses(t_.shape, forced.houses)}, {"d", digit_name(forced.digit)}, {"side", side(forced.pan)}}));
      for (const House house : forced.houses) part.focus |= t_.position.places(house, forced.digit);
    }
    add(part, t_.free_slack > 0 ? words_.say("story.forced.rest", {{"n", t_.free_slack}}) : words_.say("story.forced.done") + " " + exact_words(t_.forced));
  }

  std::string lemma_words(const Lemma& lemma, bool is_break, const ShareCase& share_case) const {
    const Digit first = lemma.digits.lowest();
    DigitCounts needed{};
    for (const Digit digit : lemma.digits) needed[digit.index] = t_.scales.need(lemma.pan, digit, share_case.shares[digit.index]);
    CellSet able;
    for (const Cell cell : t_.scales.open(lemma.pan)) {
      if (!(t_.position.candidates(cell) & lemma.digits).is_empty()) able.add(cell);
    }
    std::string key = lemma.kind == Lemma::Kind::kCover ? "story.lemma.cover" : lemma.kind == Lemma::Kind::kSight ? "story.lemma.sight" : "story.lemma.count";
    if (is_break && lemma.kind != Lemma::Kind::kSight) key += ".break";
    if (is_break && lemma.kind == Lemma::Kind::kCount && able.is_empty()) key = "story.lemma.none";
    if (!is_break && lemma.kind == Lemma::Kind::kCover && lemma.houses.size() > 1) key = wastes_a_house(lemma, t_.shape) ? "story.lemma.cover.many.twice" : "story.lemma.cover.many";
    CellSet hit;
    for (const Candidate& gone : lemma.removed) hit.add(gone.cell);
    const std::string text = words_.say(key, {{"side", side(lemma.pan)},
                                              {"cells", names(lemma.kind == Lemma::Kind::kSight ? hit : able)},
                                              {"copies", speaker_.copies(t_.shape, needed)},
                                              {"houses", speaker_.houses(t_.shape, lemma.houses)},
                                              {"d", digit_name(first)}});
    return lemma.removed.empty() ? text : words_.say("story.lemma.falls", {{"words", text}, {"falls", speaker_.falls(t_.shape, lemma.removed)}});
  }

  void add_lemmas(StoryPart& part, const ShareCase& share_case) {
    for (std::size_t i = 0; i < share_case.lemmas.size(); ++i) {
      add(part, lemma_words(share_case.lemmas[i], share_case.is_impossible && i + 1 == share_case.lemmas.size(), share_case));
    }
    part.focus |= cells_of_case(share_case, t_.scales, t_.position);
  }

  void tell_case(std::size_t number) {
    const ShareCase& share_case = t_.reason.cases[number];
    const bool is_alone = t_.reason.cases.size() == 1;
    DigitCounts supposed{};
    for (std::size_t i = 0; i < supposed.size(); ++i) supposed[i] = share_case.shares[i] - t_.forced[i];
    StoryPart& part = start(Kind::kCase, is_alone ? words_.say("story.follow") : words_.say("story.case", {{"n", static_cast<int>(number) + 1}, {"copies", speaker_.copies(t_.shape, supposed)}}));
    add_lemmas(part, share_case);
    if (share_case.is_impossible) add(part, words_.say("story.case.end"));
    if (part.paragraphs.empty()) add(part, words_.say("story.case.nothing"));
    part.removed = removed_in_case(share_case);
    part.shares = share_case.shares;
    part.shares_are_supposed = !is_alone;
  }

  void tell_falls() {
    StoryPart& part = start(Kind::kFalls, words_.say("story.falls"));
    part.removed = t_.eliminations;
    const bool is_alone = t_.reason.cases.size() == 1;
    part.shares = is_alone ? t_.reason.cases[0].shares : t_.forced;
    if (is_alone && t_.reason.cases[0].lemmas.size() == 1) add_lemmas(part, t_.reason.cases[0]);
    if (t_.reason.level >= 5) add(part, words_.say("story.search"));
    if (t_.reason.cases.size() > 1) add(part, words_.say("story.cases.all"));
    if (t_.eliminations.empty()) return;
    add(part, words_.say("story.falls.list", {{"n", static_cast<int>(t_.eliminations.size())}, {"falls", speaker_.falls(t_.shape, t_.eliminations)}}));
    for (const Candidate& gone : t_.eliminations) part.focus.add(gone.cell);
  }

  const Speaker& speaker_;
  const Words& words_;
  const Telling& t_;
  std::vector<StoryPart> parts_;
};

}  // namespace

std::vector<StoryPart> Speaker::story(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) const {
  if (words_.is_english()) return balance_story(reason, position, eliminations);
  const Telling told = telling(reason, position, eliminations);
  return StoryTeller(*this, told).tell();
}

}  // namespace cp
