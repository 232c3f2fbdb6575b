// SPDX-License-Identifier: Apache-2.0
// Everything is laid out on 1920 by 1080 units and scaled. Words and figures stay inside the graphics safe area of EBU R 95
// (5 % from each edge).
#include "print/still_png.h"

#include <algorithm>
#include <optional>

#include "base/text.h"
#include "export/balance_svg.h"
#include "export/board_svg.h"
#include "export/scene_times.h"
#include "print/picture.h"
#include "print/words_block.h"

namespace cp {

namespace {

constexpr double kWide = 1920;
constexpr double kHigh = 1080;
constexpr double kSideEdge = 96;  // 5 %
constexpr double kTopEdge = 54;
constexpr double kFootHeight = 44;
constexpr double kGutter = 64;    // between board and words
constexpr double kInset = 28;     // of a card around words, when there is no ground
constexpr int kFewWords = 34;

Box safe_area() { return {kSideEdge, kTopEdge, kWide - 2 * kSideEdge, kHigh - 2 * kTopEdge - kFootHeight}; }

// The largest width at which a picture fits into a box.
double width_in(const Picture& picture, double width, double height) { return std::min(width, height * picture.width() / picture.height()); }

class Still {
 public:
  Still(cairo_t* canvas, const Document& document, std::size_t index, const StillOptions& options)
      : canvas_(canvas), document_(document), scene_(document.scenes[index]), index_(index), options_(options), tongue_{document.language, document.is_right_to_left} {}

  // An empty text, or what went wrong.
  std::string draw() {
    if (!options_.is_transparent) {
      set_ink(canvas_, kGround);
      cairo_paint(canvas_);
    }
    Box area = safe_area();
    if (scene_.board) area = board(area);
    words(area);
    if (!options_.is_transparent) foot();
    return fault_;
  }

 private:
  [[nodiscard]] bool is_mirrored() const { return tongue_.is_right_to_left; }

  std::optional<Picture> picture_of(std::string svg) {
    Result<Picture> picture = Picture::from_svg(std::move(svg));
    if (picture) return std::move(picture).value();
    note(picture.error().message);
    return std::nullopt;
  }

  void note(const std::string& fault) {
    if (fault_.empty()) fault_ = fault;
  }

  // The board at the start of the lines; gives what is left for the words.
  Box board(const Box& area) {
    const auto picture = picture_of(board_svg(*scene_.board, SvgUse::kFile, "board"));
    if (!picture) return area;
    const double width = width_in(*picture, 940, area.height);
    const double height = picture->height_at(width);
    const double x = is_mirrored() ? area.x + area.width - width : area.x;
    const double y = area.y + (area.height - height) / 2;
    note(picture->draw(canvas_, x, y, width));
    return {is_mirrored() ? area.x : area.x + width + kGutter, area.y, area.width - width - kGutter, area.height};
  }

  // What stands in the column of words, measured at one size of letters.
  struct Column {
    WordsBlock heading;
    WordsBlock text;
    double pans_width = 0;
    double table_width = 0;
    double height = 0;
  };

  Column column(double width, double heading_size, double text_size, const std::string& text, const std::optional<Picture>& pans, const std::optional<Picture>& table,
                double figure_width) const {
    const Lettering bold{heading_size, true, true, false, Align::kStart, 1.12, kInk};
    const Lettering plain{text_size, false, true, false, Align::kStart, 1.3, kInk};
    Column made{WordsBlock(canvas_, tongue_, bold, width, scene_.heading), WordsBlock(canvas_, tongue_, plain, width, text), 0, 0, 0};
    made.height = made.heading.height() + kRuleRoom + made.text.height();
    if (pans) {
      made.pans_width = std::min(width, figure_width);
      made.height += pans->height_at(made.pans_width) + kBetween;
    }
    if (table) {
      made.table_width = std::min(width, figure_width);
      made.height += table->height_at(made.table_width) + kBetween;
    }
    return made;
  }

  // Heading, double rule, a few words, pans, tally. Letters shrink, then figures, until all fits.
  void words(const Box& area) {
    const double inset = options_.is_transparent ? kInset : 0;
    const Box inner{area.x + inset, area.y + inset, area.width - 2 * inset, area.height - 2 * inset};
    std::optional<Picture> pans;
    std::optional<Picture> table;
    if (scene_.pans) pans = picture_of(on_ground(pans_svg(*scene_.pans, SvgUse::kFile, "pans")));
    if (scene_.table) table = picture_of(on_ground(tally_svg(*scene_.table, SvgUse::kFile, "tally")));
    const bool is_alone = !scene_.board;
    const std::string text = first_words(scene_, is_alone ? 2 * kFewWords : kFewWords);
    double heading_size = is_alone ? 80 : 62;
    double text_size = is_alone ? 52 : 46;
    double figure_width = inner.width;
    Column made = column(inner.width, heading_size, text_size, text, pans, table, figure_width);
    while (made.height > inner.height && text_size > 22) {
      heading_size = std::max(heading_size - 3, 36.0);
      text_size -= 2;
      if (text_size < 32) figure_width *= 0.95;
      made = column(inner.width, heading_size, text_size, text, pans, table, figure_width);
    }
    draw_column(area, inner, made, pans, table);
  }

  // Figures bring paper; on the ground of a still they stand on the ground itself.
  [[nodiscard]] std::string on_ground(std::string svg) const {
    if (options_.is_transparent) return svg;
    const std::string frame = "<rect class=\"paper\"";
    const auto at = svg.find(frame);
    if (at != std::string::npos) svg.replace(at, frame.size(), "<rect fill=\"none\"");
    return svg;
  }

  void draw_column(const Box& area, const Box& inner, const Column& made, const std::optional<Picture>& pans, const std::optional<Picture>& table) {
    const double spare = std::max(0.0, inner.height - made.height);
    double y = inner.y + spare / 2;
    if (options_.is_transparent) {
      set_ink(canvas_, kPaper);
      cairo_rectangle(canvas_, area.x, y - kInset, area.width, made.height + 2 * kInset);
      cairo_fill(canvas_);
    }
    made.heading.draw(inner.x, y);
    y += made.heading.height() + kRuleRoom * 0.4;
    double_rule(inner.x, y, inner.width);
    y += kRuleRoom * 0.6;
    made.text.draw(inner.x, y);
    y += made.text.height();
    const auto figure = [&](const std::optional<Picture>& picture, double width) {
      if (!picture) return;
      y += kBetween;
      note(picture->draw(canvas_, is_mirrored() ? inner.x + inner.width - width : inner.x, y, width));
      y += picture->height_at(width);
    };
    figure(pans, made.pans_width);
    figure(table, made.table_width);
  }

  void double_rule(double x, double y, double width) {
    set_ink(canvas_, kRuleLine);
    cairo_set_line_width(canvas_, 2.5);
    for (const double shift : {0.0, 6.0}) {
      cairo_move_to(canvas_, x, y + shift);
      cairo_rel_line_to(canvas_, width, 0);
    }
    cairo_stroke(canvas_);
  }

  // The title, and where in the lesson this scene stands.
  void foot() {
    const Lettering small{24, false, false, false, Align::kStart, 1.2, kDim};
    const double y = kHigh - kTopEdge - kFootHeight + 14;
    const double width = kWide - 2 * kSideEdge;
    const WordsBlock title(canvas_, tongue_, small, width - 200, document_.title);
    title.draw(is_mirrored() ? kSideEdge + 200 : kSideEdge, y, 0, std::min(1, title.line_count()));
    Lettering number = small;
    number.align = Align::kEnd;
    WordsBlock(canvas_, tongue_, number, 180, to_text(static_cast<int>(index_) + 1) + " / " + to_text(static_cast<int>(document_.scenes.size())))
        .draw(is_mirrored() ? kSideEdge : kSideEdge + width - 180, y);
  }

  static constexpr double kRuleRoom = 50;  // below the heading
  static constexpr double kBetween = 26;

  cairo_t* canvas_;
  const Document& document_;
  const Scene& scene_;
  std::size_t index_;
  const StillOptions& options_;
  Tongue tongue_;
  std::string fault_;
};

}  // namespace

Result<std::string> still_png(const Document& document, std::size_t scene, const StillOptions& options) {
  if (options.height < kLowestStill || options.height > kHighestStill) {
    return Error{ErrorCode::kBadArgument, "a still " + to_text(options.height) + " pixels high was asked for", "choose 1080 or 2160", {}};
  }
  if (scene >= document.scenes.size()) return Error{ErrorCode::kBadArgument, "the lesson has no scene " + to_text(static_cast<long long>(scene) + 1), "", {}};
  const int width = options.height * 16 / 9;
  const CairoSurface surface(cairo_image_surface_create(CAIRO_FORMAT_ARGB32, width, options.height));
  const CairoContext canvas(cairo_create(surface.get()));
  const double scale = options.height / kHigh;
  cairo_scale(canvas.get(), scale, scale);
  std::string fault = Still(canvas.get(), document, scene, options).draw();
  if (fault.empty()) fault = fault_of(canvas.get());
  if (!fault.empty()) return drawing_error("a still", fault);
  std::string bytes;
  const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), append_bytes, &bytes);
  if (status != CAIRO_STATUS_SUCCESS) return drawing_error("a still", cairo_status_to_string(status));
  return bytes;
}

}  // namespace cp
