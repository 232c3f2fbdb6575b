// SPDX-License-Identifier: Apache-2.0
// The drawing of a board without its frame, so that it can stand alone or beside the pans.
#pragma once

#include <string_view>

#include "export/markup.h"
#include "lesson/figure.h"

namespace cp {

struct DrawingSize {
  int width = 0;
  int height = 0;
};

DrawingSize board_size(const Figure& figure);
void draw_board(Markup& out, const Figure& figure, std::string_view id);

}  // namespace cp
