// SPDX-License-Identifier: Apache-2.0
// A balance as SVG: two pans on a beam, alone or beside the board.
#pragma once

#include <string>
#include <string_view>

#include "export/board_svg.h"
#include "lesson/figure.h"

namespace cp {

// The pans alone.
std::string pans_svg(const PanPicture& picture, SvgUse use, std::string_view id);

// The tally as a small ledger: one column a digit.
std::string tally_svg(const TallyTable& table, SvgUse use, std::string_view id);

// The board with the pans and the tally to its right, in one picture for a handout (always with its own colours).
std::string balance_svg(const Figure& board, const PanPicture& pans, const TallyTable& table, std::string_view id);

}  // namespace cp
