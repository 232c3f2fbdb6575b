// SPDX-License-Identifier: Apache-2.0
// A shop balance: known digits lie in the pans as weights, open cells as empty places, the beam is level.
#include "export/balance_svg.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/text.h"
#include "export/board_drawing.h"
#include "export/svg_parts.h"
#include "grid/shape.h"
#include "speak/words.h"

namespace cp {

namespace {

constexpr int kWidth = 640;
constexpr int kItem = 26;        // pitch of weights and places
constexpr int kInARow = 10;
constexpr int kBeamY = 34;
constexpr int kLeftX = 160;      // middle of the left pan
constexpr int kRightX = 480;
constexpr int kHalfPan = 146;
constexpr int kFoot = 74;        // below the dish: its depth and the note

// One thing lying in a pan.
struct Item {
  enum class Kind { kWeight, kExtra, kPlace };
  Kind kind = Kind::kWeight;
  char sign = ' ';  // the digit, or '?' for a place nothing is known about
};

std::size_t at(int index) { return static_cast<std::size_t>(index); }

void add_digits(std::vector<Item>& items, const DigitCounts& counts, int side, Item::Kind kind) {
  for (int i = 0; i < side; ++i) items.insert(items.end(), at(std::max(counts[at(i)], 0)), {kind, Shape::name_of(Digit(i))});
}

// What lies in a pan. `other` is what lies in the other pan and is taken off once the tally has been made.
std::vector<Item> items_of(const PanPicture& picture, bool is_left) {
  const PanLoad& load = is_left ? picture.left : picture.right;
  const PanLoad& other = is_left ? picture.right : picture.left;
  std::vector<Item> items;
  DigitCounts known = load.known;
  DigitCounts extra{};
  DigitCounts facing = other.known;
  for (int i = 0; i < picture.side; ++i) (is_left ? facing : extra)[at(i)] += picture.surplus;
  if (picture.is_tallied) {
    for (int i = 0; i < picture.side; ++i) {
      known[at(i)] = std::max(load.known[at(i)] + extra[at(i)] - facing[at(i)], 0);
      extra[at(i)] = 0;
    }
  }
  add_digits(items, known, picture.side, Item::Kind::kWeight);
  add_digits(items, extra, picture.side, Item::Kind::kExtra);
  const std::size_t before = items.size();
  if (picture.is_tallied) add_digits(items, load.owed, picture.side, Item::Kind::kPlace);
  const int labelled = static_cast<int>(items.size() - before);
  items.insert(items.end(), at(std::max(load.open - labelled, 0)), {Item::Kind::kPlace, picture.is_tallied ? '?' : ' '});
  return items;
}

int rows_of(const std::vector<Item>& items) { return std::max(1, (static_cast<int>(items.size()) + kInARow - 1) / kInARow); }

void draw_item(Markup& out, const Item& item, int x, int y, bool is_left) {
  const std::string text(1, item.sign);
  const std::string left = to_text(x + 2);
  if (item.kind == Item::Kind::kPlace) {
    out.empty("rect", {{"class", is_left ? "lslot" : "rslot"}, {"x", left}, {"y", to_text(y + 2)}, {"width", "22"}, {"height", "22"}});
    if (item.sign != ' ') out.element("text", {{"class", "stxt"}, {"x", to_text(x + 13)}, {"y", to_text(y + 19)}}, text);
    return;
  }
  // A weight with its knob.
  const bool is_extra = item.kind == Item::Kind::kExtra;
  const std::string body = "M" + left + " " + to_text(y + 25) + "l2 -19h6v-3h6v3h6l2 19z";
  out.empty("path", {{"class", is_extra ? "extra" : "weight"}, {"d", body}});
  out.element("text", {{"class", is_extra ? "etxt" : "wtxt"}, {"x", to_text(x + 13)}, {"y", to_text(y + 22)}}, text);
}

// "11 known, 2 open"; after the tally only the open places matter.
std::string load_note(const Words& words, const PanLoad& load, bool is_tallied) {
  int known = 0;
  for (const int count : load.known) known += std::max(count, 0);
  if (load.open == 0) return is_tallied ? words.say("pans.none") : words.say("pans.known", {{"n", known}});
  if (is_tallied || known == 0) return words.say("pans.open", {{"n", load.open}});
  return words.say("pans.both", {{"known", known}, {"open", load.open}});
}

void draw_pan(Markup& out, const std::vector<Item>& items, int middle, int dish_y, const std::string& name, const std::string& note, bool is_left) {
  const std::string knot = "M" + to_text(middle) + " " + to_text(kBeamY);
  out.empty("path", {{"class", "cord"}, {"d", knot + "L" + to_text(middle - kHalfPan) + " " + to_text(dish_y) + knot + "L" + to_text(middle + kHalfPan) + " " + to_text(dish_y)}});
  const int count = static_cast<int>(items.size());
  for (int i = 0; i < count; ++i) {
    const int row = i / kInARow;
    const int in_row = std::min(kInARow, count - row * kInARow);
    const int x = middle - in_row * kItem / 2 + (i % kInARow) * kItem;
    draw_item(out, items[at(i)], x, dish_y - (row + 1) * (kItem + 1), is_left);
  }
  out.empty("path", {{"class", "dish"}, {"d", "M" + to_text(middle - kHalfPan) + " " + to_text(dish_y) + "h" + to_text(2 * kHalfPan) + "q-18 26 -70 26h-152q-52 0 -70 -26z"}});
  out.element("text", {{"class", "head"}, {"x", to_text(middle)}, {"y", to_text(dish_y + 19)}}, name);
  out.element("text", {{"class", "note"}, {"x", to_text(middle)}, {"y", to_text(dish_y + 50)}}, note);
}

int dish_line(const PanPicture& picture) {
  const int rows = std::max(rows_of(items_of(picture, true)), rows_of(items_of(picture, false)));
  return kBeamY + 62 + rows * (kItem + 1);
}

DrawingSize pans_size(const PanPicture& picture) { return {kWidth, dish_line(picture) + kFoot - 12}; }

void draw_pans(Markup& out, const PanPicture& picture) {
  const int dish_y = dish_line(picture);
  const int middle = kWidth / 2;
  out.empty("path", {{"class", "beam"}, {"d", "M" + to_text(kLeftX) + " " + to_text(kBeamY) + "Q" + to_text(middle) + " " + to_text(kBeamY - 24) + " " + to_text(kRightX) + " " + to_text(kBeamY)}});
  out.empty("path", {{"class", "post"}, {"d", "M" + to_text(middle - 4) + " 22h8l6 " + to_text(dish_y + 8) + "h26v8h-72v-8h26z"}});
  out.empty("circle", {{"class", "post"}, {"cx", to_text(middle)}, {"cy", "22"}, {"r", "8"}});
  const Words words(picture.language);
  const std::string surplus = picture.surplus == 0 || picture.is_tallied ? "" : words.say("pans.surplus", {{"n", picture.surplus}});
  draw_pan(out, items_of(picture, true), kLeftX, dish_y, words.say("pans.left"), load_note(words, picture.left, picture.is_tallied), true);
  draw_pan(out, items_of(picture, false), kRightX, dish_y, words.say("pans.right"), load_note(words, picture.right, picture.is_tallied) + surplus, false);
}

// ---- tally -----------------------------------------------------------------------------------------------------------

constexpr int kNameWidth = 172;
constexpr int kLine = 34;

std::string signed_text(int number) { return number > 0 ? "+" + to_text(number) : number < 0 ? "\xE2\x88\x92" + to_text(-number) : "0"; }

struct TallyRow {
  std::string name;
  DigitCounts counts{};
  int sign = 1;
};

std::vector<TallyRow> rows_of(const TallyTable& table) {
  const Words words(table.language);
  std::vector<TallyRow> rows = {{words.say("tally.right"), table.known_right, 1}, {words.say("tally.left"), table.known_left, -1}};
  if (table.surplus != 0) {
    DigitCounts each{};
    for (int i = 0; i < table.side; ++i) each[at(i)] = table.surplus;
    rows.push_back({words.say("tally.surplus"), each, 1});
  }
  return rows;
}

DrawingSize tally_size(const TallyTable& table) { return {kWidth, kLine * (static_cast<int>(rows_of(table).size()) + 2) + 14}; }

void draw_tally(Markup& out, const TallyTable& table) {
  const int step = (kWidth - kNameWidth) / table.side;
  const auto x_of = [&](int digit) { return to_text(kNameWidth + step * digit + step / 2); };
  int y = 24;
  for (int i = 0; i < table.side; ++i) out.element("text", {{"class", "head"}, {"x", x_of(i)}, {"y", to_text(y)}}, std::string(1, Shape::name_of(Digit(i))));
  for (const TallyRow& row : rows_of(table)) {
    y += kLine;
    out.empty("path", {{"class", "hair"}, {"d", "M0 " + to_text(y - 24) + "h" + to_text(kWidth)}});
    out.element("text", {{"class", "rowname"}, {"x", "4"}, {"y", to_text(y)}}, row.name);
    for (int i = 0; i < table.side; ++i) {
      const int count = row.counts[at(i)];
      if (count != 0) out.element("text", {{"class", "entry"}, {"x", x_of(i)}, {"y", to_text(y)}}, signed_text(row.sign * count));
    }
  }
  y += kLine;
  out.empty("path", {{"class", "sum"}, {"d", "M0 " + to_text(y - 25) + "h" + to_text(kWidth) + "M0 " + to_text(y + 10) + "h" + to_text(kWidth) + "m0 4H0"}});
  out.element("text", {{"class", "rowname"}, {"x", "4"}, {"y", to_text(y)}}, Words(table.language).say("tally.total"));
  for (int i = 0; i < table.side; ++i) out.element("text", {{"class", "total"}, {"x", x_of(i)}, {"y", to_text(y)}}, signed_text(table.tally[at(i)]));
}

std::string tally_words(const TallyTable& table) {
  std::vector<std::string> items;
  for (int i = 0; i < table.side; ++i) items.push_back(std::string(1, Shape::name_of(Digit(i))) + ": " + to_text(table.tally[at(i)]));
  return Words(table.language).say("tally.words") + " " + joined(items, "; ") + ".";
}

}  // namespace

std::string pans_svg(const PanPicture& picture, SvgUse use, std::string_view id) {
  Markup out;
  const DrawingSize size = pans_size(picture);
  svg_begin(out, {size.width, size.height, picture.title, picture.description}, use, id);
  draw_pans(out, picture);
  svg_end(out);
  return out.text();
}

std::string tally_svg(const TallyTable& table, SvgUse use, std::string_view id) {
  Markup out;
  const DrawingSize size = tally_size(table);
  svg_begin(out, {size.width, size.height, Words(table.language).say("tally.title"), tally_words(table)}, use, id);
  draw_tally(out, table);
  svg_end(out);
  return out.text();
}

std::string balance_svg(const Figure& board, const PanPicture& pans, const TallyTable& table, std::string_view id) {
  const DrawingSize left = board_size(board);
  const DrawingSize top = pans_size(pans);
  const DrawingSize bottom = tally_size(table);
  const int gap = 40;
  const int height = std::max(left.height, top.height + bottom.height + gap) + gap;
  Markup out;
  svg_begin(out, {left.width + kWidth + 2 * gap, height, board.title, board.description + " " + pans.description + " " + tally_words(table)}, SvgUse::kFile, id);
  draw_board(out, board, id);
  const int x = left.width + gap;
  out.open("g", {{"transform", "translate(" + to_text(x) + " " + to_text(gap) + ")"}});
  draw_pans(out, pans);
  out.close("g");
  out.open("g", {{"transform", "translate(" + to_text(x) + " " + to_text(top.height + 2 * gap) + ")"}});
  draw_tally(out, table);
  out.close("g");
  svg_end(out);
  return out.text();
}

}  // namespace cp
