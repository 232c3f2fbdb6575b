// SPDX-License-Identifier: Apache-2.0
#include "claim/certificate_text.h"

#include "base/text.h"

namespace cp {

namespace {

using Source = RowName::Source;
using Kind = ProofItem::Kind;

std::string signed_number(int number) { return (number < 0 ? "" : "+") + to_text(number); }

class CertificateWriter {
 public:
  CertificateWriter(const Shape& shape, const Certificate& certificate) : shape_(shape), certificate_(certificate) {}

  std::string write() {
    text_ = "certificate 1\nshape " + to_text(shape_.side()) + " " + to_text(shape_.box_rows()) + " " + to_text(shape_.box_columns()) + "\n";
    for (std::size_t i = 0; i < certificate_.facts.size(); ++i) fact(static_cast<int>(i) + 1, certificate_.facts[i]);
    text_ += "deny " + formula(certificate_.denial) + "\n";
    items(certificate_.proof, "");
    return std::move(text_);
  }

 private:
  [[nodiscard]] std::string variable(int number) const {
    const int candidates = shape_.cell_count() * shape_.side();
    if (number >= candidates) return "o" + to_text(number - candidates + 1);
    return shape_.name_of(Cell(number / shape_.side())) + "=" + Shape::name_of(Digit(number % shape_.side()));
  }

  [[nodiscard]] std::string formula(const Formula& formula_) const {
    if (formula_.kind == Formula::Kind::kRow) {
      std::string text = "[";
      for (const RowTerm& term : formula_.row.terms) text += signed_number(term.factor) + " " + variable(term.variable) + " ";
      return text + (formula_.row.is_exact ? "= " : ">= ") + to_text(formula_.row.least) + "]";
    }
    std::string text = formula_.kind == Formula::Kind::kAll ? "(all" : "(any";
    for (const Formula& part : formula_.parts) text += " " + formula(part);
    return text + ")";
  }

  void fact(int number, const CertificateFact& fact) {
    text_ += "fact " + to_text(number) + " ";
    switch (fact.kind) {
      case CertificateFact::Kind::kHouse: text_ += "house " + shape_.name_of(fact.house); break;
      case CertificateFact::Kind::kMarks:
        text_ += "marks " + shape_.name_of(fact.cell) + " ";
        for (const Digit digit : fact.digits) text_ += Shape::name_of(digit);
        if (fact.digits.is_empty()) text_ += "-";
        break;
      case CertificateFact::Kind::kBalance:
        text_ += "balance " + fact.name;
        for (const auto& [house, weight] : fact.weights) text_ += " " + signed_number(weight) + " " + shape_.name_of(house);
        break;
      case CertificateFact::Kind::kClaim: text_ += "claim " + fact.name + " " + formula(fact.formula); break;
    }
    text_ += "\n";
  }

  [[nodiscard]] std::string row_name(const RowName& name) const {
    if (name.source == Source::kCell) return shape_.name_of(Cell(name.index));
    if (name.source == Source::kLemma) return "lemma." + to_text(name.index + 1);
    if (name.source == Source::kDenial) return "deny." + to_text(name.row + 1);
    return to_text(name.index + 1) + "." + to_text(name.row + 1);
  }

  [[nodiscard]] std::string rows(const std::vector<RowUse>& uses) const {
    if (uses.size() == 1 && uses.front().multiplier == 1) return row_name(uses.front().row);
    std::vector<std::string> parts;
    for (const RowUse& use : uses) parts.push_back(signed_number(use.multiplier) + "*" + row_name(use.row));
    return joined(parts, " ");
  }

  [[nodiscard]] std::string literals(const std::vector<Literal>& list) const {
    std::string text;
    for (const Literal& literal : list) text += (literal.is_true ? " " : " !") + variable(literal.variable);
    return text;
  }

  void items(const std::vector<ProofItem>& list, const std::string& indent) {
    for (const ProofItem& item : list) {
      if (item.kind == Kind::kUse) text_ += indent + "use " + rows(item.rows) + " :" + literals(item.literals) + "\n";
      if (item.kind == Kind::kClash) text_ += indent + "clash " + rows(item.rows) + "\n";
      if (item.kind == Kind::kLemma) {
        text_ += indent + "suppose" + literals(item.literals) + "\n";
        items(item.proofs.front(), indent + "  ");
        text_ += indent + "end\n";
      }
      if (item.kind == Kind::kSplit) split(item, indent);
    }
  }

  void split(const ProofItem& item, const std::string& indent) {
    text_ += indent + "split " + rows(item.rows) + "\n";
    for (const std::vector<ProofItem>& proof : item.proofs) {
      text_ += indent + "case\n";
      items(proof, indent + "  ");
      text_ += indent + "end\n";
    }
  }

  const Shape& shape_;
  const Certificate& certificate_;
  std::string text_;
};

}  // namespace

std::string certificate_text(const Shape& shape, const Certificate& certificate) { return CertificateWriter(shape, certificate).write(); }

}  // namespace cp
