// SPDX-License-Identifier: Apache-2.0
#include "speak/certificate_words.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "speak/naming.h"

namespace cp {

namespace {

using Kind = ProofItem::Kind;
using FactKind = CertificateFact::Kind;
using Source = RowName::Source;

constexpr std::size_t kMostNamed = 6;   // facts of one kind in a spoken sentence
constexpr std::size_t kMostLines = 60;  // of a written reason: beyond, the rest is counted

class Teller {
 public:
  Teller(const Shape& shape, const Certificate& certificate, bool is_denial)
      : shape_(shape), certificate_(certificate), opposite_(is_denial ? "the claim is false" : "the claim is true"), candidates_(shape.cell_count() * shape.side()) {}

  ClaimWords tell() {
    if (!certificate_.facts.empty()) line("Known: " + facts_in_words(shape_, certificate_.facts) + ".");
    line("Suppose " + opposite_ + ".");
    items(certificate_.proof, {}, "");
    const std::string end = opposite_ == "the claim is false" ? "So the claim holds." : "So the claim cannot be true.";
    if (left_out_ > 0) line("... and " + counted(left_out_, "more line") + " of this kind; the certificate has them all.", true);
    line(end, true);
    return {spoken(), std::move(lines_)};
  }

 private:
  using Known = std::map<int, bool>;

  void line(std::string text, bool always = false) {
    if (always || lines_.size() < kMostLines) lines_.push_back(std::move(text));
    else ++left_out_;
  }

  [[nodiscard]] Candidate candidate_of(int variable) const { return {Cell(variable / shape_.side()), Digit(variable % shape_.side())}; }

  [[nodiscard]] std::string literal_words(const Literal& literal) const {
    if (literal.variable >= candidates_) {
      const std::string way = "way " + to_text(literal.variable - candidates_ + 1);
      return literal.is_true ? way + " is left" : way + " falls away";
    }
    const Candidate candidate = candidate_of(literal.variable);
    return shape_.name_of(candidate.cell) + (literal.is_true ? " is " : " is not ") + Shape::name_of(candidate.digit);
  }

  // What the row is about: "row 3", "balance ring for 5".
  [[nodiscard]] std::string row_words(const RowName& name) const {
    if (name.source == Source::kCell) return shape_.name_of(Cell(name.index));
    if (name.source == Source::kLemma) return "what was shown above";
    if (name.source == Source::kDenial) return "the supposition";
    const CertificateFact& fact = certificate_.facts[static_cast<std::size_t>(name.index)];
    if (fact.kind == FactKind::kHouse) return shape_.long_name_of(fact.house);
    if (fact.kind == FactKind::kMarks) return "the marks of " + shape_.name_of(fact.cell);
    if (fact.kind == FactKind::kClaim) return "claim " + fact.name;
    return "balance " + fact.name + " for " + Shape::name_of(Digit(name.row));
  }

  [[nodiscard]] std::string rows_words(const std::vector<RowUse>& rows) const {
    if (rows.size() == 1) return row_words(rows.front().row);
    std::vector<CertificateFact> facts;
    for (const RowUse& use : rows) {
      if (use.row.source == Source::kFact) facts.push_back(certificate_.facts[static_cast<std::size_t>(use.row.index)]);
    }
    return "the supposition against the sum of " + facts_in_words(shape_, facts) + " for " + Shape::name_of(Digit(rows.back().row.row));
  }

  [[nodiscard]] bool is_house(const std::vector<RowUse>& rows) const {
    return rows.size() == 1 && rows[0].row.source == Source::kFact && certificate_.facts[static_cast<std::size_t>(rows[0].row.index)].kind == FactKind::kHouse;
  }
  [[nodiscard]] bool is_marks(const std::vector<RowUse>& rows) const {
    return rows.size() == 1 && rows[0].row.source == Source::kFact && certificate_.facts[static_cast<std::size_t>(rows[0].row.index)].kind == FactKind::kMarks;
  }

  void use(const ProofItem& item, Known& known, const std::string& indent) {
    std::vector<Candidate> gone;
    std::vector<std::string> other;
    for (const Literal& literal : item.literals) {
      known[literal.variable] = literal.is_true;
      if (literal.variable < candidates_ && !literal.is_true) gone.push_back(candidate_of(literal.variable));
      else other.push_back(literal_words(literal));
    }
    const bool is_cell = item.rows.size() == 1 && item.rows[0].row.source == Source::kCell;
    // That a cell is taken, or that its marks leave a digit out, is seen at a glance.
    if (other.empty() && (is_cell || is_marks(item.rows))) return;
    std::sort(gone.begin(), gone.end());
    std::string text;
    if (!other.empty()) text = listed(other);
    if (!gone.empty()) text += (text.empty() ? "" : "; ") + eliminations_in_words(shape_, gone);
    std::string why = rows_words(item.rows);
    if (is_cell) why = "no other digit is left there";
    if (is_house(item.rows) && !other.empty()) why += " has no other place for " + std::string(1, Shape::name_of(Digit(item.rows[0].row.row)));
    line(indent + text + " (" + why + ").");
  }

  // What cannot be: "row 3 has no place left for 5".
  [[nodiscard]] std::string clash_words(const ProofItem& item, const Known& known) const {
    if (item.rows.size() != 1) return rows_words(item.rows) + " does not come out";
    const RowName& name = item.rows.front().row;
    if (name.source == Source::kDenial) return "that contradicts the supposition itself";
    if (name.source == Source::kLemma) return "that was excluded above";
    if (name.source == Source::kCell) return shape_.name_of(Cell(name.index)) + (trues_of_cell(Cell(name.index), known) > 1 ? " would hold two digits" : " has no digit left");
    if (is_house(item.rows)) {
      const House house = certificate_.facts[static_cast<std::size_t>(name.index)].house;
      int trues = 0;
      for (const Cell cell : shape_.cells(house)) trues += is_known_true(cell, Digit(name.row), known) ? 1 : 0;
      const std::string digit(1, Shape::name_of(Digit(name.row)));
      return shape_.long_name_of(house) + (trues > 1 ? " would hold " + digit + " twice" : " has no place left for " + digit);
    }
    return row_words(name) + (is_marks(item.rows) ? " say otherwise" : " does not come out");
  }

  [[nodiscard]] bool is_known_true(Cell cell, Digit digit, const Known& known) const {
    const auto found = known.find(cell.index * shape_.side() + digit.index);
    return found != known.end() && found->second;
  }
  [[nodiscard]] int trues_of_cell(Cell cell, const Known& known) const {
    int trues = 0;
    for (const Digit digit : shape_.digits()) trues += is_known_true(cell, digit, known) ? 1 : 0;
    return trues;
  }

  void items(const std::vector<ProofItem>& list, Known known, const std::string& indent) {
    for (const ProofItem& item : list) {
      if (item.kind == Kind::kUse) use(item, known, indent);
      if (item.kind == Kind::kClash) {
        last_clash_ = clash_words(item, known);
        line(indent + "But " + last_clash_ + ".");
      }
      if (item.kind == Kind::kLemma) lemma(item, known, indent);
      if (item.kind == Kind::kSplit) split(item, known, indent);
    }
  }

  void lemma(const ProofItem& item, const Known& known, const std::string& indent) {
    ++lemmas_;
    Known supposed = known;
    std::vector<std::string> words;
    for (const Literal& literal : item.literals) {
      supposed[literal.variable] = literal.is_true;
      words.push_back(literal_words(literal));
    }
    line(indent + "Suppose further that " + listed(words) + ".");
    items(item.proofs.front(), std::move(supposed), indent + "  ");
    line(indent + (item.literals.size() == 1 ? "So that is not so." : "So not all of that is so."));
  }

  // The open variables of the row, as the checker finds them.
  [[nodiscard]] std::vector<int> cases_of(const ProofItem& item, const Known& known) const {
    std::vector<int> cases;
    const RowName& name = item.rows.front().row;
    const auto add = [&](int variable) {
      if (!known.contains(variable)) cases.push_back(variable);
    };
    if (name.source == Source::kCell) {
      for (const Digit digit : shape_.digits()) add(name.index * shape_.side() + digit.index);
    } else if (is_house(item.rows)) {
      for (const Cell cell : shape_.cells(certificate_.facts[static_cast<std::size_t>(name.index)].house)) add(cell.index * shape_.side() + name.row);
    }
    if (cases.size() != item.proofs.size()) cases.clear();
    return cases;
  }

  void split(const ProofItem& item, const Known& known, const std::string& indent) {
    const std::vector<int> cases = cases_of(item, known);
    cases_ += static_cast<int>(item.proofs.size());
    std::vector<std::string> choices;
    for (const int variable : cases) choices.push_back(literal_words({variable, true}));
    const std::string why = " (" + rows_words(item.rows) + ")";
    line(indent + (choices.empty() ? capitalised(spoken_number(static_cast<int>(item.proofs.size()))) + " cases are left" + why + "." : "Either " + listed(choices, "or") + why + "."));
    for (std::size_t i = 0; i < item.proofs.size(); ++i) {
      Known supposed = known;
      if (!cases.empty()) supposed[cases[i]] = true;
      line(indent + (choices.empty() ? "Case " + to_text(static_cast<int>(i) + 1) : "If " + choices[i]) + ":");
      items(item.proofs[i], std::move(supposed), indent + "  ");
    }
  }

  [[nodiscard]] std::string spoken() const {
    std::string text = certificate_.facts.empty() ? "Nothing is needed but the cells themselves" : capitalised(short_facts());
    const bool is_one = certificate_.facts.size() == 1 && certificate_.facts.front().kind != FactKind::kMarks;
    text += certificate_.facts.empty() ? "" : is_one ? " is enough" : " are enough";
    const std::string otherwise = opposite_ == "the claim is false" ? "otherwise" : "with the claim";
    if (cases_ == 0 && lemmas_ == 0) return text + ": " + otherwise + " " + last_clash_ + ".";
    if (lemmas_ == 0) return text + ": " + otherwise + " " + spoken_number(cases_) + " cases are left, and each of them ends in a contradiction.";
    return text + ", with " + counted(lemmas_, "side argument") + ": " + otherwise + " " + last_clash_ + ".";
  }

  // Each kind named while it is short, counted otherwise.
  [[nodiscard]] std::string short_facts() const {
    std::map<FactKind, std::vector<CertificateFact>> kinds;
    for (const CertificateFact& fact : certificate_.facts) kinds[fact.kind].push_back(fact);
    std::vector<std::string> parts;
    for (const auto& [kind, facts] : kinds) {
      const int size = static_cast<int>(facts.size());
      if (facts.size() <= kMostNamed) parts.push_back(facts_in_words(shape_, facts));
      else if (kind == FactKind::kHouse) parts.push_back(counted(size, "house"));
      else if (kind == FactKind::kMarks) parts.push_back("what is left in " + counted(size, "cell"));
      else parts.push_back(counted(size, kind == FactKind::kBalance ? "balance" : "earlier claim"));
    }
    return listed(parts);
  }

  const Shape& shape_;
  const Certificate& certificate_;
  std::string opposite_;
  int candidates_;
  std::vector<std::string> lines_;
  int left_out_ = 0;
  int cases_ = 0;
  int lemmas_ = 0;
  std::string last_clash_;
};

}  // namespace

ClaimWords certificate_words(const Shape& shape, const Certificate& certificate, bool is_denial) { return Teller(shape, certificate, is_denial).tell(); }

std::string fact_in_words(const Shape& shape, const CertificateFact& fact) {
  switch (fact.kind) {
    case FactKind::kHouse: return shape.long_name_of(fact.house);
    case FactKind::kBalance: return "balance " + fact.name;
    case FactKind::kClaim: return "claim " + fact.name;
    case FactKind::kMarks: break;
  }
  if (fact.digits.size() == 1) return "the " + digit_names(fact.digits) + " in " + shape.name_of(fact.cell);
  return "the marks of " + shape.name_of(fact.cell) + " (" + digit_names(fact.digits, "or") + ")";
}

std::string facts_in_words(const Shape& shape, const std::vector<CertificateFact>& facts) {
  std::vector<House> houses;
  std::vector<std::string> marks;
  std::vector<std::string> parts;
  std::vector<std::string> rest;
  for (const CertificateFact& fact : facts) {
    if (fact.kind == FactKind::kHouse) houses.push_back(fact.house);
    else if (fact.kind == FactKind::kMarks && fact.digits.size() > 1) marks.push_back(shape.name_of(fact.cell) + " (" + digit_names(fact.digits, "or") + ")");
    else rest.push_back(fact_in_words(shape, fact));
  }
  if (!houses.empty()) parts.push_back(house_names(shape, houses));
  for (std::string& text : rest) parts.push_back(std::move(text));
  if (!marks.empty()) parts.push_back("the marks of " + listed(marks));
  return listed(parts);
}

}  // namespace cp
