// SPDX-License-Identifier: Apache-2.0
// A lesson on paper. The handout: the puzzle large with room for notes, then the argument scene by scene, the answers to the
// exercises and the solution on pages of their own. The worksheet: the puzzle and the exercises alone.
#pragma once

#include <string>

#include "base/result.h"
#include "lesson/document.h"

namespace cp {

enum class Paper { kA4, kLetter };

struct HandoutOptions {
  Paper paper = Paper::kA4;
  bool is_worksheet = false;  // neither argument nor answers
};

// The bytes of a PDF 1.5: tagged, with bookmarks, fonts embedded, a fixed date.
Result<std::string> handout_pdf(const Document& document, const HandoutOptions& options = {});

}  // namespace cp
