// SPDX-License-Identifier: Apache-2.0
#include "claim/claim_parser.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "base/text.h"
#include "claim/word_reader.h"

namespace cp {

namespace {

constexpr int kMostWeight = 99;
constexpr std::size_t kLongestClaim = 4000;

class ClaimParser {
 public:
  explicit ClaimParser(WordReader& reader) : reader_(reader), shape_(reader.shape()) {}

  // if a then b; a => b; otherwise a choice.
  Claim sentence() {
    if (!reader_.enter()) return {};
    Claim claim;
    if (reader_.take("if")) {
      Claim condition = choice();
      if (!reader_.take("then") && !reader_.take("=>")) reader_.complain(reader_.word(), "'then' is missing after the condition", "write: if r3c4 = 5 then r7c2 = 1");
      claim = implied(std::move(condition), sentence());
    } else {
      claim = choice();
      if (reader_.take("=>")) claim = implied(std::move(claim), sentence());
    }
    reader_.leave();
    return claim;
  }

 private:
  static Claim joined_claims(Claim::Kind kind, std::vector<Claim> parts) {
    if (parts.size() == 1) return std::move(parts.front());
    Claim claim;
    claim.kind = kind;
    claim.parts = std::move(parts);
    return claim;
  }

  static Claim negated(Claim claim) {
    Claim result;
    result.kind = Claim::Kind::kNot;
    result.parts.push_back(std::move(claim));
    return result;
  }

  static Claim implied(Claim condition, Claim consequence) {
    std::vector<Claim> parts;
    parts.push_back(negated(std::move(condition)));
    parts.push_back(std::move(consequence));
    return joined_claims(Claim::Kind::kAny, std::move(parts));
  }

  Claim choice() {
    std::vector<Claim> parts;
    do parts.push_back(conjunction());
    while (!reader_.has_fault() && (reader_.take("or") || reader_.take("|")));
    return joined_claims(Claim::Kind::kAny, std::move(parts));
  }

  Claim conjunction() {
    std::vector<Claim> parts;
    do parts.push_back(unit());
    while (!reader_.has_fault() && reader_.take("and"));
    return joined_claims(Claim::Kind::kAll, std::move(parts));
  }

  Claim unit() {
    if (!reader_.enter()) return {};
    Claim claim;
    if (reader_.take("not")) {
      claim = negated(unit());
    } else if (reader_.take("(")) {
      claim = sentence();
      reader_.expect(")", "close the bracket");
    } else if (reader_.is_group_ahead()) {
      claim = about_cells();
    } else {
      claim = counting();
    }
    reader_.leave();
    return claim;
  }

  // "exactly two 5s in r3 r4", "no 5 in b1", "a 5 in b1".
  Claim counting() {
    Claim claim;
    claim.kind = Claim::Kind::kCount;
    const ClaimWord start = reader_.word();
    enum class Bound { kExact, kLeast, kMost } bound = Bound::kExact;
    std::optional<int> number;
    if (reader_.take("a") || reader_.take("an")) {
      bound = Bound::kLeast;
      number = 1;
    } else if (reader_.is("no")) {
      number = reader_.read_number();
    } else {
      if (reader_.take("at")) {
        bound = reader_.take("least") ? Bound::kLeast : Bound::kMost;
        if (bound == Bound::kMost) reader_.expect("most", "write: at least two 5s in r3, or: at most two 5s in r3");
      } else if (!reader_.take("exactly")) {
        reader_.complain(start, start.kind == ClaimWord::Kind::kEnd ? "a claim is missing here" : "no claim starts with '" + start.text + "'",
                         "start with cells (r3c4 = 5), with if, not, or with exactly, at least, at most, no, a", ErrorCode::kBadArgument);
        return claim;
      }
      number = reader_.read_number();
    }
    if (!number) reader_.complain(reader_.word(), "a number is wanted here", "write: exactly two 5s in r3c4 r3c5");
    claim.digits = digit_set(reader_.read_digits());
    reader_.take("s");
    reader_.expect("in", "write: exactly two 5s in r3c4 r3c5");
    claim.left = reader_.read_group();
    // A cell named twice still holds one digit.
    for (CellCount& item : claim.left) item.times = 1;
    claim.least = bound == Bound::kMost ? 0 : number.value_or(0);
    claim.most = bound == Bound::kLeast ? size_of(claim.left) : number.value_or(0);
    return claim;
  }

  [[nodiscard]] DigitSet digit_set(const DigitCounts& counts) const {
    DigitSet digits;
    for (const Digit digit : shape_.digits()) {
      if (counts[digit.index] > 0) digits.add(digit);
    }
    return digits;
  }

  Claim about_cells() {
    const ClaimWord start = reader_.word();
    CellGroup cells = reader_.read_group();
    if (cells.empty() && !reader_.has_fault()) reader_.complain(start, "no cell is left here", "name at least one cell");
    const ClaimWord verb = reader_.next();
    if (verb.is("hold") || verb.is("holds")) return multiset(std::move(cells), verb);
    const bool is_not = verb.is("!=") || verb.is("!in") || (verb.is("is") && reader_.take("not")) || (verb.is("not") && reader_.is("in"));
    if (verb.is("in") || verb.is("!in") || verb.is("not") || (verb.is("is") && reader_.is("in"))) {
      reader_.take("in");
      return values(std::move(cells), is_not);
    }
    if (!verb.is("=") && !verb.is("!=") && !verb.is("is")) {
      reader_.complain(verb, verb.kind == ClaimWord::Kind::kEnd ? "the claim stops after its cells" : "'" + verb.text + "' is no word that follows cells",
                       "cells are followed by =, !=, in, not in, or hold");
      return {};
    }
    if (reader_.is_group_ahead()) return comparison(std::move(cells), is_not, verb);
    return values(std::move(cells), is_not);
  }

  Claim values(CellGroup cells, bool is_not) {
    Claim claim;
    claim.kind = Claim::Kind::kValues;
    claim.left = std::move(cells);
    claim.digits = digit_set(reader_.read_digits());
    if (is_not) claim.digits = shape_.digits() - claim.digits;
    return claim;
  }

  // "A = B + 1..9 - 5": the same digits with a surplus.
  Claim comparison(CellGroup cells, bool is_not, const ClaimWord& verb) {
    Claim claim;
    claim.kind = Claim::Kind::kSame;
    claim.left = std::move(cells);
    claim.right = reader_.read_group();
    while (!reader_.has_fault() && (reader_.is("+") || reader_.is("-"))) {
      const int sign = reader_.next().is("+") ? 1 : -1;
      int times = 1;
      if (reader_.word(1).is("*")) {
        times = std::min(reader_.read_number().value_or(1), kMostWeight);
        reader_.take("*");
      }
      const DigitCounts digits = reader_.read_digits();
      for (const Digit digit : shape_.digits()) claim.surplus[digit.index] += sign * times * digits[digit.index];
    }
    const int surplus = std::accumulate(claim.surplus.begin(), claim.surplus.end(), 0);
    const int left = size_of(claim.left);
    const int right = size_of(claim.right);
    if (left != right + surplus) {
      reader_.complain(verb, "the sides are not equally large: " + counted(left, "cell") + " against " + counted(right, "cell") + " and " + counted(surplus, "digit"),
                       "add the surplus, as in A = B + 1..9");
    }
    return is_not ? negated(std::move(claim)) : claim;
  }

  // "hold 1,2,2" and, with ? for any digit, "hold 1,2,?".
  Claim multiset(CellGroup cells, const ClaimWord& verb) {
    Claim claim;
    claim.kind = Claim::Kind::kSame;
    claim.left = std::move(cells);
    int any = 0;
    do {
      if (reader_.take("?")) {
        ++any;
        continue;
      }
      const DigitCounts digits = reader_.read_digits();
      for (const Digit digit : shape_.digits()) claim.surplus[digit.index] += digits[digit.index];
    } while (!reader_.has_fault() && reader_.take(","));
    const int digits = std::accumulate(claim.surplus.begin(), claim.surplus.end(), 0) + any;
    const int size = size_of(claim.left);
    if (digits != size) {
      reader_.complain(verb, counted(size, "cell") + " cannot hold " + counted(digits, "digit"), "give as many digits as cells; ? stands for any digit");
    }
    return any == 0 ? claim : at_least(claim);
  }

  // Each digit at least as often as listed.
  [[nodiscard]] Claim at_least(const Claim& same) const {
    std::vector<Claim> parts;
    for (const Digit digit : shape_.digits()) {
      if (same.surplus[digit.index] == 0) continue;
      Claim count;
      count.kind = Claim::Kind::kCount;
      count.left = same.left;
      count.digits = DigitSet::of(digit);
      count.least = same.surplus[digit.index];
      count.most = size_of(same.left);
      parts.push_back(std::move(count));
    }
    if (parts.empty()) {
      Claim all;
      all.kind = Claim::Kind::kValues;
      all.left = same.left;
      all.digits = shape_.digits();
      return all;
    }
    return joined_claims(Claim::Kind::kAll, std::move(parts));
  }

  WordReader& reader_;
  const Shape& shape_;
};

Error too_long() { return Error{ErrorCode::kBadArgument, "the claim is too long", "give at most 4000 characters; split it into several claims", {}}; }

template <typename T, typename Read>
Result<T> parsed(const Position& position, const Vocabulary& vocabulary, std::string_view text, Read read) {
  if (text.size() > kLongestClaim) return too_long();
  auto words = claim_words(text);
  if (!words) return words.error();
  WordReader reader(position, vocabulary, std::move(*words));
  T value = read(reader);
  reader.finish();
  if (reader.has_fault()) return reader.fault();
  return value;
}

void read_pan(WordReader& reader, int sign, std::map<House, int>& weights) {
  do {
    int times = 1;
    if (reader.word(1).is("*")) {
      times = reader.read_number().value_or(0);
      if (times < 1 || times > kMostWeight) reader.complain(reader.word(), "a house counts between 1 and 99 times", "write 2*r3");
      reader.take("*");
    }
    const ClaimWord name = reader.next();
    const auto house = reader.shape().parse_house(name.text);
    if (!house) {
      reader.complain(name, "a house is wanted here", "houses are r1, c1, b1; the pans are separated by a colon", ErrorCode::kBadName);
      return;
    }
    weights[*house] += sign * times;
  } while (!reader.has_fault() && (reader.take(",") || reader.word().kind == ClaimWord::Kind::kName));
}

class FootingParser {
 public:
  FootingParser(WordReader& reader, int claims) : reader_(reader), claims_(claims) {}

  Footing read() {
    Footing footing;
    do {
      item(footing);
      reader_.take(",") || reader_.take("and") || reader_.take("+");
    } while (!reader_.has_fault() && !reader_.is_at_end());
    std::sort(footing.houses.begin(), footing.houses.end());
    footing.houses.erase(std::unique(footing.houses.begin(), footing.houses.end()), footing.houses.end());
    return footing;
  }

 private:
  void item(Footing& footing) {
    if (reader_.take("#")) return claim(footing);
    const ClaimWord word = reader_.next();
    const Shape& shape = reader_.shape();
    if (word.is("position")) return;
    if (word.is("digits")) {
      footing.has_marks = false;
    } else if (word.is("rules")) {
      for (int house = 0; house < shape.house_count(); ++house) footing.houses.emplace_back(house);
    } else if (word.is("earlier")) {
      footing.has_earlier = true;
    } else if (const auto house = shape.parse_house(word.text); house && word.kind == ClaimWord::Kind::kName) {
      footing.houses.push_back(*house);
    } else if (const NamedBalance* balance = reader_.vocabulary().balance(word.text)) {
      footing.balances.push_back(static_cast<int>(balance - reader_.vocabulary().balances.data()));
    } else {
      reader_.complain(word, word.kind == ClaimWord::Kind::kEnd ? "a footing is missing here" : "'" + word.text + "' is no footing",
                       "a footing lists rules, position, digits, houses (r1, c2), named balances, earlier, or claims by number (#2)", ErrorCode::kBadName);
    }
  }

  void claim(Footing& footing) {
    const ClaimWord word = reader_.word();
    const auto number = reader_.read_number();
    if (!number || *number < 1 || *number > claims_) {
      reader_.complain(word, "there is no earlier claim of that number", claims_ == 0 ? "no claim comes before" : "earlier claims are #1 to #" + to_text(claims_));
      return;
    }
    footing.claims.push_back(*number);
  }

  WordReader& reader_;
  int claims_;
};

}  // namespace

Footing Footing::all_rules(const Shape& shape) {
  Footing footing;
  for (int house = 0; house < shape.house_count(); ++house) footing.houses.emplace_back(house);
  return footing;
}

Result<Claim> parse_claim(const Position& position, const Vocabulary& vocabulary, std::string_view text) {
  return parsed<Claim>(position, vocabulary, text, [](WordReader& reader) { return ClaimParser(reader).sentence(); });
}

Result<CellGroup> parse_group(const Position& position, const Vocabulary& vocabulary, std::string_view text) {
  return parsed<CellGroup>(position, vocabulary, text, [](WordReader& reader) { return reader.read_group(); });
}

Result<std::vector<Weight>> parse_balance(const Shape& shape, std::string_view text) {
  return parsed<std::vector<Weight>>(Position(shape), Vocabulary{}, text, [](WordReader& reader) {
    std::map<House, int> weights;
    read_pan(reader, 1, weights);
    reader.expect(":", "write the left houses, a colon, the right houses: c1,c2 : r3,r7");
    if (!reader.has_fault()) read_pan(reader, -1, weights);
    std::vector<Weight> result;
    for (const auto& [house, weight] : weights) {
      if (weight != 0) result.push_back({house, weight});
    }
    if (result.empty() && !reader.has_fault()) reader.complain(reader.word(), "both pans hold the same houses", "change a house on one side");
    return result;
  });
}

Result<Footing> parse_footing(const Shape& shape, const Vocabulary& vocabulary, std::string_view text, int claims) {
  return parsed<Footing>(Position(shape), vocabulary, text, [claims](WordReader& reader) { return FootingParser(reader, claims).read(); });
}

}  // namespace cp
