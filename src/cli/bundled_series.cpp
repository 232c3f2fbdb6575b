// SPDX-License-Identifier: Apache-2.0
#include "cli/bundled_series.h"

#include <array>
#include <string_view>

namespace cp::cli {

namespace {

struct BundledText {
  std::string_view name;  // of the file in data/series
  std::string_view text;
};

// A file that cp_bundled_series of cmake/rooms.cmake writes, in the order of the names.
constexpr auto kTexts = std::to_array<BundledText>({
#include CP_BUNDLED_SERIES
});

}  // namespace

api::SeriesRequest bundled_series() {
  static constexpr std::string_view kLesson = ".lesson";
  api::SeriesRequest request;
  for (const BundledText& each : kTexts) {
    if (each.name.ends_with(kLesson)) {
      request.lessons.push_back({std::string(each.name.substr(0, each.name.size() - kLesson.size())), std::string(each.text)});
    } else {
      request.about = each.text;
    }
  }
  return request;
}

}  // namespace cp::cli
