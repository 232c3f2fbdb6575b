// SPDX-License-Identifier: Apache-2.0
// An SVG of the export room, drawn on a canvas.
#pragma once

#include <string>

#include "print/drawing.h"

typedef struct _RsvgHandle RsvgHandle;

namespace cp {

class Picture {
 public:
  // The text comes from our own writers; an error is our fault.
  static Result<Picture> from_svg(std::string svg);

  [[nodiscard]] double width() const { return width_; }
  [[nodiscard]] double height() const { return height_; }
  // The height when it is drawn so wide.
  [[nodiscard]] double height_at(double width) const { return width * height_ / width_; }

  // Fills the width at (x, y). An empty result is success.
  [[nodiscard]] std::string draw(cairo_t* canvas, double x, double y, double width) const;

 private:
  using Handle = std::unique_ptr<RsvgHandle, Releases<g_object_unref>>;
  Picture(Handle handle, double width, double height) : handle_(std::move(handle)), width_(width), height_(height) {}

  Handle handle_;
  double width_;
  double height_;
};

}  // namespace cp
