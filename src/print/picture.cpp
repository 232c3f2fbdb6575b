// SPDX-License-Identifier: Apache-2.0
#include "print/picture.h"

#include <librsvg/rsvg.h>

namespace cp {

namespace {

// Generic families mean another font on every machine; the one that comes with the program's packages is asked for first.
void name_fonts(std::string& svg) {
  for (const auto& [generic, named] : {std::pair<std::string, std::string>{"px sans-serif", "px 'DejaVu Sans',sans-serif"}, {"px serif", "px 'DejaVu Serif',serif"}}) {
    for (auto at = svg.find(generic); at != std::string::npos; at = svg.find(generic, at + named.size())) svg.replace(at, generic.size(), named);
  }
}

std::string words_of(GError* error) {
  std::string words = error == nullptr ? "unknown reason" : error->message;
  g_clear_error(&error);
  return words;
}

}  // namespace

Result<Picture> Picture::from_svg(std::string svg) {
  name_fonts(svg);
  GError* error = nullptr;
  Handle handle(rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(svg.data()), svg.size(), &error));
  if (handle == nullptr) return drawing_error("a figure", words_of(error));
  double width = 0;
  double height = 0;
  if (rsvg_handle_get_intrinsic_size_in_pixels(handle.get(), &width, &height) == 0 || width <= 0 || height <= 0) {
    return drawing_error("a figure", "it has no size");
  }
  return Picture(std::move(handle), width, height);
}

std::string Picture::draw(cairo_t* canvas, double x, double y, double width) const {
  const RsvgRectangle place{x, y, width, height_at(width)};
  GError* error = nullptr;
  if (rsvg_handle_render_document(handle_.get(), canvas, &place, &error) != 0) return {};
  return words_of(error);
}

}  // namespace cp
