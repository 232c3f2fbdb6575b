// SPDX-License-Identifier: Apache-2.0
// What cairo 1.16 leaves out of a PDF and readers for the blind need: the language, descriptions of figures, one root for
// the structure. Added as an incremental update (ISO 32000-1, 7.5.6): the bytes cairo wrote stay as they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

// `descriptions`: one for each piece of structure of the kind Figure, in the order they were begun.
Result<std::string> finished_pdf(std::string pdf, std::string_view language, const std::vector<std::string>& descriptions);

// A text string of PDF: UTF-16 with a byte order mark, in hexadecimal.
std::string pdf_text(std::string_view utf8);

}  // namespace cp
