// SPDX-License-Identifier: Apache-2.0
// A board as SVG text. Same figure, same text: attributes in fixed order, at most two decimals, generic fonts.
#pragma once

#include <string>
#include <string_view>

#include "lesson/figure.h"

namespace cp {

enum class SvgUse {
  kFile,    // stands alone: brings its own colours (light, fit for print)
  kInline,  // part of a page that brings the colours (page_html.h)
};

// `id` starts every id inside the SVG, so that several fit on one page; letters, digits and '-' only.
std::string board_svg(const Figure& figure, SvgUse use, std::string_view id);

}  // namespace cp
