// SPDX-License-Identifier: Apache-2.0
// Arguments from the catalogue, for every language but English (that one is argument_text.cpp): link by link.
#include <algorithm>

#include "base/text.h"
#include "speak/argument_lines.h"
#include "speak/naming.h"
#include "speak/speaker.h"

namespace cp {

namespace {

using Kind = Constraint::Kind;

class ArgumentTeller {
 public:
  ArgumentTeller(const Speaker& speaker, const ArgumentReason& reason, const std::vector<Candidate>& struck) : speaker_(speaker), words_(speaker.words()), reason_(reason), struck_(struck) {}

  std::vector<std::string> tell_all(const Position& before) {
    const Shape& shape = before.shape();
    if (!reason_.supposes_target || struck_.empty()) {
      tell(reason_.argument, before);
      if (!struck_.empty()) say("argue.either", {{"falls", speaker_.falls(shape, struck_)}});
      return std::move(sentences_);
    }
    say("argue.suppose", place(shape, struck_[0]));
    Position supposed = before;
    supposed.place(struck_[0].cell, struck_[0].digit);
    tell(reason_.argument, std::move(supposed));
    if (struck_.size() > 1) say("argue.others", {{"list", speaker_.values(shape, {struck_.begin() + 1, struck_.end()})}});
    say("argue.so", {{"falls", speaker_.falls(shape, struck_)}});
    return std::move(sentences_);
  }

 private:
  struct Place {
    std::string cell;
    std::string digit;
  };
  static Place place(const Shape& shape, const Candidate& candidate) { return {shape.name_of(candidate.cell), digit_name(candidate.digit)}; }
  void say(std::string_view key, Fills fills = {}) { sentences_.push_back(capitalised(words_.say(key, fills))); }
  void say(std::string_view key, const Place& at) { say(key, {{"cell", at.cell}, {"d", at.digit}}); }

  // True when it ends in an impossibility.
  bool tell(const Argument& argument, Position position) {
    for (const Line& line : argument.lines) {
      const bool is_lone = line.terms.size() == 1 && line.terms[0].multiplier == -1;
      if (is_lone ? tell_lone(line.terms[0].constraint, position) : tell_sum(line, position)) return true;
    }
    return argument.split && tell_cases(argument, position);
  }

  bool tell_sum(const Line& line, Position& position) {
    const Position before = position;
    const std::string where = speaker_.bases(position.shape(), line.terms);
    if (carry_out_line(line, position)) {
      say("argue.sum.break", {{"where", where}});
      return true;
    }
    const std::vector<Candidate> gone = fallen(before, position);
    if (!gone.empty()) say("argue.sum", {{"where", where}, {"falls", speaker_.falls(position.shape(), gone)}});
    return false;
  }

  bool tell_lone(const Constraint& fact, Position& position) {
    const Shape& shape = position.shape();
    const std::vector<Candidate> left = candidates_left(reason_, fact, position);
    if (left.empty()) {
      tell_empty(fact, shape);
      return true;
    }
    const Candidate only = left[0];
    if (position.is_placed(only.cell)) return false;
    const Place at = place(shape, only);
    if (fact.kind == Kind::kHouse) say("argue.house", {{"house", speaker_.houses(shape, {fact.house()})}, {"cell", at.cell}, {"d", at.digit}});
    if (fact.kind == Kind::kCell) say("argue.cell", at);
    if (fact.kind == Kind::kPattern) say("argue.pattern", at);
    position.place(only.cell, only.digit);
    return false;
  }

  void tell_empty(const Constraint& fact, const Shape& shape) {
    if (fact.kind == Kind::kCell) return say("argue.empty.cell", {{"cell", shape.name_of(fact.cell())}});
    if (fact.kind == Kind::kHouse) return say("argue.empty.house", {{"house", speaker_.houses(shape, {fact.house()})}, {"d", digit_name(fact.digit)}});
    say("argue.empty.pattern", {{"cells", pattern_cells(fact, shape)}});
  }

  [[nodiscard]] std::string pattern_cells(const Constraint& fact, const Shape& shape) const {
    CellSet cells;
    for (const Cell cell : reason_.patterns[fact.place].cells) cells.add(cell);
    return speaker_.cells(shape, cells, {});
  }

  bool tell_cases(const Argument& argument, const Position& position) {
    const Shape& shape = position.shape();
    const std::vector<Candidate> cases = candidates_left(reason_, *argument.split, position);
    tell_choice(*argument.split, cases, shape);
    bool all_break = true;
    for (std::size_t i = 0; i < cases.size() && i < argument.cases.size(); ++i) {
      Position supposed = position;
      supposed.place(cases[i].cell, cases[i].digit);
      say("argue.case", place(shape, cases[i]));
      const std::size_t said = sentences_.size();
      const bool breaks = tell(argument.cases[i], std::move(supposed));
      if (breaks) say("argue.case.break");
      else if (said == sentences_.size()) say("argue.case.once", {{"falls", speaker_.falls(shape, struck_)}});
      else if (!reason_.supposes_target) say("argue.so", {{"falls", speaker_.falls(shape, struck_)}});
      all_break = all_break && breaks;
    }
    return all_break;
  }

  void tell_choice(const Constraint& fact, const std::vector<Candidate>& cases, const Shape& shape) {
    std::vector<std::string> items;
    for (const Candidate& each : cases) {
      items.push_back(fact.kind == Kind::kCell ? digit_name(each.digit) : fact.kind == Kind::kHouse ? shape.name_of(each.cell) : speaker_.values(shape, {each}));
    }
    const std::string list = words_.list(items, "list.or");
    if (fact.kind == Kind::kCell) return say("argue.choice.cell", {{"cell", shape.name_of(fact.cell())}, {"list", list}});
    if (fact.kind == Kind::kHouse) return say("argue.choice.house", {{"house", speaker_.houses(shape, {fact.house()})}, {"d", digit_name(fact.digit)}, {"list", list}});
    say("argue.choice.pattern", {{"cells", pattern_cells(fact, shape)}, {"list", list}});
  }

  const Speaker& speaker_;
  const Words& words_;
  const ArgumentReason& reason_;
  const std::vector<Candidate>& struck_;
  std::vector<std::string> sentences_;
};

}  // namespace

std::string Speaker::argument(const ArgumentReason& reason, const std::vector<Candidate>& struck, const Position& before) const {
  return joined(ArgumentTeller(*this, reason, struck).tell_all(before), " ");
}

std::string Speaker::bases(const Shape& shape, const std::vector<LinearTerm>& terms) const {
  CellSet cells;
  std::vector<House> named;
  for (const LinearTerm& term : terms) {
    if (term.multiplier >= 0) continue;
    if (term.constraint.kind == Kind::kCell) cells.add(term.constraint.cell());
    if (term.constraint.kind == Kind::kHouse && std::find(named.begin(), named.end(), term.constraint.house()) == named.end()) named.push_back(term.constraint.house());
  }
  std::vector<std::string> items;
  if (!cells.is_empty()) items.push_back(cell_list(shape, cells));
  if (!named.empty()) items.push_back(houses(shape, named));
  return words_.list(items);
}

}  // namespace cp
