// SPDX-License-Identifier: Apache-2.0
#include "speak/case_words.h"

#include <algorithm>
#include <cstdlib>

#include "base/text.h"
#include "speak/naming.h"

namespace cp {

int sum_of(const DigitCounts& counts) {
  int sum = 0;
  for (const int count : counts) sum += count;
  return sum;
}

namespace {

// Copies that the houses are sure to put into the pan; a cell of weight 2 counts as two.
int forced_copies(const ForcedCopies& forced, const Scales& scales, const Position& position) {
  int copies = 0;
  for (const House house : forced.houses) {
    int least = 0;
    for (const Cell cell : position.places(house, forced.digit)) {
      const int weight = std::abs(scales.weight[cell.index]);
      least = least == 0 ? weight : std::min(least, weight);
    }
    copies += least;
  }
  return copies;
}

// A copy shared stands on both sides, so among both pans it counts twice.
int forced_share(const ForcedCopies& forced, const Scales& scales, const Position& position) {
  const int extra = forced_copies(forced, scales, position) - scales.need(forced.pan, forced.digit, 0);
  return forced.pan == Pan::kBoth ? (extra + 1) / 2 : extra;
}

}  // namespace

bool wastes_a_house(const Lemma& lemma, const Shape& shape) {
  for (const Candidate& gone : lemma.removed) {
    int serves = 0;
    for (const House house : lemma.houses) serves += shape.cells(house).has(gone.cell) ? 1 : 0;
    if (serves > 1) return true;
  }
  return false;
}

DigitCounts shares_known_beforehand(const BalanceReason& reason, const Scales& scales, const Position& position) {
  DigitCounts shares{};
  for (const ForcedCopies& forced : reason.forced) {
    int& share = shares[forced.digit.index];
    share = std::max(share, forced_share(forced, scales, position));
  }
  return shares;
}

namespace {

// "the left side", "the right side", "both sides together".
std::string side_name(Pan pan) {
  if (pan == Pan::kLeft) return "the left side";
  if (pan == Pan::kRight) return "the right side";
  return "the two sides together";
}

// "the left side needs ".
std::string side_needs(Pan pan) { return side_name(pan) + (pan == Pan::kBoth ? " need " : " needs "); }

std::string open_cells_name(Pan pan) {
  if (pan == Pan::kLeft) return "open left cells";
  if (pan == Pan::kRight) return "open right cells";
  return "open cells of both sides";
}

std::string on_side(Pan pan) {
  if (pan == Pan::kLeft) return "on the left";
  if (pan == Pan::kRight) return "on the right";
  return "on the two sides together";
}

// Room in cells, a cell of weight 2 counting twice.
int weighed_size(const CellSet& cells, const Scales& scales) {
  int size = 0;
  for (const Cell cell : cells) size += std::abs(scales.weight[cell.index]);
  return size;
}

CellSet cells_that_can_take(DigitSet digits, const CellSet& among, const Position& position) {
  CellSet cells;
  for (const Cell cell : among) {
    if (!(position.candidates(cell) & digits).is_empty()) cells.add(cell);
  }
  return cells;
}

DigitCounts needs(const Lemma& lemma, const ShareCase& share_case, const Scales& scales) {
  DigitCounts counts{};
  for (const Digit digit : lemma.digits) counts[digit.index] = scales.need(lemma.pan, digit, share_case.shares[digit.index]);
  return counts;
}

// A house of weight 2 makes its cells count twice; say so wherever a number of cells would puzzle a listener.
std::string count_again_remark(const CellSet& cells, int room) {
  return cells.size() == room ? "" : " (counting the doubled cells twice)";
}

// "the two 2s and the 7".
std::string needed_copies(const DigitCounts& counts, const Shape& shape) {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) {
    const int copies = counts[digit.index];
    if (copies > 0) items.push_back("the " + (copies == 1 ? digit_name(digit) : counted(copies, digit_name(digit))));
  }
  return listed(items);
}

std::string count_break(const Lemma& lemma, const DigitCounts& counts, const CellSet& cells, const Scales& scales, const Position& now) {
  const std::string needs = side_needs(lemma.pan) + copies_in_words(counts, now.shape());
  const bool is_one = sum_of(counts) == 1;
  if (cells.is_empty()) return needs + ", but no open cell there can take " + (is_one ? "it" : lemma.digits.size() == 1 ? "one" : "any of them");
  return needs + ", but only " + cells_in_short(now.shape(), cells, now.open()) + " can take " +
         (lemma.digits.size() == 1 ? "one" : "any of them") + count_again_remark(cells, weighed_size(cells, scales));
}

std::string count_lemma(const Lemma& lemma, bool is_break, const ShareCase& share_case, const Scales& scales, const Position& now) {
  const Shape& shape = now.shape();
  const CellSet cells = cells_that_can_take(lemma.digits, scales.open(lemma.pan), now);
  const DigitCounts counts = needs(lemma, share_case, scales);
  if (is_break) return count_break(lemma, counts, cells, scales, now);
  const std::string falls = lemma.removed.empty() ? std::string() : ". So " + eliminations_in_words(shape, lemma.removed);
  const bool is_one = sum_of(counts) == 1;
  if (cells == scales.open(lemma.pan)) {
    return (cells.size() == 1 ? "the only open cell " + on_side(lemma.pan) + ", " + cell_names(shape, cells) + "," : "the " + open_cells_name(lemma.pan)) +
           (cells.size() == 1 ? " holds " : " hold ") + (is_one ? a_digit(lemma.digits.lowest()) : copies_in_words(counts, shape)) + " and nothing else" + falls;
  }
  const std::string names = cells_in_short(shape, cells, now.open());
  if (is_one) return on_side(lemma.pan) + ", only " + names + " can take the " + digits_in_full(counts, shape) + " that is needed" + falls;
  return on_side(lemma.pan) + ", only " + names + " can take " + needed_copies(counts, shape) + " that are needed" +
         count_again_remark(cells, weighed_size(cells, scales)) + ", and " + (cells.size() == 1 ? "it holds" : "they hold") + " nothing else" + falls;
}

std::string cover_break(const Lemma& lemma, const std::string& wanted, const CellSet& cells, const Shape& shape) {
  const std::string needs = side_needs(lemma.pan) + wanted;
  if (cells.is_empty()) return needs + ", but no open cell there can take one";
  const int houses = static_cast<int>(lemma.houses.size());
  return needs + ", but all its places for " + digit_name(lemma.digits.lowest()) + " (" + cell_names(shape, cells) + ") lie in " +
         house_names(shape, lemma.houses) + ", which " + (houses == 1 ? "has room for only one" : "have room for only " + spoken_number(houses));
}

std::string cover_lemma(const Lemma& lemma, bool is_break, const ShareCase& share_case, const Scales& scales, const Position& now) {
  const Shape& shape = now.shape();
  const Digit digit = lemma.digits.lowest();
  const int wanted = scales.need(lemma.pan, digit, share_case.shares[digit.index]);
  const CellSet cells = cells_that_can_take(lemma.digits, scales.open(lemma.pan), now);
  if (is_break) return cover_break(lemma, counted(wanted, digit_name(digit)), cells, shape);
  const std::string falls = lemma.removed.empty() ? std::string() : ". So " + eliminations_in_words(shape, lemma.removed);
  const std::string places = house_names(shape, lemma.houses) + " (" + cell_names(shape, cells) + ")";
  if (lemma.houses.size() == 1) return on_side(lemma.pan) + ", the " + digit_name(digit) + " has to go into " + places + falls;
  return on_side(lemma.pan) + ", the " + counted(wanted, digit_name(digit)) + " have to go into " + places +
         (wastes_a_house(lemma, shape) ? ", one into each, so none of them may lie in two of these houses" : ", one into each") + falls;
}

// If a removed candidate were true, too few places would be left on that side.
std::string sight_lemma(const Lemma& lemma, const ShareCase& share_case, const Scales& scales, const Position& now) {
  const Shape& shape = now.shape();
  const Digit digit = lemma.digits.lowest();
  const int wanted = scales.need(lemma.pan, digit, share_case.shares[digit.index]);
  const CellSet cells = cells_that_can_take(lemma.digits, scales.open(lemma.pan), now);
  const std::string falls = eliminations_in_words(shape, lemma.removed);
  const std::string needs = side_needs(lemma.pan) + (wanted == 1 ? a_digit(digit) : counted(wanted, digit_name(digit))) + ", in " + cell_names(shape, cells, "or");
  CellSet spoilers;
  for (const Candidate& gone : lemma.removed) spoilers.add(gone.cell);
  if (lemma.houses.empty() && wanted == 1 && !spoilers.meets(cells)) {
    const std::string places = cells.size() == 1 ? "this cell" : cells.size() == 2 ? "both of these cells" : "all of these cells";
    return needs + ". But " + cell_names(shape, spoilers) + (spoilers.size() == 1 ? " sees " : " see ") + places + ", so " + falls;
  }
  const std::string with = ". With " + a_digit(digit) + " in " + cell_names(shape, spoilers, "or");
  if (lemma.houses.empty()) return needs + with + ", too few places would be left. So " + falls;
  return needs + with + ", the other places would all lie in " + house_names(shape, lemma.houses) + ", which is too few. So " + falls;
}

}  // namespace

std::string forced_in_words(const ForcedCopies& forced, const Scales& scales, const Position& position) {
  const Shape& shape = position.shape();
  const std::string digit = digit_name(forced.digit);
  const int copies = forced_copies(forced, scales, position);
  const int asked = scales.need(forced.pan, forced.digit, 0);
  std::string text = "In " + house_names(shape, forced.houses) + ", " + digit + " can only go into " +
                     (forced.pan == Pan::kBoth ? "open cells of the two remainders" : open_cells_name(forced.pan));
  if (forced.houses.size() > 1) text += ", and no cell serves two of these houses";
  const std::string holder = forced.pan == Pan::kBoth ? "the two sides together hold" : side_name(forced.pan) + " holds";
  text += ". So " + holder + " at least " + counted(copies, digit) + ", while the tally asks for " +
          (asked <= 0 ? std::string("none") : (copies > asked ? "only " : "") + spoken_number(asked)) + " there: ";
  const int share = forced_share(forced, scales, position);
  text += "at least " + counted(share, digit) + (share == 1 ? " is shared" : " are shared");
  return text + (forced.pan == Pan::kBoth ? ", for a shared digit stands on both sides." : ".");
}

std::string supposed_in_words(const ShareCase& share_case, const DigitCounts& known, const Shape& shape) {
  std::vector<std::string> items;
  for (const Digit digit : shape.digits()) {
    const int copies = share_case.shares[digit.index] - known[digit.index];
    if (copies == 1) items.push_back(a_digit(digit));
    if (copies > 1) items.push_back(counted(copies, digit_name(digit)));
  }
  return listed(items);
}

std::vector<std::string> lemmas_in_words(const ShareCase& share_case, const Scales& scales, const Position& position) {
  Position now = position;
  std::vector<std::string> sentences;
  for (std::size_t i = 0; i < share_case.lemmas.size(); ++i) {
    const Lemma& lemma = share_case.lemmas[i];
    const bool is_break = share_case.is_impossible && i + 1 == share_case.lemmas.size();
    const std::string said = lemma.kind == Lemma::Kind::kCount   ? count_lemma(lemma, is_break, share_case, scales, now)
                             : lemma.kind == Lemma::Kind::kCover ? cover_lemma(lemma, is_break, share_case, scales, now)
                                                                 : sight_lemma(lemma, share_case, scales, now);
    const std::string_view link = i == 0 ? "" : is_break ? "but then " : i == 1 ? "then " : "next, ";
    std::string sentence = std::string(link) + said;
    // "But then ..., but" would be one but too many.
    const auto second_but = is_break && i > 0 ? sentence.find(", but ") : std::string::npos;
    if (second_but != std::string::npos) sentence.replace(second_but, 6, ", and ");
    sentences.push_back(capitalised(std::move(sentence)) + ".");
    for (const Candidate& gone : lemma.removed) now.eliminate(gone);
  }
  return sentences;
}

CellSet cells_of_case(const ShareCase& share_case, const Scales& scales, const Position& position) {
  Position now = position;
  CellSet cells;
  for (const Lemma& lemma : share_case.lemmas) {
    cells |= cells_that_can_take(lemma.digits, scales.open(lemma.pan), now);
    for (const Candidate& gone : lemma.removed) now.eliminate(gone);
  }
  return cells;
}

std::vector<Candidate> removed_in_case(const ShareCase& share_case) {
  std::vector<Candidate> removed;
  for (const Lemma& lemma : share_case.lemmas) removed.insert(removed.end(), lemma.removed.begin(), lemma.removed.end());
  std::sort(removed.begin(), removed.end());
  return removed;
}

}  // namespace cp
