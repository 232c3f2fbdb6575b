// SPDX-License-Identifier: Apache-2.0
#include "export/markup.h"

namespace cp {

std::string escaped(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (const char letter : text) {
    switch (letter) {
      case '&': safe += "&amp;"; break;
      case '<': safe += "&lt;"; break;
      case '>': safe += "&gt;"; break;
      case '"': safe += "&quot;"; break;
      case '\'': safe += "&#39;"; break;
      default: safe += letter;
    }
  }
  return safe;
}

void Markup::tag(std::string_view name, Attributes attributes, std::string_view end) {
  text_.append("<").append(name);
  for (const auto& [key, value] : attributes) text_.append(" ").append(key).append("=\"").append(escaped(value)).append("\"");
  text_.append(end);
}

void Markup::open(std::string_view name, Attributes attributes) { tag(name, attributes, ">"); }

void Markup::close(std::string_view name) { text_.append("</").append(name).append(">\n"); }

void Markup::empty(std::string_view name, Attributes attributes) { tag(name, attributes, "/>\n"); }

void Markup::element(std::string_view name, Attributes attributes, std::string_view text) {
  tag(name, attributes, ">");
  text_.append(escaped(text));
  close(name);
}

}  // namespace cp
