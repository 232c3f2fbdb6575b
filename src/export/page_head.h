// SPDX-License-Identifier: Apache-2.0
// How every page of ours begins.
#pragma once

#include <string>

#include "export/markup.h"

namespace cp {

struct PageHead {
  std::string title;
  std::string language;        // BCP 47, "en"
  bool is_right_to_left = false;
  std::string policy;          // what the content policy allows beside page_style(): "; script-src ..."; fixed text, not escaped
};

// Everything up to </head>: content policy, viewport, title and page_style().
void page_head(Markup& out, const PageHead& head);

}  // namespace cp
