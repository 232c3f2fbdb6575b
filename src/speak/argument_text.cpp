// SPDX-License-Identifier: Apache-2.0
#include "speak/argument_text.h"

#include <algorithm>

#include "base/text.h"
#include "speak/argument_lines.h"
#include "speak/linear_text.h"
#include "speak/naming.h"

namespace cp {

namespace {

using Kind = Constraint::Kind;

class ArgumentTelling {
 public:
  ArgumentTelling(const ArgumentReason& reason, const std::vector<Candidate>& struck) : reason_(reason), struck_(struck) {}

  // Tells the lines and cases; `position` has what was supposed so far. True when it ends in an impossibility.
  bool tell(const Argument& argument, Position position, std::string& text) {
    for (const Line& line : argument.lines) {
      if (tell_line(line, position, text)) return true;
    }
    if (argument.split) return tell_cases(argument, position, text);
    return false;
  }

 private:
  bool tell_line(const Line& line, Position& position, std::string& text) {
    if (line.terms.size() == 1 && line.terms[0].multiplier == -1) return tell_lone(line.terms[0].constraint, position, text);
    const Position before = position;
    if (carry_out_line(line, position)) {
      text += " But " + impossible_text({line.terms}, before) + ".";
      return true;
    }
    const std::vector<Candidate> gone = fallen(before, position);
    if (!gone.empty()) text += " " + linear_text({line.terms}, gone, before);
    return false;
  }

  bool tell_lone(const Constraint& fact, Position& position, std::string& text) {
    const Shape& shape = position.shape();
    const std::vector<Candidate> left = candidates_left(reason_, fact, position);
    if (left.empty()) {
      text += " But then " + emptiness(fact, shape) + ".";
      return true;
    }
    const Candidate only = left[0];
    if (position.is_placed(only.cell)) return false;
    if (fact.kind == Kind::kHouse) text += " Then " + shape.long_name_of(fact.house()) + " has only " + shape.name_of(only.cell) + " left for " + digit_name(only.digit) + ".";
    if (fact.kind == Kind::kCell) text += " Then " + shape.name_of(only.cell) + " can only be " + digit_name(only.digit) + ".";
    if (fact.kind == Kind::kPattern) text += " To keep clear of the deadly pattern, " + supposition_in_words(shape, only) + ".";
    position.place(only.cell, only.digit);
    return false;
  }

  [[nodiscard]] std::string emptiness(const Constraint& fact, const Shape& shape) const {
    if (fact.kind == Kind::kCell) return shape.name_of(fact.cell()) + " has no digit left";
    if (fact.kind == Kind::kHouse) return shape.long_name_of(fact.house()) + " has no place left for " + digit_name(fact.digit);
    return pattern_words(reason_.patterns[fact.place], shape) + ": these digits could be exchanged, and the puzzle would have a second solution";
  }

  static std::string pattern_words(const DeadlyPattern& pattern, const Shape& shape) {
    CellSet cells;
    DigitSet digits;
    for (std::size_t i = 0; i < pattern.cells.size(); ++i) {
      cells.add(pattern.cells[i]);
      digits |= pattern.digits[i];
    }
    const std::string named = cells.size() <= 8 ? cell_names(shape, cells) : "all open cells";
    return named + " would hold nothing but " + (digits.size() <= 4 ? digit_names(digits) : "their two digits each");
  }

  bool tell_cases(const Argument& argument, const Position& position, std::string& text) {
    const Shape& shape = position.shape();
    const std::vector<Candidate> cases = candidates_left(reason_, *argument.split, position);
    text += " " + choice_words(*argument.split, cases, shape) + ".";
    bool all_break = true;
    for (std::size_t i = 0; i < cases.size() && i < argument.cases.size(); ++i) {
      Position supposed = position;
      supposed.place(cases[i].cell, cases[i].digit);
      text += " If " + supposition_in_words(shape, cases[i]);
      std::string told;
      const bool breaks = tell(argument.cases[i], std::move(supposed), told);
      text += joined_case(told);
      if (breaks) text += told.rfind(kBut, 0) == 0 ? " That cannot be." : " So that cannot be.";
      else if (told.empty()) text += ", " + goal_words(shape) + " at once.";
      else if (!reason_.supposes_target) text += " So " + goal_words(shape) + ".";
      all_break = all_break && breaks;
    }
    return all_break;
  }

  static constexpr std::string_view kBut = " But ";

  // What follows on "If r1c1 is 2".
  static std::string joined_case(const std::string& told) {
    if (told.empty()) return told;
    if (told.rfind(kBut, 0) != 0) return ":" + told;
    const std::string rest = told.substr(kBut.size());
    return ", " + (rest.rfind("then ", 0) == 0 ? rest : "then " + rest);
  }

  // "r1c1 can be 2, 5 or 8".
  [[nodiscard]] std::string choice_words(const Constraint& fact, const std::vector<Candidate>& cases, const Shape& shape) const {
    if (fact.kind == Kind::kPattern) {
      return "If all went into the pattern, " + pattern_words(reason_.patterns[fact.place], shape) +
             ", and these digits could be exchanged: the puzzle would have a second solution. So one of these is true: " + choices_in_words(cases, shape, "or");
    }
    std::vector<std::string> left;
    for (const Candidate& each : cases) left.push_back(fact.kind == Kind::kCell ? digit_name(each.digit) : shape.name_of(each.cell));
    if (fact.kind == Kind::kCell) return shape.name_of(fact.cell()) + " can be " + listed(left, "or");
    return "The " + digit_name(fact.digit) + " of " + shape.long_name_of(fact.house()) + " can go to " + listed(left, "or");
  }
  static std::string choices_in_words(const std::vector<Candidate>& cases, const Shape& shape, std::string_view last_word) {
    std::vector<std::string> words;
    for (const Candidate& each : cases) words.push_back(supposition_in_words(shape, each));
    return listed(words, last_word);
  }
  [[nodiscard]] std::string goal_words(const Shape& shape) const { return eliminations_in_words(shape, struck_); }

  const ArgumentReason& reason_;
  const std::vector<Candidate>& struck_;
};

}  // namespace

std::string supposition_in_words(const Shape& shape, const Candidate& candidate) {
  return shape.name_of(candidate.cell) + " is " + digit_name(candidate.digit);
}

std::string argument_text(const ArgumentReason& reason, const std::vector<Candidate>& struck, const Position& before) {
  const Shape& shape = before.shape();
  ArgumentTelling telling(reason, struck);
  std::string text;
  if (!reason.supposes_target || struck.empty()) {
    telling.tell(reason.argument, before, text);
    return text.substr(text.empty() ? 0 : 1) + " Either way: " + (struck.empty() ? "nothing changes" : eliminations_in_words(shape, struck)) + ".";
  }
  text = "Suppose " + supposition_in_words(shape, struck[0]) + ".";
  Position supposed = before;
  supposed.place(struck[0].cell, struck[0].digit);
  telling.tell(reason.argument, std::move(supposed), text);
  if (struck.size() > 1) {
    std::vector<std::string> others;
    for (std::size_t i = 1; i < struck.size(); ++i) others.push_back(shape.name_of(struck[i].cell) + " = " + digit_name(struck[i].digit));
    text += " The same goes for " + listed(others) + ".";
  }
  return text + " So " + eliminations_in_words(shape, struck) + ".";
}

}  // namespace cp
