// SPDX-License-Identifier: Apache-2.0
// The board as a sheet of a ledger: hairlines, names of rows and columns in the margin, a legend line at the foot.
#include "export/board_svg.h"

#include <algorithm>

#include "base/text.h"
#include "export/board_drawing.h"
#include "export/svg_parts.h"
#include "speak/words.h"

namespace cp {

namespace {

constexpr int kCell = 60;      // side of a cell
constexpr int kMargin = 50;    // room for names and tags on the left and on top
constexpr int kEdge = 10;      // room on the right and below
constexpr int kKeyLine = 30;   // height of a line of the legend
constexpr int kKeySample = 26; // width of a sample in the legend

// Draws one figure; holds what every part needs.
class BoardDrawing {
 public:
  BoardDrawing(Markup& out, const Figure& figure, std::string_view id)
      : out_(out), figure_(figure), shape_(figure.position.shape()), id_(id), length_(kCell * shape_.side()) {}

  void draw() {
    out_.empty("rect", {{"class", "paper"}, {"x", to_text(kMargin)}, {"y", to_text(kMargin)}, {"width", to_text(length_)}, {"height", to_text(length_)}});
    fill(figure_.cancelled, "xt", 'x');
    fill(figure_.left, "lt", 'l');
    fill(figure_.right, "rt", 'r');
    lines();
    outline(figure_.left, "le");
    outline(figure_.right, "re");
    box_frames(figure_.left_houses, "lb");
    box_frames(figure_.right_houses, "rb");
    outline(figure_.focus, "focus");
    labels();
    for (const Cell cell : shape_.all_cells()) entries(cell);
    legend();
  }

 private:
  [[nodiscard]] int x_of(Cell cell) const { return kMargin + kCell * shape_.column_of(cell); }
  [[nodiscard]] int y_of(Cell cell) const { return kMargin + kCell * shape_.row_of(cell); }

  static std::string rectangle(int x, int y, int width, int height) {
    return "M" + to_text(x) + " " + to_text(y) + "h" + to_text(width) + "v" + to_text(height) + "h" + to_text(-width) + "z";
  }

  // A tint with its hatching. Where both pans cover a cell the two tints would hide one another, so only hatchings add up.
  void fill(const CellSet& cells, std::string_view tint, char which) {
    if (cells.is_empty()) return;
    std::string plain;
    std::string all;
    const CellSet shared = figure_.left & figure_.right;
    for (const Cell cell : cells) {
      const std::string square = rectangle(x_of(cell), y_of(cell), kCell, kCell);
      all += square;
      if (!shared.has(cell)) plain += square;
    }
    if (!plain.empty()) out_.empty("path", {{"class", std::string(tint)}, {"d", plain}});
    out_.empty("path", {{"class", "hatch"}, {"fill", hatching(id_, which)}, {"d", all}});
  }

  void lines() {
    std::string thin;
    std::string thick;
    for (int i = 0; i <= shape_.side(); ++i) {
      const std::string at = to_text(kMargin + kCell * i);
      const std::string start = to_text(kMargin);
      (i % shape_.box_rows() == 0 ? thick : thin) += "M" + start + " " + at + "h" + to_text(length_);
      (i % shape_.box_columns() == 0 ? thick : thin) += "M" + at + " " + start + "v" + to_text(length_);
    }
    out_.empty("path", {{"class", "hair"}, {"d", thin}});
    out_.empty("path", {{"class", "rule"}, {"d", thick}});
  }

  // The border of a region, a little inside its cells.
  void outline(const CellSet& cells, std::string_view style) {
    std::string path;
    for (const Cell cell : cells) {
      const int row = shape_.row_of(cell);
      const int column = shape_.column_of(cell);
      const auto inside = [&](int r, int c) { return r >= 0 && c >= 0 && r < shape_.side() && c < shape_.side() && cells.has(shape_.cell_at(r, c)); };
      const int in = 3;
      const int x = x_of(cell);
      const int y = y_of(cell);
      const int x0 = x + (inside(row, column - 1) ? 0 : in);
      const int x1 = x + kCell - (inside(row, column + 1) ? 0 : in);
      const int y0 = y + (inside(row - 1, column) ? 0 : in);
      const int y1 = y + kCell - (inside(row + 1, column) ? 0 : in);
      if (!inside(row - 1, column)) path += "M" + to_text(x0) + " " + to_text(y + in) + "H" + to_text(x1);
      if (!inside(row + 1, column)) path += "M" + to_text(x0) + " " + to_text(y + kCell - in) + "H" + to_text(x1);
      if (!inside(row, column - 1)) path += "M" + to_text(x + in) + " " + to_text(y0) + "V" + to_text(y1);
      if (!inside(row, column + 1)) path += "M" + to_text(x + kCell - in) + " " + to_text(y0) + "V" + to_text(y1);
    }
    if (!path.empty()) out_.empty("path", {{"class", std::string(style)}, {"d", path}});
  }

  void box_frames(const std::vector<House>& houses, std::string_view style) {
    for (const House house : houses) {
      if (shape_.kind(house) != HouseKind::kBox) continue;
      const Cell corner = shape_.cells(house).first();
      const int in = 7;
      out_.empty("path", {{"class", std::string(style)},
                          {"d", rectangle(x_of(corner) + in, y_of(corner) + in, kCell * shape_.box_columns() - 2 * in, kCell * shape_.box_rows() - 2 * in)}});
    }
  }

  [[nodiscard]] char pan_of(House house) const {
    const auto has = [house](const std::vector<House>& houses) { return std::find(houses.begin(), houses.end(), house) != houses.end(); };
    if (has(figure_.left_houses)) return 'l';
    return has(figure_.right_houses) ? 'r' : ' ';
  }

  // Names of rows and columns; a house that lies in a pan wears a tag that points at it, marked L or R.
  void labels() {
    for (int i = 0; i < shape_.side(); ++i) {
      const int middle = kMargin + kCell * i + kCell / 2;
      label(shape_.row(i), 22, middle, "h30l9 15l-9 15h-30z", 4, middle - 15);
      label(shape_.column(i), middle, 23, "h46v25l-23 13l-23 -13z", middle - 23, 6);
    }
  }

  void label(House house, int x, int y, std::string_view tag, int tag_x, int tag_y) {
    const char pan = pan_of(house);
    std::string text = shape_.name_of(house);
    if (pan != ' ') {
      const bool is_left = pan == 'l';
      out_.empty("path", {{"class", is_left ? "ltag" : "rtag"}, {"d", "M" + to_text(tag_x) + " " + to_text(tag_y) + std::string(tag)}});
      out_.element("text", {{"class", is_left ? "ltxt" : "rtxt"}, {"x", to_text(x)}, {"y", to_text(y + 6)}}, text);
      return;
    }
    out_.element("text", {{"class", "label"}, {"x", to_text(x)}, {"y", to_text(y + 6)}}, text);
  }

  void entries(Cell cell) {
    if (const auto digit = figure_.position.digit_at(cell)) {
      placed_digit(cell, *digit);
    } else if (figure_.candidates.has(cell)) {
      candidates(cell);
    }
    if (figure_.counted_again.has(cell)) {
      out_.raw("<text class=\"again\" x=\"" + to_text(x_of(cell) + kCell - 5) + "\" y=\"" + to_text(y_of(cell) + kCell - 6) + "\">&#215;2</text>\n");
    }
  }

  void placed_digit(Cell cell, Digit digit) {
    const int x = x_of(cell) + kCell / 2;
    const int y = y_of(cell) + 42;
    std::string style = figure_.position.givens().has(cell) ? "given" : "known";
    if (figure_.cancelled.has(cell)) style += " off";
    out_.element("text", {{"class", style}, {"x", to_text(x)}, {"y", to_text(y)}}, std::string(1, Shape::name_of(digit)));
    // A double line under a figure closes an account: here it marks a digit that is new.
    if (figure_.fresh.has(cell)) {
      out_.empty("path", {{"class", "sum"}, {"d", "M" + to_text(x - 12) + " " + to_text(y + 6) + "h24m-24 4h24"}});
    }
  }

  // Candidates as entries in short lines, packed, so that few candidates look few.
  void candidates(Cell cell) {
    const int per_line = shape_.side() > 9 ? 4 : 3;
    const int step_x = shape_.side() > 9 ? 14 : 18;
    const int step_y = shape_.side() > 9 ? 14 : 18;
    std::vector<Digit> digits;
    for (const Digit digit : figure_.position.candidates(cell)) {
      if (figure_.lens.is_empty() || figure_.lens.has(digit)) digits.push_back(digit);
    }
    const int count = static_cast<int>(digits.size());
    const int rows = (count + per_line - 1) / per_line;
    const bool is_hatched = figure_.left.has(cell) || figure_.right.has(cell) || figure_.cancelled.has(cell);
    if (is_hatched && count > 0) halo(cell, std::min(count, per_line) * step_x, rows * step_y + 2);
    for (int row = 0; row < rows; ++row) {
      const int in_row = std::min(per_line, count - row * per_line);
      const int y = y_of(cell) + kCell / 2 + (2 * row - rows + 1) * step_y / 2;
      const int first_x = x_of(cell) + kCell / 2 - (std::min(count, per_line) - 1) * step_x / 2;
      candidate_line(cell, digits, row * per_line, in_row, first_x, step_x, y);
    }
  }

  // Quiet paper behind small digits, so that hatching does not run through them.
  void halo(Cell cell, int width, int height) {
    out_.empty("rect", {{"class", "halo"},
                        {"x", to_text(x_of(cell) + (kCell - width) / 2)},
                        {"y", to_text(y_of(cell) + (kCell - height) / 2)},
                        {"width", to_text(width)},
                        {"height", to_text(height)},
                        {"rx", "4"}});
  }

  void candidate_line(Cell cell, const std::vector<Digit>& digits, int from, int count, int first_x, int step_x, int y) {
    // One element a digit: several renderers ignore lists of places inside one element.
    out_.raw("<g class=\"cand\">");
    for (int i = 0; i < count; ++i) {
      const std::string x = to_text(first_x + i * step_x);
      out_.raw("<text x=\"" + x + "\" y=\"" + to_text(y + 6) + "\">" + Shape::name_of(digits[static_cast<std::size_t>(from + i)]) + "</text>");
    }
    out_.raw("</g>\n");
    for (int i = 0; i < count; ++i) {
      const Candidate candidate{cell, digits[static_cast<std::size_t>(from + i)]};
      const int x = first_x + i * step_x;
      const auto is_in = [&candidate](const std::vector<Candidate>& list) { return std::find(list.begin(), list.end(), candidate) != list.end(); };
      if (is_in(figure_.told)) {
        out_.empty("rect", {{"class", "told"}, {"x", to_text(x - 8)}, {"y", to_text(y - 9)}, {"width", "16"}, {"height", "18"}, {"rx", "4"}});
      }
      if (is_in(figure_.struck)) out_.empty("path", {{"class", "strike"}, {"d", "M" + to_text(x - 9) + " " + to_text(y + 7) + "l18 -14"}});
      if (is_in(figure_.placed)) out_.empty("circle", {{"class", "ring"}, {"cx", to_text(x)}, {"cy", to_text(y)}, {"r", "11"}});
    }
  }

  void key_entry(int& line, std::string_view tint, char which, const std::string& text) {
    const int y = kMargin + length_ + kEdge + kKeyLine * line + 6;
    const std::string square = rectangle(kMargin, y, kKeySample, 20);
    out_.empty("path", {{"class", std::string(tint)}, {"d", square}});
    out_.empty("path", {{"class", "hatch"}, {"fill", hatching(id_, which)}, {"d", square}});
    out_.element("text", {{"class", "key"}, {"x", to_text(kMargin + kKeySample + 10)}, {"y", to_text(y + 16)}}, text);
    ++line;
  }

  [[nodiscard]] std::string short_names(const std::vector<House>& houses) const {
    std::vector<std::string> names;
    for (const House house : houses) names.push_back(shape_.name_of(house));
    return joined(names, ", ");
  }

  void legend() {
    int line = 0;
    const bool has_cancelled = !figure_.cancelled.is_empty();
    const Words words(figure_.language);
    const auto pan = [&](std::string_view side, const std::vector<House>& houses) {
      return words.say(std::string("board.key.") + std::string(side) + (has_cancelled ? ".rest" : ""), {{"houses", short_names(houses)}});
    };
    if (!figure_.left_houses.empty()) key_entry(line, "lt", 'l', pan("left", figure_.left_houses));
    if (!figure_.right_houses.empty()) key_entry(line, "rt", 'r', pan("right", figure_.right_houses));
    if (has_cancelled) key_entry(line, "xt", 'x', words.say("board.key.cancelled"));
  }

  Markup& out_;
  const Figure& figure_;
  const Shape& shape_;
  std::string_view id_;
  int length_;
};

}  // namespace

DrawingSize board_size(const Figure& figure) {
  const int length = kMargin + kCell * figure.position.shape().side() + kEdge;
  const int keys = (figure.left_houses.empty() ? 0 : 1) + (figure.right_houses.empty() ? 0 : 1) + (figure.cancelled.is_empty() ? 0 : 1);
  return {length, length + kKeyLine * keys};
}

void draw_board(Markup& out, const Figure& figure, std::string_view id) { BoardDrawing(out, figure, id).draw(); }

std::string board_svg(const Figure& figure, SvgUse use, std::string_view id) {
  Markup out;
  const DrawingSize size = board_size(figure);
  svg_begin(out, {size.width, size.height, figure.title, figure.description}, use, id);
  draw_board(out, figure, id);
  svg_end(out);
  return out.text();
}

}  // namespace cp
