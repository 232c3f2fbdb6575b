// SPDX-License-Identifier: Apache-2.0
// Writing XML and HTML by hand, safely: every text and attribute passes through escaped().
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

namespace cp {

// The text with & < > " ' as entities.
std::string escaped(std::string_view text);

// Grows a piece of markup. Attributes come out in the order given.
class Markup {
 public:
  using Attributes = std::initializer_list<std::pair<std::string_view, std::string>>;

  // `<name a="b">`, `</name>`, `<name a="b"/>`, `<name a="b">text</name>`.
  void open(std::string_view name, Attributes attributes = {});
  void close(std::string_view name);
  void empty(std::string_view name, Attributes attributes);
  void element(std::string_view name, Attributes attributes, std::string_view text);
  // As it is: for markup made elsewhere.
  void raw(std::string_view markup) { text_.append(markup); }

  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  void tag(std::string_view name, Attributes attributes, std::string_view end);
  std::string text_;
};

}  // namespace cp
