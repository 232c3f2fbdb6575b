// SPDX-License-Identifier: Apache-2.0
#include "export/page_head.h"

#include "export/page_assets.h"

namespace cp {

void page_head(Markup& out, const PageHead& head) {
  out.raw("<!DOCTYPE html>\n<html lang=\"" + escaped(head.language) + "\"" + (head.is_right_to_left ? " dir=\"rtl\"" : "") + ">\n<head>\n<meta charset=\"utf-8\">\n");
  // The policy is made of fixed text; its quotes have to stay quotes.
  out.raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-" + page_style_hash() + "'" + head.policy +
          "; base-uri 'none'; form-action 'none'\">\n");
  out.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n");
  out.element("title", {}, head.title);
  out.raw("<style>" + page_style() + "</style>\n</head>\n");
}

}  // namespace cp
