// SPDX-License-Identifier: Apache-2.0
// What a request to the page server is answered: text in, text out, no sockets. Strict on purpose: only browsers on this
// machine ask, and only for the few files of the page.
#pragma once

#include <string>
#include <string_view>

#include "serve/page_files.h"

namespace cp::serve {

// A longer head is refused (431). Browsers send about 1 KiB.
inline constexpr std::size_t kMostHeadBytes = std::size_t{8} << 10;

struct PageAnswer {
  int status = 200;
  std::string head;       // status line and headers, with the empty line
  std::string_view body;  // lives as long as the files; empty for HEAD
};

// Answers one request head: everything up to and with the empty line. In this order:
//   400 not HTTP/1.x, a bad header line, Host missing or twice    421 Host is another one than ours (DNS rebinding)
//   403 Origin is another one than ours                           411 a body of unknown length (chunked)
//   413 a body                                                    405 neither GET nor HEAD
//   404 no such file; paths are compared whole and never decoded  200 the file
PageAnswer answer_page(std::string_view head, int port, const PageFiles& files);

// For requests that never became whole: 408 too slow, 431 too long.
PageAnswer refuse_page(int status);

}  // namespace cp::serve
