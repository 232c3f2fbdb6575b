// SPDX-License-Identifier: Apache-2.0
#include "support/sample_balances.h"

#include <algorithm>
#include <numeric>

#include "base/text.h"
#include "grid/notation.h"

namespace cp::support {

namespace {

constexpr std::string_view kExactPosition = R"(
58  58   6    | 17 147  2   | 47 =3 9
1   =9   =3   | 5  =8   47  | 47 2  =6
=2  4    7    | 3  =9   6   | 58 58 1

=9  257  25   | 17 1357 8   | =6 4  23
=6  3    458  | =2 45   =9  | =1 7  58
578 1    2458 | 6  3457 457 | 58 =9 23

4   57   =9   | 8  =6   3   | 2  1  57
578 6    258  | =9 257  1   | =3 58 4
3   2578 =1   | 4  257  57  | 9  =6 578
)";

constexpr std::string_view kCasesPosition = R"(
1245 =8 145 | 479   124 3    | 579 6   24579
2456 =3 45  | 46789 248 4678 | 579 1   24579
1246 9  7   | 5     124 46   | =3  8   24

145  67 145 | 348   9   1458 | 2   357 168
159  26 8   | 23    7   15   | 4   35  169
1459 27 3   | 248   6   1458 | 19  57  189

37   1  =6  | 47    345 2    | 8   9   357
378  4  =9  | 678   358 678  | 157 =2  1357
378  5  =2  | 1     38  =9   | =6  =4  37
)";

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (std::string& word : split(text, ' ')) {
    if (!word.empty()) words.push_back(std::move(word));
  }
  return words;
}

std::vector<House> houses_from(std::string_view text) {
  std::vector<House> houses;
  for (const std::string& word : words_of(text)) houses.push_back(standard_shape().parse_house(word).value());
  return houses;
}

Digit digit(char name) { return *digit_from(name, standard_shape()); }

DigitSet digits(std::string_view names) {
  DigitSet set;
  for (const char name : names) set.add(digit(name));
  return set;
}

int surplus_of(const std::vector<Weight>& weights) {
  return std::accumulate(weights.begin(), weights.end(), 0, [](int sum, const Weight& weight) { return sum + weight.weight; });
}

Lemma count_break() { return {Lemma::Kind::kCount, Pan::kRight, digits("357"), {}, {}}; }

Lemma seven_in_sight() { return {Lemma::Kind::kSight, Pan::kLeft, digits("7"), houses_from("r8"), candidates_from("r2c9=7")}; }

// The shares known beforehand are one 3, one 5 and one 7; `other` is shared besides.
ShareCase case_with(char other, Lemma lemma, bool is_impossible) {
  ShareCase share_case;
  for (const char known : {'3', '5', '7', other}) ++share_case.shares[digit(known).index];
  share_case.lemmas.push_back(std::move(lemma));
  share_case.is_impossible = is_impossible;
  return share_case;
}

}  // namespace

std::vector<Weight> weights_from(std::string_view text) {
  std::vector<Weight> weights;
  for (const std::string& word : words_of(text)) {
    const bool is_right = word[0] == '-';
    weights.push_back({standard_shape().parse_house(is_right ? word.substr(1) : word).value(), is_right ? -1 : 1});
  }
  std::sort(weights.begin(), weights.end());
  return weights;
}

std::vector<Candidate> candidates_from(std::string_view text) {
  std::vector<Candidate> candidates;
  for (const std::string& word : words_of(text)) {
    candidates.push_back({standard_shape().parse_cell(word.substr(0, 4)).value(), digit(word[5])});
  }
  return candidates;
}

SampleBalance exact_sample() {
  BalanceReason reason;
  reason.weights = weights_from("c1 c3 c8 -r8 -b4");
  reason.surplus = surplus_of(reason.weights);
  reason.tally = {0, -1, 0, 0, 1, 0, -1, 1, 0};
  reason.level = 1;
  const std::vector<Candidate> removed = candidates_from("r4c2=5 r8c5=5");
  reason.cases.push_back({{}, {{Lemma::Kind::kCount, Pan::kRight, digits("27"), {}, removed}}, false});
  return {parse_position(kExactPosition).value(), {"balance", {}, removed, reason}};
}

SampleBalance cases_sample() {
  BalanceReason reason;
  reason.weights = weights_from("c1 c2 c3 c6 c7 c9 -r3 -b4 -b6 -b7");
  reason.surplus = surplus_of(reason.weights);
  reason.slack = 4;
  reason.tally = {2, 1, 0, 2, 3, 1, 2, 1, 1};
  reason.level = 4;
  reason.forced = {{digit('3'), Pan::kLeft, houses_from("c9")},
                   {digit('5'), Pan::kLeft, houses_from("b1 b3 b5 b9")},
                   {digit('7'), Pan::kLeft, houses_from("c6 c7 c9")}};
  for (const char other : {'7', '5', '4', '3', '2', '1'}) {
    const bool is_impossible = other == '7' || other == '5' || other == '3';
    reason.cases.push_back(case_with(other, is_impossible ? count_break() : seven_in_sight(), is_impossible));
  }
  return {parse_position(kCasesPosition).value(), {"balance", {}, candidates_from("r2c9=7"), reason}};
}

BalanceReason ring_reason() {
  BalanceReason reason;
  reason.weights = weights_from("c1 c2 c8 c9 -r3 -r7 -b4 -b6");
  return reason;
}

}  // namespace cp::support
