// SPDX-License-Identifier: Apache-2.0
// What a request to the page server is answered: text in, text out, no sockets. Strict on purpose: only browsers on this
// machine ask, and only for the few files of the page.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "serve/page_files.h"

namespace cp::serve {

// A longer head is refused (431). Browsers send about 1 KiB.
inline constexpr std::size_t kMostHeadBytes = std::size_t{8} << 10;

// A longer body is refused (413): the longest lesson, and room to spare.
inline constexpr std::size_t kMostBodyBytes = std::size_t{3} << 20;

struct PageAnswer {
  int status = 200;
  std::string head;       // status line and headers, with the empty line
  std::string_view body;  // of a file; lives as long as the files; empty for HEAD
  std::string own_body;   // of a desk door, in place of `body`
};

// What the page asks beyond its files, when the program offers such a thing.
struct DoorRequest {
  std::string_view method;         // GET, HEAD, PUT or POST
  std::string_view path;           // as it came, without what follows '?'
  std::string_view query;          // what follows '?'; never decoded here
  std::string_view if_match;       // values of these headers; empty when they are not there
  std::string_view if_none_match;
  std::string_view body;
};
struct DoorReply {
  int status = 200;
  std::string type = "application/json";
  std::string body = {};
  std::string tag = {};  // ETag without its quotes; empty: none
};
// Nothing: the path is none of its own. It is called between other requests on the only thread: no reply may take long.
using DeskDoor = std::function<std::optional<DoorReply>(const DoorRequest& request)>;

// How many bytes follow the head. With a door PUT and POST may have a body of a known, bounded length; otherwise none.
// A head that will be refused has none.
std::size_t body_bytes_after(std::string_view head, int port, bool has_door);

// Answers one request: its head, everything up to and with the empty line, and the body that body_bytes_after() asked for.
// In this order:
//   400 not HTTP/1.x, a bad header line, Host missing or twice    421 Host is another one than ours (DNS rebinding)
//   403 Origin is another one than ours, or missing with PUT and POST
//   411 a body of unknown length (chunked, no Content-Length)     413 a body that is not wanted or too long
//   405 neither GET nor HEAD (nor, with a door, PUT or POST)      what the door says of its own paths
//   404 no such file; paths are compared whole and never decoded  200 the file
PageAnswer answer_page(std::string_view head, int port, const PageFiles& files, const DeskDoor& door = {}, std::string_view body = {});

// For requests that never became whole: 408 too slow, 431 too long.
PageAnswer refuse_page(int status);

}  // namespace cp::serve
