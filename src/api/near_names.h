// SPDX-License-Identifier: Apache-2.0
// "Did you mean ...?"
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cp::api {

// Letters to insert, drop, change or swap with their neighbour to turn one word into the other.
int letters_apart(std::string_view from, std::string_view to);

// "did you mean check?" with the nearest names, up to three, if near enough to be meant; otherwise "<what>: a, b and c" with all names.
std::string name_hint(std::string_view word, const std::vector<std::string>& names, std::string_view what);

}  // namespace cp::api
