// SPDX-License-Identifier: Apache-2.0
#include "speak/certificate_words.h"

#include <algorithm>
#include <cctype>

#include "base/text.h"
#include "speak/naming.h"

namespace cp {

namespace {

using Kind = ProofItem::Kind;
using Known = CertificateTerms::Known;

constexpr std::size_t kMostLines = 40;    // of a proof told step by step; beyond, it is outlined
constexpr std::size_t kMostCases = 3;     // named one by one when spoken
constexpr std::size_t kMostSettled = 3;   // turning points named when spoken
constexpr int kMostCellsNamed = 6;        // of the cells that side arguments try out

// Cells keep their small letter at the start of a sentence, words do not.
std::string started(std::string text) { return text.rfind("there ", 0) == 0 || text.rfind("it is ", 0) == 0 ? capitalised(std::move(text)) : text; }

std::string indented(int depth) { return std::string(static_cast<std::size_t>(2 * depth), ' '); }

// How long is it, in steps that the checkers replay?
int steps_of(const std::vector<ProofItem>& items) {
  int steps = 0;
  for (const ProofItem& item : items) {
    steps += item.kind == Kind::kUse || item.kind == Kind::kClash ? 1 : 0;
    for (const auto& proof : item.proofs) steps += steps_of(proof);
  }
  return steps;
}

// The clash with which a part of a proof ends; null when it ends in cases.
const ProofItem* last_clash(const std::vector<ProofItem>& items) { return !items.empty() && items.back().kind == Kind::kClash ? &items.back() : nullptr; }

void learn_all(const std::vector<ProofItem>& items, Known& known) {
  for (const ProofItem& item : items) {
    if (item.kind != Kind::kUse) continue;
    for (const Literal& literal : item.literals) known[literal.variable] = literal.is_true;
  }
}

// Step by step.
class Teller {
 public:
  Teller(const Shape& shape, const CertificateTerms& terms) : shape_(shape), terms_(terms) {}

  void items(const std::vector<ProofItem>& list, Known known, int depth) {
    for (std::size_t i = 0; i < list.size(); ++i) {
      const ProofItem& item = list[i];
      if (is_sum(item)) {
        sums(list, i, known, depth);
        continue;
      }
      if (item.kind == Kind::kUse) use(item, known, depth);
      if (item.kind == Kind::kClash) line(depth, "But " + terms_.clash_words(item, known) + ".");
      if (item.kind == Kind::kLemma) lemma(item, known, depth);
      if (item.kind == Kind::kSplit) split(item, known, depth);
    }
  }

  void use(const ProofItem& item, Known& known, int depth) {
    std::vector<Candidate> gone;
    std::vector<std::string> other;
    for (const Literal& literal : item.literals) {
      known[literal.variable] = literal.is_true;
      if (terms_.is_given(literal)) continue;
      if (terms_.is_candidate(literal.variable) && !literal.is_true) gone.push_back(terms_.candidate_of(literal.variable));
      else other.push_back(terms_.literal_words(literal));
    }
    // That a cell is taken, or that its marks leave a digit out, is seen at a glance.
    if (gone.empty() && other.empty()) return;
    if (other.empty() && (terms_.is_cell(item.rows) || terms_.is_marks(item.rows))) return;
    std::sort(gone.begin(), gone.end());
    std::string text;
    if (!other.empty()) text = listed(other);
    if (!gone.empty()) text += (text.empty() ? "" : "; ") + eliminations_in_words(shape_, gone);
    std::string why = terms_.rows_words(item.rows);
    if (terms_.is_cell(item.rows)) why = "no other digit is left there";
    if (terms_.is_house(item.rows) && !other.empty()) why += " has no other place for " + std::string(1, Shape::name_of(Digit(item.rows[0].row.row)));
    line(depth, text + " (" + why + ").");
  }

  void lemma(const ProofItem& item, const Known& known, int depth) {
    Known supposed = known;
    for (const Literal& literal : item.literals) supposed[literal.variable] = literal.is_true;
    line(depth, "Suppose further that " + terms_.literals_words(item.literals) + ".");
    items(item.proofs.front(), std::move(supposed), depth + 1);
    line(depth, item.literals.size() == 1 ? "So that is not so." : "So not all of that is so.");
  }

  [[nodiscard]] std::vector<std::string>& lines() { return lines_; }

 private:
  void line(int depth, const std::string& text) { lines_.push_back(indented(depth) + started(text)); }

  // Rows added up exclude a possibility.
  [[nodiscard]] bool is_sum(const ProofItem& item) const {
    return item.kind == Kind::kUse && item.rows.size() > 1 && item.literals.size() == 1 && !terms_.is_candidate(item.literals[0].variable) && !item.literals[0].is_true;
  }

  // Those with the same rows in one line; `at` moves to the last of them.
  void sums(const std::vector<ProofItem>& list, std::size_t& at, Known& known, int depth) {
    const std::string what = terms_.sum_words(list[at].rows);
    DigitSet digits;
    std::string single;
    for (std::size_t i = at; i < list.size() && is_sum(list[i]) && terms_.sum_words(list[i].rows) == what; ++i) {
      at = i;
      known[list[i].literals[0].variable] = false;
      digits.add(terms_.digit_of(list[i].rows));
      single = terms_.literal_words(list[i].literals[0]);
    }
    if (digits.size() == 1) return line(depth, single + " (counting the " + digit_names(digits) + "s of " + what + ").");
    line(depth, "Counting " + (digits == shape_.digits() ? digit_range(shape_) : digit_names(digits)) + " in " + what + ": the number of each comes out, so none of them is too many or too few.");
  }

  // The same text with the digit of the case called d; numbers of houses stay.
  static std::string with_d(const std::string& text, char digit) {
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
      const auto is_word = [&](std::size_t at) { return at < text.size() && (std::isalnum(static_cast<unsigned char>(text[at])) != 0); };
      const bool is_alone = text[i] == digit && (i == 0 || !is_word(i - 1)) && !is_word(i + 1);
      const auto follows = [&](std::string_view word) { return i >= word.size() && text.compare(i - word.size(), word.size(), word) == 0; };
      result += is_alone && !follows("row ") && !follows("column ") && !follows("box ") ? 'd' : text[i];
    }
    return result;
  }

  // Cases of one cell that are told in the same words but for their digit are told once. True when they were.
  bool alike(const ProofItem& item, const std::vector<int>& cases, const Known& known, int depth) {
    if (cases.size() < 3 || !terms_.is_cell(item.rows)) return false;
    std::vector<std::string> first;
    DigitSet digits;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      Known supposed = known;
      supposed[cases[i]] = true;
      Teller inner(shape_, terms_);
      inner.items(item.proofs[i], std::move(supposed), depth + 1);
      const Digit digit = terms_.candidate_of(cases[i]).digit;
      digits.add(digit);
      for (std::string& text : inner.lines()) text = with_d(text, Shape::name_of(digit));
      if (i == 0) first = inner.lines();
      else if (inner.lines() != first) return false;
    }
    line(depth, "Whichever of " + (digits == shape_.digits() ? digit_range(shape_) : digit_names(digits)) + " is in " + shape_.name_of(terms_.candidate_of(cases[0]).cell) + ", call it d:");
    lines_.insert(lines_.end(), first.begin(), first.end());
    return true;
  }

  void split(const ProofItem& item, const Known& known, int depth) {
    const std::vector<int> cases = terms_.cases_of(item, known);
    if (alike(item, cases, known, depth)) return;
    std::vector<std::string> choices;
    for (const int variable : cases) choices.push_back(terms_.literal_words({variable, true}));
    const std::string why = " (" + terms_.rows_words(item.rows) + ")";
    line(depth, choices.empty() ? capitalised(spoken_number(static_cast<int>(item.proofs.size()))) + " cases are left" + why + "." : "Either " + listed(choices, "or") + why + ".");
    for (std::size_t i = 0; i < item.proofs.size(); ++i) {
      Known supposed = known;
      if (!cases.empty()) supposed[cases[i]] = true;
      line(depth, choices.empty() ? "Case " + to_text(static_cast<int>(i) + 1) + ":" : "If " + choices[i] + ":");
      items(item.proofs[i], std::move(supposed), depth + 1);
    }
  }

  const Shape& shape_;
  const CertificateTerms& terms_;
  std::vector<std::string> lines_;
};

// What a long proof goes through. Side arguments that suppose several things at once are counted; what a side argument settles for good
// has a line.
class Outline {
 public:
  Outline(const Shape& shape, const CertificateTerms& terms) : shape_(shape), terms_(terms) {}

  void items(const std::vector<ProofItem>& list, Known known, int depth) {
    for (const ProofItem& item : list) {
      if (item.kind == Kind::kUse) use(item, known, depth);
      if (item.kind == Kind::kClash) {
        tried(depth, "leave nothing else:");
        line(depth, "But " + terms_.clash_words(item, known) + ".");
      }
      if (item.kind == Kind::kLemma) lemma(item, known, depth);
      if (item.kind == Kind::kSplit) split(item, known, depth);
    }
  }

  [[nodiscard]] std::vector<std::string>& lines() { return lines_; }
  // What side arguments settled, in order.
  [[nodiscard]] const std::vector<std::string>& settled() const { return settled_; }
  [[nodiscard]] int side_arguments() const { return side_arguments_; }

 private:
  void line(int depth, const std::string& text) { lines_.push_back(indented(depth) + started(text)); }

  // Only what is placed has a line here.
  void use(const ProofItem& item, Known& known, int depth) {
    std::vector<std::string> placed;
    for (const Literal& literal : item.literals) {
      known[literal.variable] = literal.is_true;
      if (literal.is_true && !terms_.is_given(literal) && item.rows.front().row.source != RowName::Source::kLemma) placed.push_back(terms_.literal_words(literal));
    }
    if (placed.empty()) return;
    tried(depth, "come first:");
    if (placed_line_ == 0 || lines_.size() != placed_line_) {
      lines_.push_back({});
      placed_line_ = lines_.size();
      placed_.clear();
    }
    placed_.insert(placed_.end(), placed.begin(), placed.end());
    lines_.back() = indented(depth) + "Then " + listed(placed_) + ".";
  }

  void lemma(const ProofItem& item, const Known& known, int depth) {
    ++side_arguments_;
    if (item.literals.size() > 1) {
      ++pending_;
      for (const Literal& literal : item.literals) {
        if (terms_.is_candidate(literal.variable)) pending_cells_.add(terms_.candidate_of(literal.variable).cell);
      }
      return;
    }
    Known supposed = known;
    const Literal& literal = item.literals.front();
    supposed[literal.variable] = literal.is_true;
    learn_all(item.proofs.front(), supposed);
    const ProofItem* clash = last_clash(item.proofs.front());
    settled_.push_back(terms_.literal_words({literal.variable, !literal.is_true}));
    tried(depth, "lead to this:");
    line(depth, settled_.back() + (clash == nullptr ? "" : ": otherwise " + terms_.clash_words(*clash, supposed) + ", after " + counted(steps_of(item.proofs.front()), "step")) + ".");
  }

  // The side arguments since the last line.
  void tried(int depth, const std::string& end) {
    if (pending_ == 0) return;
    std::string text = capitalised(counted(pending_, "side argument"));
    if (!pending_cells_.is_empty()) text += pending_cells_.size() <= kMostCellsNamed ? " about " + cell_names(shape_, pending_cells_) : " about " + counted(pending_cells_.size(), "cell");
    line(depth, text + " " + (pending_ == 1 && end.rfind("lead", 0) == 0 ? "leads" + end.substr(4) : pending_ == 1 && end.rfind("come", 0) == 0 ? "comes" + end.substr(4) : pending_ == 1 ? "leaves" + end.substr(5) : end));
    pending_ = 0;
    pending_cells_ = CellSet();
  }

  void split(const ProofItem& item, const Known& known, int depth) {
    const std::vector<int> cases = terms_.cases_of(item, known);
    line(depth, capitalised(spoken_number(static_cast<int>(item.proofs.size()))) + " cases (" + terms_.rows_words(item.rows) + "):");
    for (std::size_t i = 0; i < item.proofs.size(); ++i) {
      Known supposed = known;
      const std::string name = cases.empty() ? "Case " + to_text(static_cast<int>(i) + 1) : "If " + terms_.literal_words({cases[i], true});
      if (!cases.empty()) supposed[cases[i]] = true;
      const ProofItem* clash = last_clash(item.proofs[i]);
      if (clash == nullptr) {
        line(depth, name + ":");
        items(item.proofs[i], std::move(supposed), depth + 1);
        continue;
      }
      learn_all(item.proofs[i], supposed);
      line(depth, name + ": " + terms_.clash_words(*clash, supposed) + ", after " + counted(steps_of(item.proofs[i]), "step") + ".");
    }
  }

  const Shape& shape_;
  const CertificateTerms& terms_;
  std::vector<std::string> lines_;
  std::vector<std::string> settled_;
  std::vector<std::string> placed_;  // in the line of this number, counted from 1
  std::size_t placed_line_ = 0;
  CellSet pending_cells_;
  int pending_ = 0;
  int side_arguments_ = 0;
};

int cases_in(const std::vector<ProofItem>& items) {
  int cases = 0;
  for (const ProofItem& item : items) {
    for (const auto& proof : item.proofs) cases += item.kind == Kind::kSplit ? std::max(cases_in(proof), 1) : 0;
  }
  return cases;
}

class Speaker {
 public:
  Speaker(const Shape& shape, const Certificate& certificate, const CertificateTerms& terms, bool is_denial)
      : shape_(shape), certificate_(certificate), terms_(terms), otherwise_(is_denial ? "otherwise" : "with the claim") {}

  [[nodiscard]] std::string say(const Outline& outline) const {
    const bool is_one = certificate_.facts.size() == 1 && (certificate_.facts.front().kind != CertificateFact::Kind::kMarks || certificate_.facts.front().digits.size() == 1);
    const std::string start = certificate_.facts.empty() ? "Nothing is needed but the cells themselves" : capitalised(terms_.short_facts()) + (is_one ? " is enough" : " are enough");
    Known known;
    learn_all(certificate_.proof, known);
    const ProofItem& last = certificate_.proof.back();
    if (outline.side_arguments() > 0) return start + ". " + long_way(outline, last, known);
    const bool is_added = std::any_of(certificate_.proof.begin(), certificate_.proof.end(), [](const ProofItem& item) { return item.rows.size() > 1; });
    if (is_plain_clash(last) && is_added) return start + ": added up digit by digit, " + (is_one ? "it leaves" : "they leave") + " no other way" + (otherwise_ == "otherwise" ? "." : " than that the claim is false.");
    if (is_plain_clash(last)) return start + ": " + (otherwise_ == "otherwise" ? "the claim cannot be false." : "the claim cannot be true.");
    if (last.kind == Kind::kClash) return start + ": " + otherwise_ + " " + terms_.clash_words(last, known) + ".";
    return start + ". " + by_cases(last, known);
  }

 private:
  // A clash with the supposition says nothing more than that the facts exclude it.
  static bool is_plain_clash(const ProofItem& item) {
    const auto is_own = [](const RowUse& use) { return use.row.source == RowName::Source::kDenial; };
    return item.kind == Kind::kClash && item.rows.size() == 1 && is_own(item.rows.front());
  }

  [[nodiscard]] std::string by_cases(const ProofItem& split, const Known& known) const {
    const std::vector<int> cases = terms_.cases_of(split, known);
    const int all = cases_in(certificate_.proof);
    if (cases.empty()) return capitalised(otherwise_) + " " + spoken_number(all) + " cases are left, and each of them ends in a contradiction.";
    if (cases.size() > kMostCases && (terms_.is_cell(split.rows) || terms_.is_house(split.rows))) {
      const Candidate one = terms_.candidate_of(cases.front());
      return capitalised(otherwise_) + (terms_.is_cell(split.rows) ? ", every digit in " + shape_.name_of(one.cell) : ", every place for " + digit_name(one.digit) + " in " + terms_.rows_words(split.rows)) +
             " leads to a contradiction.";
    }
    std::vector<std::string> choices;
    for (const int variable : cases) choices.push_back(terms_.literal_words({variable, true}));
    std::string text = capitalised(otherwise_) + " " + listed(choices, "or") + ".";
    std::vector<std::string> ends;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      const ProofItem* clash = last_clash(split.proofs[i]);
      if (clash == nullptr || cases.size() > kMostCases) {
        return text + " " + (all == static_cast<int>(cases.size()) ? "Each of them" : "They come to " + spoken_number(all) + " cases, and each") + " ends in a contradiction.";
      }
      Known supposed = known;
      supposed[cases[i]] = true;
      learn_all(split.proofs[i], supposed);
      ends.push_back("if " + choices[i] + ", " + terms_.clash_words(*clash, supposed));
    }
    return text + " But " + joined(ends, ", and ") + ".";
  }

  [[nodiscard]] std::string long_way(const Outline& outline, const ProofItem& last, const Known& known) const {
    const int count = outline.side_arguments();
    const int steps = steps_of(certificate_.proof);
    std::string text = "It takes " + counted(count, "side argument") + " with " + counted(steps, "step") + " in all" + (steps > 30 ? ": too long to be said aloud." : ".");
    const auto& settled = outline.settled();
    if (!settled.empty()) {
      const std::size_t shown = std::min(settled.size(), kMostSettled);
      text += std::string(count == 1 ? " It settles that " : " They settle that ") + listed({settled.end() - static_cast<std::ptrdiff_t>(shown), settled.end()}) + (shown < settled.size() ? ", among others." : ".");
    }
    if (last.kind == Kind::kClash && !is_plain_clash(last) && last.rows.front().row.source != RowName::Source::kLemma) text += " " + capitalised(otherwise_) + " " + terms_.clash_words(last, known) + ".";
    return text;
  }

  const Shape& shape_;
  const Certificate& certificate_;
  const CertificateTerms& terms_;
  std::string otherwise_;
};

}  // namespace

ClaimWords certificate_words(const Shape& shape, const Certificate& certificate, bool is_denial) {
  const CertificateTerms terms(shape, certificate);
  Outline outline(shape, terms);
  outline.items(certificate.proof, {}, 0);
  Teller teller(shape, terms);
  teller.items(certificate.proof, {}, 0);
  ClaimWords words;
  words.spoken = Speaker(shape, certificate, terms, is_denial).say(outline);
  const bool is_long = teller.lines().size() > kMostLines;
  if (!certificate.facts.empty()) words.written.push_back("Known: " + facts_in_words(shape, certificate.facts) + ".");
  if (is_long) words.written.push_back("The whole proof has " + counted(steps_of(certificate.proof), "step") + "; the certificate has them all, this is what it goes through.");
  words.written.push_back(std::string("Suppose the claim is ") + (is_denial ? "false." : "true."));
  const auto& told = is_long ? outline.lines() : teller.lines();
  words.written.insert(words.written.end(), told.begin(), told.end());
  words.written.push_back(is_denial ? "So the claim holds." : "So the claim cannot be true.");
  return words;
}

}  // namespace cp
