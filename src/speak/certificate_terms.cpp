// SPDX-License-Identifier: Apache-2.0
#include "speak/certificate_terms.h"

#include <algorithm>
#include <array>
#include <cstdlib>

#include "base/text.h"
#include "speak/naming.h"

namespace cp {

namespace {

using FactKind = CertificateFact::Kind;
using Source = RowName::Source;

constexpr std::size_t kMostNamed = 6;  // facts of one kind in a spoken sentence
constexpr std::string_view kThereAre = "there are ";
constexpr std::size_t kMostParts = 3;  // of what an option stands for

// Lists that may have "and" in them are set apart by commas; short ones need none.
std::string joined_parts(const std::vector<std::string>& parts) {
  const bool is_nested = std::any_of(parts.begin(), parts.end(), [](const std::string& part) { return part.find(" and ") != std::string::npos; });
  if (parts.size() < 2 || !is_nested) return listed(parts);
  return joined({joined({parts.begin(), parts.end() - 1}, ", "), parts.back()}, ", and ");
}

}  // namespace

CertificateTerms::CertificateTerms(const Shape& shape, const Certificate& certificate)
    : shape_(shape), certificate_(certificate), candidates_(shape.cell_count() * shape.side()), fact_rows_(certificate.facts.size()) {
  for (std::size_t i = 0; i < certificate.facts.size(); ++i) {
    const CertificateFact& fact = certificate.facts[i];
    if (fact.kind == FactKind::kClaim) name_options(fact.formula, false, fact_rows_[i]);
    if (fact.kind == FactKind::kMarks && fact.digits.size() == 1) given_[fact.cell.index * shape.side() + (*fact.digits.begin()).index] = true;
  }
  name_options(certificate.denial, false, denial_rows_);
}

void CertificateTerms::name_options(const Formula& formula, bool is_guarded, std::vector<std::vector<int>>& rows) {
  if (formula.kind == Formula::Kind::kRow) {
    std::vector<int> variables;
    for (const RowTerm& term : formula.row.terms) variables.push_back(term.variable);
    rows.push_back(std::move(variables));
    if (is_guarded && formula.row.is_exact) rows.emplace_back();
    return;
  }
  const bool is_any = formula.kind == Formula::Kind::kAny;
  if (is_any) {
    std::vector<int> variables;
    for (const Formula& part : formula.parts) {
      const std::string words = formula_words(part);
      variables.push_back(candidates_ + static_cast<int>(options_.size()));
      options_.push_back(words.empty() ? "possibility " + to_text(static_cast<long long>(options_.size()) + 1) + " is the case" : words);
    }
    rows.push_back(std::move(variables));
  }
  for (const Formula& part : formula.parts) name_options(part, is_guarded || is_any, rows);
}

std::string CertificateTerms::formula_words(const Formula& formula) const {
  if (formula.kind == Formula::Kind::kRow) return row_meaning(formula.row);
  std::vector<std::string> parts;
  for (const Formula& part : formula.parts) {
    parts.push_back(formula_words(part));
    if (parts.back().empty() || parts.size() > kMostParts) return {};
  }
  return listed(parts, formula.kind == Formula::Kind::kAll ? "and" : "or");
}

// A sum in plain words, when it is one of those that single sentences make.
std::string CertificateTerms::row_meaning(const Row& row) const {
  CellSet cells;
  DigitSet digits;
  int above = 0;
  bool is_plain = !row.terms.empty();
  for (const RowTerm& term : row.terms) {
    if (!is_candidate(term.variable)) return {};
    const Candidate candidate = candidate_of(term.variable);
    cells.add(candidate.cell);
    digits.add(candidate.digit);
    above += term.factor > 0 ? 1 : 0;
    is_plain = is_plain && term.factor == row.terms.front().factor && std::abs(term.factor) == 1;
  }
  const bool is_none = is_plain && (row.least == 0 && (row.is_exact || above == 0));
  const bool is_some = is_plain && above > 0 && row.least == 1;
  if (cells.size() == 1 && (is_none || is_some)) {
    const bool is_turned = 2 * digits.size() > shape_.side() && digits.size() < shape_.side();
    return shape_.name_of(cells.first()) + (is_some != is_turned ? " is " : " is not ") + digit_names(is_turned ? shape_.digits() - digits : digits, "or");
  }
  if (row.terms.size() == 2 && cells.size() == 2 && above == 0 && row.least == -1) return cell_names(shape_, cells) + " are not both " + digit_names(digits, "or");
  const std::string what = digits.size() == 1 ? digit_names(digits) + "s" : "of them";
  if (row.is_exact) return "the number of " + (digits.size() == 1 ? what : digit_names(digits) + "s") + " is right";
  return std::string(kThereAre) + "too " + (above > 0 ? "many " : "few ") + what;
}

bool CertificateTerms::is_fact(const std::vector<RowUse>& rows, FactKind kind) const {
  return rows.size() == 1 && rows[0].row.source == Source::kFact && fact_of(rows[0].row).kind == kind;
}
bool CertificateTerms::is_cell(const std::vector<RowUse>& rows) const { return rows.size() == 1 && rows[0].row.source == Source::kCell; }
bool CertificateTerms::is_house(const std::vector<RowUse>& rows) const { return is_fact(rows, FactKind::kHouse); }
bool CertificateTerms::is_marks(const std::vector<RowUse>& rows) const { return is_fact(rows, FactKind::kMarks); }

std::string CertificateTerms::literal_words(const Literal& literal) const {
  if (!is_candidate(literal.variable)) {
    const std::string& way = options_[static_cast<std::size_t>(literal.variable - candidates_)];
    if (literal.is_true) return way;
    return way.rfind(kThereAre, 0) == 0 ? std::string(kThereAre) + "not " + way.substr(kThereAre.size()) : "it is not so that " + way;
  }
  const Candidate candidate = candidate_of(literal.variable);
  return shape_.name_of(candidate.cell) + (literal.is_true ? " is " : " is not ") + Shape::name_of(candidate.digit);
}

std::string CertificateTerms::literals_words(const std::vector<Literal>& literals) const {
  std::vector<std::string> words;
  for (const Literal& literal : literals) words.push_back(literal_words(literal));
  return listed(words);
}

std::string CertificateTerms::row_words(const RowName& name) const {
  if (name.source == Source::kCell) return shape_.name_of(Cell(name.index));
  if (name.source == Source::kLemma) return "what was shown above";
  if (name.source == Source::kDenial) return "the supposition";
  const CertificateFact& fact = fact_of(name);
  if (fact.kind == FactKind::kHouse) return shape_.long_name_of(fact.house);
  if (fact.kind == FactKind::kMarks) return "the marks of " + shape_.name_of(fact.cell);
  if (fact.kind == FactKind::kClaim) return "claim " + fact.name;
  return "balance " + fact.name + " for " + Shape::name_of(Digit(name.row));
}

std::string CertificateTerms::rows_words(const std::vector<RowUse>& rows) const {
  if (rows.size() == 1) return row_words(rows.front().row);
  return "counting the " + std::string(1, Shape::name_of(Digit(rows.back().row.row))) + "s of " + sum_words(rows);
}

std::string CertificateTerms::sum_words(const std::vector<RowUse>& rows) const {
  std::vector<CertificateFact> left;
  std::vector<CertificateFact> right;
  bool is_weighed = false;
  for (const RowUse& use : rows) {
    if (use.row.source != Source::kFact) continue;
    (use.multiplier < 0 ? left : right).push_back(fact_of(use.row));
    is_weighed = is_weighed || use.multiplier < -1 || use.multiplier > 1;
  }
  if (left.empty()) left.swap(right);
  return facts_in_words(shape_, left) + (right.empty() ? "" : " against those of " + facts_in_words(shape_, right)) + (is_weighed ? ", some of them several times" : "");
}

std::string CertificateTerms::clash_words(const ProofItem& item, const Known& known) const {
  if (item.rows.size() != 1) return "the " + std::string(1, Shape::name_of(Digit(item.rows.back().row.row))) + "s do not come out, counting those of " + sum_words(item.rows);
  const RowName& name = item.rows.front().row;
  if (name.source == Source::kDenial) return "that goes against what was supposed";
  if (name.source == Source::kLemma) return "what was shown before forbids it";
  if (name.source == Source::kCell) return shape_.name_of(Cell(name.index)) + (trues_of_cell(Cell(name.index), known) > 1 ? " would hold two digits" : " has no digit left");
  if (is_house(item.rows)) {
    const House house = fact_of(name).house;
    int trues = 0;
    for (const Cell cell : shape_.cells(house)) trues += is_known_true(cell, Digit(name.row), known) ? 1 : 0;
    const std::string digit(1, Shape::name_of(Digit(name.row)));
    return shape_.long_name_of(house) + (trues > 1 ? " would hold " + digit + " twice" : " has no place left for " + digit);
  }
  if (is_marks(item.rows)) return row_words(name) + " say otherwise";
  return is_fact(item.rows, FactKind::kClaim) ? "that goes against " + row_words(name) : row_words(name) + " does not come out";
}

bool CertificateTerms::is_known_true(Cell cell, Digit digit, const Known& known) const {
  const auto found = known.find(cell.index * shape_.side() + digit.index);
  return found != known.end() && found->second;
}

int CertificateTerms::trues_of_cell(Cell cell, const Known& known) const {
  int trues = 0;
  for (const Digit digit : shape_.digits()) trues += is_known_true(cell, digit, known) ? 1 : 0;
  return trues;
}

std::vector<int> CertificateTerms::cases_of(const ProofItem& item, const Known& known) const {
  std::vector<int> cases;
  const RowName& name = item.rows.front().row;
  const auto add = [&](int variable) {
    if (!known.contains(variable)) cases.push_back(variable);
  };
  if (name.source == Source::kCell) {
    for (const Digit digit : shape_.digits()) add(name.index * shape_.side() + digit.index);
  } else if (is_house(item.rows)) {
    for (const Cell cell : shape_.cells(fact_of(name).house)) add(cell.index * shape_.side() + name.row);
  } else if (name.source == Source::kDenial || name.source == Source::kFact) {
    const auto& rows = name.source == Source::kDenial ? denial_rows_ : fact_rows_[static_cast<std::size_t>(name.index)];
    if (static_cast<std::size_t>(name.row) < rows.size()) {
      for (const int variable : rows[static_cast<std::size_t>(name.row)]) add(variable);
    }
    std::sort(cases.begin(), cases.end());
  }
  if (cases.size() != item.proofs.size()) cases.clear();
  return cases;
}

std::string CertificateTerms::short_facts() const {
  // Houses, balances, claims, digits in their cells, other marks.
  std::array<std::vector<CertificateFact>, 5> kinds;
  for (const CertificateFact& fact : certificate_.facts) {
    const bool is_digit = fact.kind == FactKind::kMarks && fact.digits.size() == 1;
    kinds[fact.kind == FactKind::kHouse ? 0 : fact.kind == FactKind::kBalance ? 1 : fact.kind == FactKind::kClaim ? 2 : is_digit ? 3 : 4].push_back(fact);
  }
  constexpr std::array<std::string_view, 5> kCounted = {"house", "balance", "earlier claim", "digit", "cell"};
  std::vector<std::string> parts;
  for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
    const int size = static_cast<int>(kinds[kind].size());
    if (size == 0) continue;
    if (kinds[kind].size() <= kMostNamed) parts.push_back(facts_in_words(shape_, kinds[kind]));
    else if (kind == 3) parts.push_back(counted(size, "digit") + " already in their cells");
    else parts.push_back((kind == 4 ? "the marks of " : "") + counted(size, kCounted[kind]));
  }
  return joined_parts(parts);
}

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
  std::map<Digit, CellSet> placed;
  std::vector<std::string> marks;
  std::vector<std::string> parts;
  std::vector<std::string> rest;
  for (const CertificateFact& fact : facts) {
    if (fact.kind == FactKind::kHouse) houses.push_back(fact.house);
    else if (fact.kind == FactKind::kMarks && fact.digits.size() == 1) placed[*fact.digits.begin()].add(fact.cell);
    else if (fact.kind == FactKind::kMarks) marks.push_back(shape.name_of(fact.cell) + " (" + digit_names(fact.digits, "or") + ")");
    else rest.push_back(fact_in_words(shape, fact));
  }
  if (!houses.empty()) parts.push_back(house_names(shape, houses));
  for (std::string& text : rest) parts.push_back(std::move(text));
  for (const auto& [digit, cells] : placed) parts.push_back("the " + digit_name(digit) + (cells.size() == 1 ? " in " : "s in ") + cell_names(shape, cells));
  if (!marks.empty()) parts.push_back("the marks of " + listed(marks));
  return joined_parts(parts);
}

}  // namespace cp
