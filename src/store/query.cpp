// SPDX-License-Identifier: Apache-2.0
#include "store/query.h"

#include <algorithm>
#include <array>
#include <limits>

#include "base/small_letters.h"
#include "base/text.h"

namespace cp {

namespace {

constexpr std::int64_t kMostNumber = 1'000'000'000'000;
constexpr std::int64_t kNoEnd = std::numeric_limits<std::int64_t>::max();
constexpr std::string_view kTermHint =
    "a term is proper, surveyed, solved, stuck, used, unused, tail singles, uses NAME, needs NAME, no NAME, balance slack <= N over KINDS, tag NAME, source NAME, "
    "note WORD, or a number such as givens <= 26";

struct Token {
  enum class Kind { kWord, kText, kNumber, kSign, kEnd } kind = Kind::kEnd;
  std::string text;
  TextSpan where;
};

bool is_word_letter(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9') || letter == '-' || letter == '_' || letter == '+' ||
         letter == '.' || letter == '/' || static_cast<unsigned char>(letter) >= 0x80;
}

// Columns count characters, not bytes.
TextSpan place_in(std::string_view text, std::size_t offset, std::size_t length) {
  const auto characters = std::count_if(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(offset), [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0) != 0x80; });
  return {offset, length, 1, static_cast<int>(characters) + 1};
}

Error wrong(std::string message, std::string hint, const TextSpan& where, ErrorCode code = ErrorCode::kBadArgument) { return Error{code, std::move(message), std::move(hint), where}; }

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  Result<std::vector<Token>> tokens() {
    std::vector<Token> all;
    while (skip_blanks()) {
      auto token = one();
      if (!token) return token.error();
      all.push_back(std::move(token).value());
    }
    all.push_back({Token::Kind::kEnd, "", place_in(text_, text_.size(), 0)});
    return all;
  }

 private:
  bool skip_blanks() {
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t' || text_[at_] == '\n' || text_[at_] == '\r')) ++at_;
    return at_ < text_.size();
  }

  Token made(Token::Kind kind, std::size_t length) {
    Token token{kind, std::string(text_.substr(at_, length)), place_in(text_, at_, length)};
    at_ += length;
    return token;
  }

  Result<Token> one() {
    const char first = text_[at_];
    if (first == '"') return quoted();
    if (is_word_letter(first)) {
      std::size_t end = at_;
      while (end < text_.size() && is_word_letter(text_[end])) ++end;
      const std::string_view word = text_.substr(at_, end - at_);
      const bool is_number = std::all_of(word.begin(), word.end(), [](char letter) { return letter >= '0' && letter <= '9'; });
      return made(is_number ? Token::Kind::kNumber : Token::Kind::kWord, word.size());
    }
    for (const std::string_view sign : {"<=", ">=", "!=", "<", ">", "=", "(", ")", ","}) {
      if (text_.substr(at_).starts_with(sign)) return made(Token::Kind::kSign, sign.size());
    }
    return wrong("'" + std::string(1, first) + "' means nothing in a query", "words, numbers, brackets, comparisons (<= < = != > >=) and \"quoted words\" do", place_in(text_, at_, 1));
  }

  Result<Token> quoted() {
    const auto end = text_.find('"', at_ + 1);
    if (end == std::string_view::npos) return wrong("a quotation is not closed", "put a \" behind the last word of it", place_in(text_, at_, text_.size() - at_));
    const TextSpan where = place_in(text_, at_, end + 1 - at_);
    Token token{Token::Kind::kText, std::string(text_.substr(at_ + 1, end - at_ - 1)), where};
    at_ = end + 1;
    return token;
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

// Recursive descent; the first error ends it.
class Parser {
 public:
  Parser(std::vector<Token> tokens, const CheckTechnique& check) : tokens_(std::move(tokens)), check_technique_(check) {}

  Result<QueryTerm> whole() {
    if (now().kind == Token::Kind::kEnd) return QueryTerm{};
    auto term = any();
    if (!term) return term;
    if (now().kind != Token::Kind::kEnd) {
      return wrong("'" + now().text + "' does not go on from what stands before", now().text == ")" ? "no bracket is open here" : "join terms with and, or", now().where);
    }
    return term;
  }

 private:
  [[nodiscard]] const Token& now() const { return tokens_[at_]; }
  [[nodiscard]] bool is_word(std::string_view word) const { return now().kind == Token::Kind::kWord && in_small_letters(now().text) == word; }
  bool take_word(std::string_view word) {
    if (!is_word(word)) return false;
    ++at_;
    return true;
  }
  bool take_sign(std::string_view sign) {
    if (now().kind != Token::Kind::kSign || now().text != sign) return false;
    ++at_;
    return true;
  }
  [[nodiscard]] Error expected(const std::string& what, std::string hint) const {
    if (now().kind == Token::Kind::kEnd) return wrong("the query ends where " + what + " was wanted", std::move(hint), now().where);
    return wrong("'" + now().text + "' stands where " + what + " was wanted", std::move(hint), now().where);
  }

  Result<QueryTerm> any() { return chain(QueryTerm::Kind::kAny, "or", [this] { return all(); }); }
  Result<QueryTerm> all() { return chain(QueryTerm::Kind::kAll, "and", [this] { return single(); }); }

  template <typename Part>
  Result<QueryTerm> chain(QueryTerm::Kind kind, std::string_view joint, Part part) {
    auto first = part();
    if (!first || !is_word(joint)) return first;
    QueryTerm together{kind};
    together.parts.push_back(std::move(first).value());
    while (take_word(joint)) {
      auto next = part();
      if (!next) return next;
      together.parts.push_back(std::move(next).value());
    }
    return together;
  }

  Result<QueryTerm> single() {
    if (++depth_ > kDeepestQuery) return wrong("the query is nested too deeply", "at most " + to_text(kDeepestQuery) + " brackets may be open", now().where);
    auto term = unguarded();
    --depth_;
    return term;
  }

  Result<QueryTerm> unguarded() {
    if (take_word("not")) {
      auto inner = single();
      if (!inner) return inner;
      return QueryTerm{QueryTerm::Kind::kNot, {std::move(inner).value()}};
    }
    if (take_sign("(")) {
      auto inner = any();
      if (!inner) return inner;
      if (!take_sign(")")) return expected("a closing bracket", "every ( needs its )");
      return inner;
    }
    if (now().kind != Token::Kind::kWord) return expected("a term", std::string(kTermHint));
    return term();
  }

  Result<QueryTerm> term() {
    using Kind = QueryTerm::Kind;
    if (take_word("proper")) return QueryTerm{Kind::kProper};
    if (take_word("surveyed")) return QueryTerm{Kind::kSurveyed};
    if (take_word("solved")) return facet(kPathKind, "solved");
    if (take_word("stuck")) return facet(kPathKind, "stuck");
    if (take_word("tail")) return take_word("singles") ? Result<QueryTerm>(facet(kPathKind, "tail singles")) : expected("'singles'", "the term is: tail singles");
    if (take_word("used")) return take_word("in") ? named_facet(kLessonKind, "the name of a lesson or series") : Result<QueryTerm>(QueryTerm{Kind::kUsed});
    if (take_word("unused")) {
      auto used = take_word("in") ? named_facet(kLessonKind, "the name of a lesson or series") : Result<QueryTerm>(QueryTerm{Kind::kUsed});
      return used ? negated(std::move(used).value()) : std::move(used);
    }
    if (take_word("tag")) return named_facet(kTagKind, "the name of a tag");
    if (take_word("source")) return named(Kind::kSource, "the name of a source");
    if (take_word("note")) return named(Kind::kNote, "a word of the note");
    if (take_word("uses")) return technique(kUsesKind, true);
    if (take_word("needs")) return technique(kNeedsKind, true);
    if (take_word("no")) {
      auto uses = technique(kUsesKind, false);
      return uses ? negated(std::move(uses).value()) : std::move(uses);
    }
    if (is_word("balance")) return balance(true);
    return number();
  }

  static QueryTerm negated(QueryTerm term) { return QueryTerm{QueryTerm::Kind::kNot, {std::move(term)}}; }
  static QueryTerm facet(std::string_view kind, std::string name) {
    QueryTerm term{QueryTerm::Kind::kFacet};
    term.facets.push_back({std::string(kind), std::move(name)});
    return term;
  }

  Result<std::string> name(const std::string& what) {
    const bool is_name = now().kind == Token::Kind::kWord || now().kind == Token::Kind::kText || now().kind == Token::Kind::kNumber;
    if (!is_name) return expected(what, "put names of several words in \"quotation marks\"");
    return tokens_[at_++].text;
  }

  Result<QueryTerm> named_facet(std::string_view kind, const std::string& what) {
    auto word = name(what);
    if (!word) return word.error();
    return facet(kind, std::move(word).value());
  }

  Result<QueryTerm> named(QueryTerm::Kind kind, const std::string& what) {
    auto word = name(what);
    if (!word) return word.error();
    QueryTerm term{kind};
    term.text = std::move(word).value();
    return term;
  }

  Result<QueryTerm> technique(std::string_view kind, bool may_say_more) {
    const TextSpan where = now().where;
    auto word = name("the name of a technique or family");
    if (!word) return word.error();
    const std::string id = in_small_letters(*word);
    if (auto fault = check_technique_(id, kind)) {
      fault->where = where;
      return *fault;
    }
    QueryTerm term = facet(kind, id);
    if (id != "balance" || !may_say_more || !(is_word("slack") || is_word("over"))) return term;
    auto which = balance(false);
    if (!which) return which;
    return QueryTerm{QueryTerm::Kind::kAll, {std::move(term), std::move(which).value()}};
  }

  // balance [slack <= N] [over rows columns boxes]
  Result<QueryTerm> balance(bool has_word) {
    if (has_word) ++at_;
    std::int64_t low = 0;
    std::int64_t high = kMostSlack;
    if (take_word("slack")) {
      const TextSpan where = now().where;
      if (auto fault = range("slack", low, high)) return *fault;
      if (low > 0 && low <= high && low != high) return wrong("a balance is asked for with at most so much slack, or with exactly so much", "write slack <= N or slack = N", where);
      if (low > kMostSlack) return wrong("surveys know balances with slack 0 to " + to_text(kMostSlack), "write slack <= " + to_text(kMostSlack) + " or less", where);
      if (high < low) return wrong("no balance has so little slack", "write slack <= 0 or more", where);
      high = std::min<std::int64_t>(high, kMostSlack);
    }
    HouseKinds kinds{true, true, true};
    if (take_word("over")) {
      auto named_kinds = house_kinds();
      if (!named_kinds) return named_kinds.error();
      kinds = *named_kinds;
    }
    QueryTerm term{QueryTerm::Kind::kFacet};
    for (std::int64_t slack = low; slack <= high; ++slack) term.facets.push_back({std::string(kBalanceKind), balance_facet(kinds, static_cast<int>(slack))});
    return term;
  }

  Result<HouseKinds> house_kinds() {
    HouseKinds kinds;
    if (!take_kind(kinds)) return expected("rows, columns or boxes", "the kinds of houses are rows, columns and boxes");
    for (;;) {
      const std::size_t before = at_;
      if (!take_sign(",")) take_word("and");
      if (take_kind(kinds)) continue;
      at_ = before;  // the `and` joins terms
      return kinds;
    }
  }

  bool take_kind(HouseKinds& kinds) {
    const std::array<std::pair<std::string_view, bool*>, 3> all = {{{"rows", &kinds.rows}, {"columns", &kinds.columns}, {"boxes", &kinds.boxes}}};
    for (const auto& [word, has] : all) {
      if (!take_word(word)) continue;
      *has = true;
      return true;
    }
    return false;
  }

  Result<QueryTerm> number() {
    const std::string word = in_small_letters(now().text);
    const auto& numbers = query_numbers();
    const auto known = std::find_if(numbers.begin(), numbers.end(), [&](const QueryNumber& each) { return each.name == word; });
    if (known == numbers.end()) return wrong("'" + now().text + "' begins no term", std::string(kTermHint), now().where, ErrorCode::kBadName);
    ++at_;
    QueryTerm term{QueryTerm::Kind::kNumber};
    term.number = word;
    const bool is_unequal = now().text == "!=" && now().kind == Token::Kind::kSign;
    if (is_unequal) tokens_[at_].text = "=";
    if (auto fault = range(word, term.low, term.high)) return *fault;
    return is_unequal ? negated(std::move(term)) : std::move(term);
  }

  // <= N, < N, = N, > N, >= N, N to M. What lies below 0 or beyond every number is left open.
  std::optional<Error> range(const std::string& what, std::int64_t& low, std::int64_t& high) {
    low = 0;
    high = kNoEnd;
    const std::string hint = "write for example " + what + " <= 3, " + what + " = 2 or " + what + " 1 to 3";
    for (const std::string_view sign : {"<=", "<", ">=", ">", "="}) {
      if (!take_sign(sign)) continue;
      const auto bound = whole_number(hint);
      if (!bound) return bound.error();
      if (sign.front() == '<') high = *bound - (sign == "<" ? 1 : 0);
      if (sign.front() == '>') low = *bound + (sign == ">" ? 1 : 0);
      if (sign == "=") low = high = *bound;
      return std::nullopt;
    }
    const auto from = whole_number(hint);
    if (!from) return from.error();
    if (!take_word("to")) return expected("'to' and a second number", hint);
    const TextSpan where = now().where;
    const auto end = whole_number(hint);
    if (!end) return end.error();
    low = *from;
    high = *end;
    if (high < low) return wrong("the range " + to_text(low) + " to " + to_text(high) + " is empty", "the smaller number comes first", where);
    return std::nullopt;
  }

  Result<std::int64_t> whole_number(const std::string& hint) {
    if (now().kind != Token::Kind::kNumber) return expected("a comparison and a number", hint);
    if (now().text.size() > 12) return wrong("the number " + now().text + " is too large", "numbers go up to " + to_text(kMostNumber - 1), now().where);
    std::int64_t value = 0;
    for (const char digit : tokens_[at_++].text) value = value * 10 + (digit - '0');
    return value;
  }

  std::vector<Token> tokens_;
  const CheckTechnique& check_technique_;
  std::size_t at_ = 0;
  int depth_ = 0;
};

std::string quoted(const std::string& name) { return "\"" + name + "\""; }

std::string facet_text(const QueryTerm& term) {
  const FacetName& first = term.facets.front();
  if (first.kind == kPathKind) return first.name;
  if (first.kind == kLessonKind) return "used in " + quoted(first.name);
  if (first.kind == kTagKind) return "tag " + quoted(first.name);
  if (first.kind != kBalanceKind) return first.kind + " " + first.name;
  const std::string kinds = first.name.substr(0, first.name.find('/'));
  std::string text = "balance slack " + first.name.substr(kinds.size() + 1) + " to " + term.facets.back().name.substr(kinds.size() + 1) + " over";
  for (const char kind : kinds) text += kind == 'r' ? " rows" : kind == 'c' ? " columns" : " boxes";
  return text;
}

}  // namespace

std::string balance_facet(const HouseKinds& kinds, int slack) {
  return std::string(kinds.rows ? "r" : "") + (kinds.columns ? "c" : "") + (kinds.boxes ? "b" : "") + "/" + cp::to_text(static_cast<long long>(slack));
}

const std::vector<QueryNumber>& query_numbers() {
  static const std::vector<QueryNumber> kNumbers = {{"number", false}, {"givens", false},          {"steps", true},  {"hardest", true},
                                                    {"effort", true},  {"beyond-singles", true}, {"narrow", true}, {"open-tenths", true}};
  return kNumbers;
}

bool speaks_of_survey(const QueryTerm& term) {
  if (term.kind == QueryTerm::Kind::kFacet) return term.facets.front().kind != kTagKind && term.facets.front().kind != kLessonKind;
  if (term.kind != QueryTerm::Kind::kNumber) return false;
  const auto& numbers = query_numbers();
  return std::any_of(numbers.begin(), numbers.end(), [&](const QueryNumber& each) { return each.name == term.number && each.of_survey; });
}

Result<QueryTerm> parse_query(std::string_view text, const CheckTechnique& check_technique) {
  if (text.size() > kLongestQuery) {
    return wrong("the query is too long", "at most " + to_text(static_cast<long long>(kLongestQuery)) + " bytes", place_in(text, kLongestQuery, 1));
  }
  auto tokens = Scanner(text).tokens();
  if (!tokens) return tokens.error();
  return Parser(std::move(tokens).value(), check_technique).whole();
}

std::string to_text(const QueryTerm& term) {
  using Kind = QueryTerm::Kind;
  switch (term.kind) {
    case Kind::kAll:
    case Kind::kAny: {
      if (term.parts.empty()) return "every puzzle";
      std::vector<std::string> parts;
      for (const QueryTerm& part : term.parts) parts.push_back(to_text(part));
      return "(" + joined(parts, term.kind == Kind::kAll ? " and " : " or ") + ")";
    }
    case Kind::kNot: return "not " + to_text(term.parts.front());
    case Kind::kNumber: return term.number + (term.high == kNoEnd ? " >= " + to_text(term.low) : " " + to_text(term.low) + " to " + to_text(term.high));
    case Kind::kFacet: return facet_text(term);
    case Kind::kProper: return "proper";
    case Kind::kSurveyed: return "surveyed";
    case Kind::kUsed: return "used";
    case Kind::kSource: return "source " + quoted(term.text);
    default: return "note " + quoted(term.text);
  }
}

}  // namespace cp
