// SPDX-License-Identifier: Apache-2.0
// Words for an audience.
#pragma once

#include <string>

namespace cp {

// A few sentences of plain text (no markup; any character may occur).
struct Paragraph {
  std::string text;
  std::string term;  // the word that this paragraph explains, as it stands in the text; empty if none
};

}  // namespace cp
