// SPDX-License-Identifier: Apache-2.0
#include "verify/certificate_check.h"

#include <map>

#include "base/checked_int.h"
#include "verify/certificate_rows.h"

namespace cp {

namespace {

using Items = std::vector<ProofItem>;
using Kind = ProofItem::Kind;

constexpr int kDeepest = 64;  // cases inside cases

// A sum of rows, and the bounds of what it can come to.
struct Sum {
  std::map<int, CheckedInt> factors;
  CheckedInt least;
  bool is_exact = true;
};

// What is known at a point of the proof: 1 true, -1 false, 0 open.
using Known = std::vector<signed char>;

class CertificateReplay {
 public:
  CertificateReplay(const Shape& shape, const Certificate& certificate) : shape_(shape) {
    variables_ = shape.cell_count() * shape.side();
    for (const CertificateFact& fact : certificate.facts) facts_.push_back(replay::rows_of_fact(shape, fact, variables_, is_ok_));
    denial_ = replay::rows_of_formula(certificate.denial, variables_, is_ok_);
    for (const auto& rows : facts_) check_variables(rows);
    check_variables(denial_);
  }

  CheckResult run(const Items& proof) {
    if (!is_ok_) return CheckResult::no("a fact or the denial is not in order");
    return take_all(proof, Known(static_cast<std::size_t>(variables_), 0), 0);
  }

 private:
  void check_variables(const std::vector<Row>& rows) {
    for (const Row& row : rows) {
      for (const RowTerm& term : row.terms) is_ok_ = is_ok_ && term.variable < variables_;
    }
  }

  CheckResult take_all(const Items& proof, Known known, int depth) {
    if (depth > kDeepest) return CheckResult::no("cases lie too deep");
    for (const ProofItem& item : proof) {
      CheckResult taken = CheckResult::no("an item of an unknown kind");
      if (item.kind == Kind::kUse) taken = take_use(item, known);
      if (item.kind == Kind::kLemma) taken = take_lemma(item, known, depth);
      if (item.kind == Kind::kClash) return take_clash(item, known);
      if (item.kind == Kind::kSplit) return take_split(item, known, depth);
      if (!taken.holds) return taken;
    }
    return CheckResult::no("the proof does not end in a clash");
  }

  CheckResult take_use(const ProofItem& item, Known& known) {
    Sum sum;
    if (CheckResult read = add_up(item.rows, sum); !read.holds) return read;
    for (const Literal& literal : item.literals) {
      if (!is_variable(literal.variable)) return CheckResult::no("a literal is not in the grid");
      signed char& value = known[static_cast<std::size_t>(literal.variable)];
      const signed char wanted = literal.is_true ? 1 : -1;
      if (value == 0) {
        value = static_cast<signed char>(-wanted);
        if (!is_broken(sum, known)) return CheckResult::no("a literal is not forced by its row");
        value = wanted;
      }
      if (value == -wanted) return CheckResult::no("a literal is known to be otherwise");
    }
    return CheckResult::yes();
  }

  CheckResult take_clash(const ProofItem& item, const Known& known) {
    Sum sum;
    if (CheckResult read = add_up(item.rows, sum); !read.holds) return read;
    return is_broken(sum, known) ? CheckResult::yes() : CheckResult::no("a clash is none");
  }

  CheckResult take_lemma(const ProofItem& item, const Known& known, int depth) {
    if (depth > 0) return CheckResult::no("a lemma stands inside a case");
    if (item.proofs.size() != 1) return CheckResult::no("a lemma has one proof");
    Known supposed = known;
    Row row{{}, 1, false};
    for (const Literal& literal : item.literals) {
      if (!is_variable(literal.variable)) return CheckResult::no("a literal is not in the grid");
      if (known[static_cast<std::size_t>(literal.variable)] != 0) return CheckResult::no("a lemma supposes what is known");
      supposed[static_cast<std::size_t>(literal.variable)] = literal.is_true ? 1 : -1;
      row.terms.push_back({literal.variable, literal.is_true ? -1 : 1});
      row.least -= literal.is_true ? 1 : 0;
    }
    if (CheckResult proved = take_all(item.proofs.front(), std::move(supposed), depth + 1); !proved.holds) return proved;
    lemmas_.push_back(std::move(row));
    return CheckResult::yes();
  }

  CheckResult take_split(const ProofItem& item, const Known& known, int depth) {
    Sum sum;
    if (CheckResult read = add_up(item.rows, sum); !read.holds) return read;
    Known none = known;
    std::vector<int> open;
    for (const auto& [variable, factor] : sum.factors) {
      if (known[static_cast<std::size_t>(variable)] != 0 || factor.value() <= 0) continue;
      open.push_back(variable);
      none[static_cast<std::size_t>(variable)] = -1;
    }
    if (!is_broken(sum, none)) return CheckResult::no("a split leaves a way out");
    if (open.size() != item.proofs.size()) return CheckResult::no("the cases are not the open variables of the split");
    for (std::size_t i = 0; i < open.size(); ++i) {
      Known supposed = known;
      supposed[static_cast<std::size_t>(open[i])] = 1;
      if (CheckResult proved = take_all(item.proofs[i], std::move(supposed), depth + 1); !proved.holds) return proved;
    }
    return CheckResult::yes();
  }

  CheckResult add_up(const std::vector<RowUse>& uses, Sum& sum) {
    if (uses.empty()) return CheckResult::no("an item rests on nothing");
    for (const RowUse& use : uses) {
      Row scratch;
      const Row* row = find(use.row, scratch);
      if (row == nullptr) return CheckResult::no("a row does not exist");
      if (!row->is_exact && use.multiplier <= 0) return CheckResult::no("only exact rows may be taken away");
      sum.is_exact = sum.is_exact && row->is_exact;
      sum.least += CheckedInt(row->least) * use.multiplier;
      for (const RowTerm& term : row->terms) sum.factors[term.variable] += CheckedInt(term.factor) * use.multiplier;
    }
    for (const auto& [variable, factor] : sum.factors) sum.least += CheckedInt(0) * factor;  // carries an overflow over
    return sum.least.is_ok() ? CheckResult::yes() : CheckResult::no("overflow");
  }

  const Row* find(const RowName& name, Row& scratch) const {
    const auto pick = [](const std::vector<Row>& rows, int number) {
      return number >= 0 && number < static_cast<int>(rows.size()) ? &rows[static_cast<std::size_t>(number)] : nullptr;
    };
    if (name.source == RowName::Source::kDenial) return pick(denial_, name.row);
    if (name.source == RowName::Source::kLemma) return pick(lemmas_, name.index);
    if (name.source == RowName::Source::kFact) {
      return name.index >= 0 && name.index < static_cast<int>(facts_.size()) ? pick(facts_[static_cast<std::size_t>(name.index)], name.row) : nullptr;
    }
    if (name.index < 0 || name.index >= shape_.cell_count()) return nullptr;
    scratch = {{}, 1, true};
    for (int digit = 0; digit < shape_.side(); ++digit) scratch.terms.push_back({name.index * shape_.side() + digit, 1});
    return &scratch;
  }

  // Too little even if all that is open helps, or (exact) too much even if all of it holds back?
  static bool is_broken(const Sum& sum, const Known& known) {
    CheckedInt highest;
    CheckedInt lowest;
    for (const auto& [variable, factor] : sum.factors) {
      const signed char value = known[static_cast<std::size_t>(variable)];
      if (value > 0 || (value == 0 && factor.value() > 0)) highest += factor;
      if (value > 0 || (value == 0 && factor.value() < 0)) lowest += factor;
    }
    if (!highest.is_ok() || !lowest.is_ok()) return false;
    return highest.value() < sum.least.value() || (sum.is_exact && lowest.value() > sum.least.value());
  }

  [[nodiscard]] bool is_variable(int variable) const { return variable >= 0 && variable < variables_; }

  const Shape& shape_;
  int variables_ = 0;
  bool is_ok_ = true;
  std::vector<std::vector<Row>> facts_;
  std::vector<Row> denial_;
  std::vector<Row> lemmas_;
};

}  // namespace

CheckResult check_certificate(const Shape& shape, const Certificate& certificate) {
  return CertificateReplay(shape, certificate).run(certificate.proof);
}

CheckResult check_marks(const Position& position, const Certificate& certificate) {
  for (const CertificateFact& fact : certificate.facts) {
    if (fact.kind != CertificateFact::Kind::kMarks) continue;
    if (fact.cell.index >= position.shape().cell_count()) return CheckResult::no("a cell is not in the grid");
    if (!position.candidates(fact.cell).is_subset_of(fact.digits)) return CheckResult::no("marks are not those of the position");
  }
  return CheckResult::yes();
}

}  // namespace cp
