// SPDX-License-Identifier: Apache-2.0
#include "lesson/figure.h"

#include <algorithm>

#include "base/text.h"
#include "speak/balance_story.h"
#include "speak/naming.h"
#include "speak/scales.h"
#include "speak/speaker.h"

namespace cp {

namespace {

std::string rows_in_words(const Words& words, const Position& position) {
  const Shape& shape = position.shape();
  std::string text;
  for (int row = 0; row < shape.side(); ++row) {
    std::vector<std::string> entries;
    for (const Cell cell : shape.cells(shape.row(row))) {
      const auto digit = position.digit_at(cell);
      entries.push_back(digit ? digit_name(*digit) : words.say("board.blank"));
    }
    text += " " + words.say("board.row", {{"n", row + 1}, {"entries", joined(entries, ", ")}});
  }
  return text;
}

std::string candidates_in_words(const Words& words, const Figure& figure) {
  const Position& position = figure.position;
  std::vector<std::string> entries;
  for (const Cell cell : figure.candidates - position.placed()) {
    const DigitSet left = figure.lens.is_empty() ? position.candidates(cell) : position.candidates(cell) & figure.lens;
    if (left.is_empty() && !figure.lens.is_empty()) continue;
    std::vector<std::string> digits;
    for (const Digit digit : left) digits.push_back(digit_name(digit));
    entries.push_back(position.shape().name_of(cell) + ": " + (digits.empty() ? words.say("board.no.candidate") : words.list(digits, "list.or")));
  }
  return entries.empty() ? std::string() : " " + words.say("board.candidates", {{"list", joined(entries, "; ")}});
}

std::string candidate_list(const Words& words, const Shape& shape, const std::vector<Candidate>& candidates) {
  std::vector<std::string> names;
  for (const Candidate& each : candidates) names.push_back(words.say("board.candidate", {{"d", digit_name(each.digit)}, {"cell", shape.name_of(each.cell)}}));
  return words.list(names);
}

void say_cells(std::string& text, const Speaker& speaker, const Shape& shape, std::string_view key, const CellSet& cells) {
  if (!cells.is_empty()) text += " " + speaker.words().say(key, {{"cells", speaker.cell_list(shape, cells)}});
}

}  // namespace

void describe(Figure& figure) {
  const Speaker speaker(figure.language);
  const Words& words = speaker.words();
  const Shape& shape = figure.position.shape();
  if (figure.title.empty()) figure.title = words.say("board.title");
  std::string text = words.say("board.size", {{"n", shape.side()}});
  if (!figure.left_houses.empty()) text += " " + words.say("board.left", {{"houses", speaker.houses(shape, figure.left_houses)}});
  if (!figure.right_houses.empty()) text += " " + words.say("board.right", {{"houses", speaker.houses(shape, figure.right_houses)}});
  // Before anything has cancelled the marked cells are whole houses, named already.
  if (!figure.left.meets(figure.right) && !figure.cancelled.is_empty()) {
    say_cells(text, speaker, shape, "board.cancelled", figure.cancelled);
    say_cells(text, speaker, shape, "board.left.rest", figure.left);
    say_cells(text, speaker, shape, "board.right.rest", figure.right);
  }
  say_cells(text, speaker, shape, "board.again", figure.counted_again);
  say_cells(text, speaker, shape, "board.focus", figure.focus);
  say_cells(text, speaker, shape, "board.fresh", figure.fresh);
  if (!figure.told.empty()) text += " " + words.say("board.told", {{"list", candidate_list(words, shape, figure.told)}});
  if (!figure.struck.empty()) text += " " + words.say("board.struck", {{"list", speaker.falls(shape, figure.struck)}});
  if (!figure.placed.empty()) text += " " + words.say("board.placed", {{"list", speaker.values(shape, figure.placed)}});
  text += rows_in_words(words, figure.position);
  text += candidates_in_words(words, figure);
  figure.description = text;
}

namespace {

DigitCounts without(const DigitCounts& counts, const DigitCounts& taken_off) {
  DigitCounts rest{};
  for (std::size_t i = 0; i < counts.size(); ++i) rest[i] = std::max(counts[i] - taken_off[i], 0);
  return rest;
}

std::string full_words(const Words& words, const DigitCounts& counts, int side) {
  std::vector<std::string> items;
  for (int i = 0; i < side; ++i) items.insert(items.end(), static_cast<std::size_t>(std::max(counts[static_cast<std::size_t>(i)], 0)), digit_name(Digit(i)));
  return words.list(items);
}

std::string load_words(const Words& words, const PanLoad& load, const DigitCounts& taken_off, bool is_tallied, int side) {
  std::string known = full_words(words, is_tallied ? without(load.known, taken_off) : load.known, side);
  if (known.empty()) known = words.say("load.empty");
  const std::string text = words.say(load.open == 0 ? "load.nothing" : load.open > 12 ? "load.open.many" : "load.open", {{"known", known}, {"n", load.open}});
  const std::string owed = full_words(words, load.owed, side);
  return is_tallied && load.open > 0 && !owed.empty() ? words.say("load.filled", {{"load", text}, {"digits", owed}}) : text;
}

}  // namespace

void describe(PanPicture& picture) {
  const Words words(picture.language);
  if (picture.title.empty()) picture.title = words.say(picture.is_tallied ? "pans.title.tallied" : "pans.title");
  std::string text = words.say("pans.level");
  if (picture.is_tallied) text += " " + words.say("pans.taken");
  DigitCounts right_weights = picture.right.known;
  for (int i = 0; i < picture.side; ++i) right_weights[static_cast<std::size_t>(i)] += picture.surplus;
  text += " " + words.say("pans.describe.left", {{"load", load_words(words, picture.left, right_weights, picture.is_tallied, picture.side)}});
  PanLoad right = picture.right;
  if (picture.is_tallied) right.known = right_weights;
  text += " " + words.say("pans.describe.right", {{"load", load_words(words, right, picture.left.known, picture.is_tallied, picture.side)}});
  if (picture.surplus > 0 && !picture.is_tallied) text += " " + words.say("pans.describe.surplus", {{"n", picture.surplus}});
  picture.description = text;
}

Figure balance_figure(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) {
  const Scales scales = lay_out(reason, position);
  Figure figure(position);
  figure.title = balance_headline(reason, position.shape());
  figure.left_houses = scales.left.houses;
  figure.right_houses = scales.right.houses;
  figure.left = scales.left.cells;
  figure.right = scales.right.cells;
  figure.cancelled = scales.cancelled;
  figure.counted_again = scales.left.repeated | scales.right.repeated;
  figure.candidates = scales.left.open | scales.right.open;
  figure.struck = eliminations;
  for (const Candidate& gone : eliminations) figure.candidates.add(gone.cell);
  describe(figure);
  return figure;
}

namespace {

// Gathers what a reason speaks of: the candidates of its bases and splits, and the facts that single out a cell.
class Spoken {
 public:
  explicit Spoken(const Position& before) : before_(before) {}

  void add(const Constraint& fact) {
    if (fact.kind == Constraint::Kind::kCell) {
      for (const Digit digit : before_.candidates(fact.cell())) add(Candidate{fact.cell(), digit});
    } else if (fact.kind == Constraint::Kind::kHouse) {
      for (const Cell cell : before_.places(fact.house(), fact.digit)) add(Candidate{cell, fact.digit});
    }
  }
  void add(const std::vector<LinearTerm>& terms) {
    for (const LinearTerm& term : terms) {
      if (term.multiplier < 0) add(term.constraint);
    }
  }
  void add(const Argument& argument) {
    for (const Line& line : argument.lines) add(line.terms);
    if (argument.split) add(*argument.split);
    for (const Argument& each : argument.cases) add(each);
  }
  void add(const DeadlyPattern& pattern) {
    for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
      for (const Digit digit : pattern.digits[i] & before_.candidates(pattern.cells[i])) add(Candidate{pattern.cells[i], digit});
    }
  }
  void add(const Candidate& candidate) {
    if (!before_.is_placed(candidate.cell)) told_.push_back(candidate);
  }
  [[nodiscard]] std::vector<Candidate> without(const std::vector<Candidate>& others) {
    std::sort(told_.begin(), told_.end());
    told_.erase(std::unique(told_.begin(), told_.end()), told_.end());
    std::erase_if(told_, [&](const Candidate& each) { return std::find(others.begin(), others.end(), each) != others.end(); });
    return told_;
  }

 private:
  const Position& before_;
  std::vector<Candidate> told_;
};

}  // namespace

Figure step_figure(const Step& step, const Position& before, std::string title) {
  Figure figure(before);
  figure.title = std::move(title);
  figure.candidates = before.open();
  figure.struck = step.eliminations;
  figure.placed = step.placements;
  Spoken spoken(before);
  if (const auto* lone = std::get_if<LoneReason>(&step.reason)) spoken.add(lone->constraint);
  if (const auto* linear = std::get_if<LinearReason>(&step.reason)) spoken.add(linear->terms);
  if (const auto* argument = std::get_if<ArgumentReason>(&step.reason)) {
    spoken.add(argument->argument);
    for (const DeadlyPattern& pattern : argument->patterns) spoken.add(pattern);
  }
  std::vector<Candidate> falling = step.eliminations;
  falling.insert(falling.end(), step.placements.begin(), step.placements.end());
  figure.told = spoken.without(falling);
  for (const Candidate& each : figure.told) figure.focus.add(each.cell);
  describe(figure);
  return figure;
}

PanPicture balance_pans(const BalanceReason& reason, const Position& position, bool is_tallied, const DigitCounts& shares) {
  const Scales scales = lay_out(reason, position);
  PanPicture picture;
  picture.side = position.shape().side();
  picture.surplus = scales.surplus;
  picture.is_tallied = is_tallied;
  picture.left.known = scales.left.known;
  picture.right.known = scales.right.known;
  picture.left.open = scales.left.open_count;
  picture.right.open = scales.right.open_count;
  for (const Digit digit : position.shape().digits()) {
    picture.left.owed[digit.index] = scales.need(Pan::kLeft, digit, shares[digit.index]);
    picture.right.owed[digit.index] = scales.need(Pan::kRight, digit, shares[digit.index]);
  }
  describe(picture);
  return picture;
}

TallyTable tally_table(const BalanceReason& reason, const Position& position) {
  const Scales scales = lay_out(reason, position);
  return {"en", position.shape().side(), scales.surplus, scales.left.known, scales.right.known, scales.tally};
}

}  // namespace cp
