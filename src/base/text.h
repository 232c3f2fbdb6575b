// SPDX-License-Identifier: Apache-2.0
// Small text helpers. Locale plays no part in any of them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cp {

// The decimal digits of a number.
std::string to_text(long long number);

// "one", "two" ... "twelve", then digits: how a person says a small number.
std::string spoken_number(int number);

// "1 cell", "2 cells": number and noun, the plural made with `plural` or by adding an s.
std::string counted(int number, std::string_view noun, std::string_view plural = {});

// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& items, std::string_view last_word = "and");

// Items with a separator between them.
std::string joined(const std::vector<std::string>& items, std::string_view separator);

// The same text with its first letter a capital (ASCII only).
std::string capitalised(std::string text);

// Without white space at both ends.
std::string_view trimmed(std::string_view text);

// Parts between separators, each trimmed; an empty text gives no parts.
std::vector<std::string> split(std::string_view text, char separator);

}  // namespace cp
