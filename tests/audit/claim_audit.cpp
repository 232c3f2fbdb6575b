// SPDX-License-Identifier: Apache-2.0
// Is a verdict ever wrong? Random claims on random positions with random footings: proved, refuted and open are compared
// with CaDiCaL, which reads the same sentence in a form of its own; counter-assignments and additions are tried out; every certificate is
// replayed by the checker, and with --certificates FILE written down for the checker in Python.
//
//   claim_audit [--full] [--seed N] [--markdown FILE] [--certificates FILE]
#include <fstream>
#include <functional>

#include "audit/audit_report.h"
#include "base/text.h"
#include "claim/certificate_text.h"
#include "support/claim_states.h"
#include "verify/certificate_check.h"

namespace {

using namespace cp;

struct Count {
  long long claims = 0;
  long long proved = 0;
  long long refuted = 0;
  long long open = 0;
  long long certificates = 0;
  long long counters = 0;
  long long additions = 0;
};

class ClaimAudit {
 public:
  explicit ClaimAudit(std::ofstream& certificates) : certificates_(certificates) {}

  // False after a fault.
  bool look_at(const Shape& shape, std::uint64_t seed, int claims, Count& count) {
    const support::ClaimState state(shape, seed);
    const auto board = judge_board(state.position);
    if (!board) return fault("the board is refused: " + board.error().message);
    oracle::ClaimOracle oracle(state.position, state.rules);
    support::RandomSayings sayings(shape, support::digits_of(state.solution), seed + 77);
    for (int i = 0; i < claims; ++i) {
      const oracle::Saying saying = sayings.make();
      where_ = std::string(shape.name()) + " seed " + to_text(static_cast<long long>(seed)) + ": " + oracle::text_of(saying, shape.side());
      if (!compare(state, *board, oracle, saying, count)) return false;
    }
    return true;
  }

  [[nodiscard]] const std::string& words() const { return words_; }

 private:
  bool fault(const std::string& what) {
    words_ = where_ + "\n  " + what;
    return false;
  }

  bool compare(const support::ClaimState& state, const Board& board, oracle::ClaimOracle& oracle, const oracle::Saying& saying, Count& count) {
    const Shape& shape = state.position.shape();
    const auto claim = parse_claim(state.position, {}, oracle::text_of(saying, shape.side()));
    if (!claim) return fault("not understood: " + claim.error().message);
    const auto answer = judge_claim(board, *claim, state.ground);
    if (!answer) return fault("no answer: " + answer.error().message);
    Verdict wanted = Verdict::kOpen;
    if (board.truth && !oracle::is_so(saying, support::digits_of(*board.truth))) wanted = Verdict::kRefuted;
    else if (!oracle.can_be(saying, false)) wanted = Verdict::kProved;
    else if (!board.truth && !oracle.can_be(saying, true)) wanted = Verdict::kRefuted;
    if (answer->verdict != wanted) return fault("verdict " + to_text(static_cast<int>(answer->verdict)) + ", wanted " + to_text(static_cast<int>(wanted)));
    ++count.claims;
    ++(wanted == Verdict::kProved ? count.proved : wanted == Verdict::kRefuted ? count.refuted : count.open);
    if (wanted == Verdict::kProved && !answer->certificate) return fault("proved without a certificate");
    return replays(state.position, *answer, count) && counter_holds(state, saying, *answer, count) && additions_hold(state, saying, *answer, count);
  }

  bool replays(const Position& position, const ClaimAnswer& answer, Count& count) {
    if (!answer.certificate) return true;
    const CheckResult checked = check_certificate(position.shape(), *answer.certificate);
    if (!checked.holds) return fault("the certificate does not hold: " + checked.why + "\n" + certificate_text(position.shape(), *answer.certificate));
    const CheckResult marks = check_marks(position, *answer.certificate);
    if (!marks.holds) return fault(marks.why);
    ++count.certificates;
    if (certificates_.is_open()) certificates_ << certificate_text(position.shape(), *answer.certificate);
    return true;
  }

  // The digits shown break the claim; with them, the footing can still be met.
  bool counter_holds(const support::ClaimState& state, const oracle::Saying& saying, const ClaimAnswer& answer, Count& count) {
    if (answer.verdict == Verdict::kOpen && !answer.counter_grid) return fault("open without a counter-example");
    if (!answer.counter_grid) return true;
    if (oracle::is_so(saying, support::digits_of(*answer.counter_grid))) return fault("the counter-example does not break the claim");
    oracle::Rules rules = state.rules;
    for (const Candidate& candidate : answer.counter) {
      oracle::Saying is;
      is.cells = {candidate.cell.index};
      is.digits = {candidate.digit.number()};
      rules.granted.push_back(is);
    }
    if (!oracle::ClaimOracle(state.position, rules).can_be_anything()) return fault("the counter-example does not go with the footing");
    ++count.counters;
    return true;
  }

  // With the addition the claim follows.
  bool additions_hold(const support::ClaimState& state, const oracle::Saying& saying, const ClaimAnswer& answer, Count& count) {
    for (const Addition& addition : answer.additions) {
      oracle::Rules rules = state.rules;
      for (const CertificateFact& fact : addition.facts) {
        if (fact.kind == CertificateFact::Kind::kHouse) rules.houses.push_back(fact.house.index);
        oracle::Saying in;
        in.what = oracle::Saying::What::kIn;
        in.cells = {fact.cell.index};
        for (const Digit digit : fact.digits) in.digits.push_back(digit.number());
        if (fact.kind == CertificateFact::Kind::kMarks) rules.granted.push_back(in);
      }
      if (addition.elimination) {
        oracle::Saying is_not;
        is_not.what = oracle::Saying::What::kIsNot;
        is_not.cells = {addition.elimination->cell.index};
        is_not.digits = {addition.elimination->digit.number()};
        rules.granted.push_back(is_not);
      }
      if (oracle::ClaimOracle(state.position, rules).can_be(saying, false)) return fault("an addition does not close the claim");
      ++count.additions;
    }
    return true;
  }

  std::ofstream& certificates_;
  std::string where_;
  std::string words_;
};

struct Plan {
  const char* shape;
  int states;
  int claims;
};

// Takes --certificates FILE out of the words.
std::string certificates_file(int& count, char** words) {
  for (int i = 1; i + 1 < count; ++i) {
    if (std::string(words[i]) != "--certificates") continue;
    std::string name = words[i + 1];
    for (int j = i; j + 2 < count; ++j) words[j] = words[j + 2];
    count -= 2;
    return name;
  }
  return {};
}

std::vector<std::string> row_of(const std::string& name, const Count& count) {
  return {name,
          to_text(count.claims),
          to_text(count.proved),
          to_text(count.refuted),
          to_text(count.open),
          to_text(count.certificates),
          to_text(count.counters),
          to_text(count.additions)};
}

}  // namespace

int main(int count, char** words) {
  const std::string file = certificates_file(count, words);
  const audit::AuditOptions options = audit::read_options(count, words);
  std::ofstream certificates;
  if (!file.empty()) certificates.open(file);
  const std::vector<Plan> plans = options.full ? std::vector<Plan>{{"4x4", 500, 12}, {"6x6", 500, 12}, {"9x9", 800, 12}} : std::vector<Plan>{{"4x4", 60, 8}, {"6x6", 50, 8}, {"9x9", 40, 8}};
  audit::Table table{{"grid", "claims", "proved", "refuted", "open", "certificates replayed", "counter-examples tried", "additions tried"}, {}};
  ClaimAudit audit(certificates);
  bool holds = true;
  for (const Plan& plan : plans) {
    Count counted;
    for (int i = 0; i < plan.states && holds; ++i) {
      holds = audit.look_at(*find_shape(plan.shape), options.seed * 100'003 + static_cast<std::uint64_t>(i), plan.claims, counted);
    }
    table.rows.push_back(row_of(plan.shape, counted));
    if (counted.proved < 20 || counted.refuted < 20 || counted.open < 20) {
      std::printf("NOT AUDITED: a verdict came up fewer than 20 times on %s\n", plan.shape);
      holds = false;
    }
  }
  audit::print_table(table);
  if (!audit.words().empty()) std::printf("\nFAULT %s\n", audit.words().c_str());
  const std::string closing = "Verdicts compared with CaDiCaL; each counter-example and each addition tried with it, each certificate replayed.";
  return holds && audit::write_markdown(options.markdown_file, "Claims", table, closing) ? 0 : 1;
}
