// SPDX-License-Identifier: Apache-2.0
// Is a text well-formed XML? Enough of the rules for what we write: nesting, quotes, entities, one root.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cp::support {

// The first fault, or an empty text.
inline std::string xml_fault(std::string_view text) {
  std::vector<std::string> open;
  bool had_root = false;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] == '&') {
      const auto end = text.find(';', at);
      if (end == std::string_view::npos || end - at > 8) return "bare & at " + std::to_string(at);
    }
    if (text[at] == '>') return "bare > at " + std::to_string(at);
    if (text[at] != '<') {
      ++at;
      continue;
    }
    auto end = at + 1;
    char quote = 0;
    for (; end < text.size() && (quote != 0 || text[end] != '>'); ++end) {
      if (quote == 0 && (text[end] == '"' || text[end] == '\'')) {
        quote = text[end];
      } else if (text[end] == quote) {
        quote = 0;
      }
      if (text[end] == '<') return "< inside a tag at " + std::to_string(end);
    }
    if (end >= text.size()) return "a tag without end at " + std::to_string(at);
    const std::string_view tag = text.substr(at + 1, end - at - 1);
    const std::string name(tag.substr(0, tag.find_first_of(" />", 1)));
    if (tag[0] == '/') {
      if (open.empty() || open.back() != tag.substr(1)) return "</" + std::string(tag.substr(1)) + "> does not match";
      open.pop_back();
    } else if (tag.back() != '/') {
      if (open.empty() && had_root) return "a second root <" + name + ">";
      had_root = true;
      open.push_back(name);
    }
    at = end + 1;
  }
  return open.empty() && had_root ? "" : "something stays open";
}

}  // namespace cp::support
