// SPDX-License-Identifier: Apache-2.0
// Captions and chapters as WebVTT (W3C, "WebVTT: The Web Video Text Tracks Format"). See docs/formats/lesson_files.md.
#pragma once

#include <string>

#include "lesson/document.h"

namespace cp {

// The words of the lesson in cues of at most two lines of 42 characters; each cue lasts as its words deserve.
std::string captions_vtt(const Document& document);

// One cue a scene, its heading as text.
std::string chapters_vtt(const Document& document);

}  // namespace cp
