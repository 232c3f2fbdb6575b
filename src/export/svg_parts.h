// SPDX-License-Identifier: Apache-2.0
// What all pictures share: the frame with title and description, the colours, the hatchings.
#pragma once

#include <string>
#include <string_view>

#include "export/board_svg.h"
#include "export/markup.h"

namespace cp {

struct SvgFrame {
  int width = 0;
  int height = 0;
  std::string title;
  std::string description;
};

// Opens <svg> with <title>, <desc>, hatchings (ids `id`-l, -r, -x) and, for files, the style. The caller adds the
// drawing and closes with svg_end().
void svg_begin(Markup& out, const SvgFrame& frame, SvgUse use, std::string_view id);
void svg_end(Markup& out);

// The hatchings alone, for a drawing placed inside another one.
void svg_hatchings(Markup& out, std::string_view id);

// The rules for the classes that drawings use; colours as var(--name) for pages, as plain values for files.
std::string svg_rules(SvgUse use);

// "url(#id-l)".
std::string hatching(std::string_view id, char which);

}  // namespace cp
