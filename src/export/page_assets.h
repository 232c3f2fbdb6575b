// SPDX-License-Identifier: Apache-2.0
// The fixed parts of a lesson page: style, script, and the content policy that allows these two and nothing else.
#pragma once

#include <string>
#include <string_view>

namespace cp {

std::string page_style();        // includes svg_rules(kInline)
std::string_view page_script();

// SHA-256 of the two, base64, as the content policy wants them.
std::string page_style_hash();
std::string page_script_hash();

}  // namespace cp
