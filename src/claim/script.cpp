// SPDX-License-Identifier: Apache-2.0
#include "claim/script.h"

#include <algorithm>
#include <array>

#include "base/small_letters.h"
#include "base/text.h"
#include "claim/claim_words.h"

namespace cp {

namespace {

constexpr std::size_t kMostClaims = 500;
constexpr std::array<std::string_view, 5> kHeads = {"let", "balance", "footing", "puzzle", "basics"};

struct Statement {
  std::string_view text;  // without blanks at both ends
  std::string_view line_text;
  std::size_t offset = 0;  // of the text in the whole script
  std::size_t line_offset = 0;
  int line = 0;
};

// Lines, cut at semicolons and at the sign of a comment. A '#' before a digit is the number of a claim.
std::vector<Statement> statements_of(std::string_view script) {
  std::vector<Statement> statements;
  std::size_t start = 0;
  int line = 0;
  while (start <= script.size()) {
    const std::size_t end = std::min(script.find('\n', start), script.size());
    std::string_view whole = script.substr(start, end - start);
    ++line;
    std::size_t length = whole.size();
    for (std::size_t at = whole.find('#'); at != std::string_view::npos; at = whole.find('#', at + 1)) {
      if (at + 1 < whole.size() && whole[at + 1] >= '0' && whole[at + 1] <= '9') continue;
      length = at;
      break;
    }
    std::size_t from = 0;
    while (from <= length) {
      const std::size_t to = std::min(whole.find(';', from), length);
      const std::string_view text = trimmed(whole.substr(from, to - from));
      if (!text.empty()) statements.push_back({text, whole, start + static_cast<std::size_t>(text.data() - whole.data()), start, line});
      from = to + 1;
    }
    start = end + 1;
  }
  return statements;
}

// The first word when it is one that starts a line of its own kind.
std::string_view head_of(std::string_view text) {
  const std::string_view word = text.substr(0, text.find_first_of(" \t"));
  return std::find(kHeads.begin(), kHeads.end(), word) == kHeads.end() ? std::string_view() : word;
}

TextSpan span_of(const Statement& statement, std::size_t offset, std::size_t length) {
  const auto in_line = static_cast<std::size_t>(statement.text.data() - statement.line_text.data()) + offset;
  TextSpan span = span_in(statement.line_text, in_line, length);
  span.line = statement.line;
  span.offset += statement.line_offset;
  return span;
}

class ScriptReader {
 public:
  ScriptReader(const Position& position, std::string_view footing) : position_(position), footing_text_(footing.empty() ? "position, rules" : trimmed(footing)) {}

  Result<Script> read(std::string_view text) {
    auto first = parse_footing(position_.shape(), script_.vocabulary, footing_text_, 0);
    // The names of a footing given from outside may come later, in the script.
    if (first) footing_ = *first;
    else is_footing_late_ = true;
    const std::vector<Statement> statements = statements_of(text);
    for (const Statement& statement : statements) {
      if (auto fault = take(statement)) return *fault;
    }
    if (is_footing_late_) return first.error();
    if (script_.claims.empty()) return Error{ErrorCode::kBadArgument, "there is no claim here", "write one a line, such as r3c4 = 5", {}};
    return std::move(script_);
  }

 private:
  using Fault = std::optional<Error>;

  Fault take(const Statement& statement) {
    const std::string_view head = head_of(statement.text);
    if (head == "puzzle" || head == "basics") return std::nullopt;
    const std::string_view rest = head.empty() ? statement.text : trimmed(statement.text.substr(head.size()));
    const auto shift = static_cast<std::size_t>(rest.data() - statement.text.data());
    if (head == "footing") return take_footing(statement, rest, shift);
    if (head == "let" || head == "balance") return take_name(statement, head == "let", rest, shift);
    return take_claim(statement);
  }

  static Error placed(const Statement& statement, Error error, std::size_t shift) {
    error.where = span_of(statement, shift + error.where.offset, error.where.length);
    return error;
  }

  Fault take_footing(const Statement& statement, std::string_view rest, std::size_t shift) {
    auto footing = parse_footing(position_.shape(), script_.vocabulary, rest, static_cast<int>(script_.claims.size()));
    if (!footing) return placed(statement, footing.error(), shift);
    footing_ = std::move(*footing);
    footing_text_ = rest;
    is_footing_late_ = false;
    return std::nullopt;
  }

  Fault take_name(const Statement& statement, bool is_group, std::string_view rest, std::size_t shift) {
    const std::size_t equals = rest.find('=');
    const std::string_view written = trimmed(rest.substr(0, std::min(equals, rest.size())));
    const std::string name = in_small_letters(written);
    const Error wrong{ErrorCode::kBadArgument, equals == std::string_view::npos ? "'=' is missing after the name" : "'" + name + "' cannot be a name",
                      (equals == std::string_view::npos ? std::string() : std::string("names are letters and digits, and no cell, house, digit or word of the language; ")) +
                          (is_group ? "write: let ring = r3c3 r3c4" : "write: balance ring = c1,c2 : r3,r7"),
                      span_in(rest, 0, written.size())};
    const bool is_word = !name.empty() && std::all_of(name.begin(), name.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
    if (equals == std::string_view::npos || !is_word || (name[0] >= '0' && name[0] <= '9') || !is_free_name(position_.shape(), name)) return placed(statement, wrong, shift);
    if (script_.vocabulary.has(name)) {
      return placed(statement, Error{ErrorCode::kBadArgument, "the name '" + name + "' is taken", "choose another", span_in(rest, 0, written.size())}, shift);
    }
    const std::string_view content = rest.substr(equals + 1);
    if (is_group) {
      auto group = parse_group(position_, script_.vocabulary, content);
      if (!group) return placed(statement, group.error(), shift + equals + 1);
      script_.vocabulary.groups.emplace(name, std::move(*group));
      return std::nullopt;
    }
    auto weights = parse_balance(position_.shape(), content);
    if (!weights) return placed(statement, weights.error(), shift + equals + 1);
    script_.vocabulary.balances.push_back({name, std::move(*weights)});
    return std::nullopt;
  }

  Fault take_claim(const Statement& statement) {
    if (script_.claims.size() >= kMostClaims) return placed(statement, Error{ErrorCode::kBadArgument, "too many claims", "a script has at most 500", {}}, 0);
    if (is_footing_late_) {
      auto footing = parse_footing(position_.shape(), script_.vocabulary, footing_text_, 0);
      if (!footing) return footing.error();
      footing_ = std::move(*footing);
      is_footing_late_ = false;
    }
    auto claim = parse_claim(position_, script_.vocabulary, statement.text);
    if (!claim) return placed(statement, claim.error(), 0);
    script_.claims.push_back({statement.line, std::string(statement.text), std::move(*claim), footing_, std::string(footing_text_)});
    return std::nullopt;
  }

  const Position& position_;
  Script script_;
  Footing footing_;
  std::string_view footing_text_;
  bool is_footing_late_ = false;
};

// The footing of a claim with its names resolved, and what is left over.
void resolve(const Script& script, std::size_t number, Ground& ground, Spare& spare) {
  const Footing& footing = script.claims[number].footing;
  ground.has_marks = footing.has_marks;
  ground.houses = footing.houses;
  for (std::size_t i = 0; i < script.vocabulary.balances.size(); ++i) {
    const bool is_in = std::find(footing.balances.begin(), footing.balances.end(), static_cast<int>(i)) != footing.balances.end();
    (is_in ? ground.balances : spare.balances).push_back(script.vocabulary.balances[i]);
  }
  for (std::size_t i = 0; i < number; ++i) {
    const int its_number = static_cast<int>(i) + 1;
    const bool is_in = footing.has_earlier || std::find(footing.claims.begin(), footing.claims.end(), its_number) != footing.claims.end();
    (is_in ? ground.claims : spare.claims).push_back({its_number, script.claims[i].claim});
  }
}

std::vector<int> unproved_in(const ClaimAnswer& answer, const std::vector<ClaimAnswer>& before) {
  std::vector<int> numbers;
  if (!answer.certificate) return numbers;
  for (const CertificateFact& fact : answer.certificate->facts) {
    if (fact.kind != CertificateFact::Kind::kClaim) continue;
    int number = 0;
    for (const char c : fact.name) number = number * 10 + (c - '0');
    if (before[static_cast<std::size_t>(number) - 1].verdict != Verdict::kProved) numbers.push_back(number);
  }
  return numbers;
}

}  // namespace

ScriptHead script_head(std::string_view text) {
  ScriptHead head;
  for (const Statement& statement : statements_of(text)) {
    const std::string_view word = head_of(statement.text);
    if (word == "basics") head.after_basics = true;
    if (word != "puzzle") continue;
    const std::string_view rest = trimmed(statement.text.substr(word.size()));
    head.puzzle = rest;
    head.where = span_of(statement, static_cast<std::size_t>(rest.data() - statement.text.data()), rest.size());
  }
  return head;
}

Result<Script> parse_script(const Position& position, std::string_view text, std::string_view footing) {
  if (text.size() > 1'000'000) return Error{ErrorCode::kBadArgument, "the script is too long", "give at most a million characters", {}};
  return ScriptReader(position, footing).read(text);
}

Result<ScriptAnswer> judge_script(const Board& board, const Script& script, const SearchLimits& limits) {
  ScriptAnswer result;
  for (std::size_t i = 0; i < script.claims.size(); ++i) {
    Ground ground;
    Spare spare;
    resolve(script, i, ground, spare);
    // Only what was proved may be added to a footing.
    std::erase_if(spare.claims, [&result](const EarlierClaim& claim) { return result.answers[static_cast<std::size_t>(claim.number) - 1].verdict != Verdict::kProved; });
    auto answer = judge_claim(board, script.claims[i].claim, ground, spare, limits);
    if (!answer) {
      Error error = answer.error();
      error.message += " (line " + to_text(script.claims[i].line) + ")";
      return error;
    }
    if (answer->verdict != Verdict::kProved && result.first_not_implied == 0) result.first_not_implied = static_cast<int>(i) + 1;
    result.rests_on_unproved.push_back(unproved_in(*answer, result.answers));
    result.answers.push_back(std::move(*answer));
  }
  return result;
}

}  // namespace cp
