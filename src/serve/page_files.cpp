// SPDX-License-Identifier: Apache-2.0
#include "serve/page_files.h"

#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string_view>

namespace cp::serve {

namespace {

struct KnownType {
  std::string_view ending;
  std::string_view type;
};

constexpr std::array<KnownType, 8> kTypes = {{{".html", "text/html; charset=utf-8"},
                                             {".js", "text/javascript; charset=utf-8"},
                                             {".css", "text/css; charset=utf-8"},
                                             {".svg", "image/svg+xml"},
                                             {".png", "image/png"},
                                             {".json", "application/json"},
                                             {".woff2", "font/woff2"},
                                             {".wasm", "application/wasm"}}};

std::string_view type_of(std::string_view name) {
  for (const KnownType& known : kTypes) {
    if (name.ends_with(known.ending)) return known.type;
  }
  return {};
}

}  // namespace

Result<PageFiles> read_page(const std::string& folder) {
  namespace fs = std::filesystem;
  PageFiles files;
  std::size_t total = 0;
  std::error_code trouble;
  for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble)) {
    const std::string name = at->path().filename().string();
    const std::string_view type = type_of(name);
    std::error_code no_size;
    if (type.empty() || !at->is_regular_file(no_size)) continue;
    total += static_cast<std::size_t>(at->file_size(no_size));
    if (no_size || total > kMostPageBytes) {
      return Error{ErrorCode::kLimit, "the files in '" + folder + "' are larger than any page of ours", "name the folder that holds index.html and nothing else", {}};
    }
    std::ifstream stream(at->path(), std::ios::binary);
    files["/" + name] = PageFile{std::string(type), std::string(std::istreambuf_iterator<char>(stream), {})};
  }
  const auto index = files.find("/index.html");
  if (index == files.end()) {
    return Error{ErrorCode::kNotFound, "there is no page in '" + folder + "': index.html is missing", "build it with ./run desk", {}};
  }
  files["/"] = index->second;
  return files;
}

}  // namespace cp::serve
