// SPDX-License-Identifier: Apache-2.0
// The built page: a handful of files, read once and kept, so that no request ever touches a path.
#pragma once

#include <map>
#include <string>

#include "base/result.h"

namespace cp::serve {

struct PageFile {
  std::string type;  // "text/html; charset=utf-8"
  std::string bytes;
};

// By the path of a request: "/", "/desk.js".
using PageFiles = std::map<std::string, PageFile, std::less<>>;

// Reads the files that lie directly in the folder and whose endings are known; index.html is "/" too. Everything else
// there is left alone. Errors: kNotFound without an index.html, kLimit above kMostPageBytes.
Result<PageFiles> read_page(const std::string& folder);

inline constexpr std::size_t kMostPageBytes = std::size_t{32} << 20;

}  // namespace cp::serve
