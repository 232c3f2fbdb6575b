// SPDX-License-Identifier: Apache-2.0
#include "api/near_names.h"

#include <algorithm>

#include "base/text.h"

namespace cp::api {

namespace {

constexpr std::size_t kLongestWord = 40;  // longer words are not slips of a key
constexpr std::size_t kMostNames = 3;

}  // namespace

int letters_apart(std::string_view from, std::string_view to) {
  // Optimal string alignment: Damerau, "A technique for computer detection and correction of spelling errors", 1964.
  const std::size_t width = to.size() + 1;
  std::vector<int> table((from.size() + 1) * width);
  const auto at = [&](std::size_t i, std::size_t j) -> int& { return table[i * width + j]; };
  for (std::size_t i = 0; i <= from.size(); ++i) at(i, 0) = static_cast<int>(i);
  for (std::size_t j = 0; j <= to.size(); ++j) at(0, j) = static_cast<int>(j);
  for (std::size_t i = 1; i <= from.size(); ++i) {
    for (std::size_t j = 1; j <= to.size(); ++j) {
      const int change = from[i - 1] == to[j - 1] ? 0 : 1;
      at(i, j) = std::min({at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + change});
      if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1]) at(i, j) = std::min(at(i, j), at(i - 2, j - 2) + 1);
    }
  }
  return at(from.size(), to.size());
}

std::string name_hint(std::string_view word, const std::vector<std::string>& names, std::string_view what) {
  std::vector<std::pair<int, std::string>> near;
  if (!word.empty() && word.size() <= kLongestWord) {
    for (const std::string& name : names) {
      const int apart = letters_apart(word, name);
      const bool begins = word.size() >= 3 && name.starts_with(word);
      if (begins || apart <= std::max<int>(1, static_cast<int>(std::max(word.size(), name.size())) / 3)) near.emplace_back(apart, name);
    }
  }
  std::stable_sort(near.begin(), near.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  // Only the nearest, and what begins like the word: with many names there is always something further off.
  const int nearest = near.empty() ? 0 : near.front().first;
  std::erase_if(near, [&](const auto& each) { return each.first > nearest && !(word.size() >= 3 && each.second.starts_with(word)); });
  if (near.size() > kMostNames) near.resize(kMostNames);
  if (near.empty()) return std::string(what) + ": " + listed(names);
  std::vector<std::string> likely;
  for (const auto& [apart, name] : near) likely.push_back(name);
  return "did you mean " + listed(likely, "or") + "?";
}

}  // namespace cp::api
