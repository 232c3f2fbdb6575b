// SPDX-License-Identifier: Apache-2.0
// The words of a plan, for its reader and its writer.
#pragma once

#include <array>
#include <string_view>

namespace cp::detail {

inline constexpr int kNoMost = 999;  // a bound that is none

inline constexpr std::array<std::string_view, 3> kKindNames = {"row", "column", "box"};
// In the order of Look::Region (but the last, which is named by houses) and of Symmetry.
inline constexpr std::array<std::string_view, 4> kRegionNames = {"left", "right", "cancelled", "outside"};
inline constexpr std::array<std::string_view, 6> kSymmetryNames = {"half-turn", "quarter-turn", "left-right", "top-bottom", "diagonal", "antidiagonal"};

}  // namespace cp::detail
