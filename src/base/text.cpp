// SPDX-License-Identifier: Apache-2.0
#include "base/text.h"

#include <array>
#include <charconv>

namespace cp {

std::string to_text(long long number) {
  std::array<char, 24> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number).ptr;
  return {buffer.data(), end};
}

std::string spoken_number(int number) {
  static constexpr std::array<std::string_view, 13> kWords = {"no",  "one",   "two",   "three", "four", "five",  "six",
                                                              "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  if (number >= 0 && number < static_cast<int>(kWords.size())) return std::string(kWords[static_cast<std::size_t>(number)]);
  return to_text(number);
}

std::string counted(int number, std::string_view noun, std::string_view plural) {
  std::string text = spoken_number(number) + " ";
  if (number == 1) return text.append(noun);
  if (!plural.empty()) return text.append(plural);
  return text.append(noun).append("s");
}

std::string listed(const std::vector<std::string>& items, std::string_view last_word) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0 && i + 1 == items.size()) {
      text.append(" ").append(last_word).append(" ");
    } else if (i > 0) {
      text.append(", ");
    }
    text.append(items[i]);
  }
  return text;
}

std::string joined(const std::vector<std::string>& items, std::string_view separator) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text.append(separator);
    text.append(items[i]);
  }
  return text;
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlank = " \t\r\n\f\v";
  const auto first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  if (trimmed(text).empty()) return parts;
  while (true) {
    const auto end = text.find(separator);
    parts.emplace_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

}  // namespace cp
