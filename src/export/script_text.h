// SPDX-License-Identifier: Apache-2.0
// The lesson as plain text: a script to read from, a chapter list, a short description. See docs/formats/lesson_files.md.
#pragma once

#include <string>

#include "lesson/document.h"

namespace cp {

// CommonMark: each scene with its time, the words, the notes, questions and answers, and what stands on the board.
std::string script_markdown(const Document& document);

// One line a scene: "0:00 The puzzle". The first stands at 0:00, as film sites want it.
std::string chapter_list(const Document& document);

// A few lines to go with a film or a post: title, what it teaches, the puzzle, the chapters.
std::string description_text(const Document& document);

}  // namespace cp
