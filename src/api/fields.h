// SPDX-License-Identifier: Apache-2.0
// Reads the fields of a request strictly: wrong kinds and unknown names are errors, not guesses.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "api/answer.h"

namespace cp::api {

// Ask for every field the command knows, then finish(). The first fault is kept; what is read after it means nothing.
class Fields {
 public:
  // The request must outlive this object.
  explicit Fields(const Json& request);

  // A text; `fallback` when the field is absent. Without fallback the field is required.
  std::string text(std::string_view name, std::optional<std::string> fallback = std::nullopt);
  bool flag(std::string_view name, bool fallback);
  int number(std::string_view name, int fallback);
  std::optional<int> number_if_there(std::string_view name);
  std::vector<std::string> texts(std::string_view name);
  [[nodiscard]] bool has(std::string_view name) const { return request_.contains(std::string(name)); }

  // The fault, if there was one; a field that was never asked for is one.
  [[nodiscard]] std::optional<Answer> finish();

 private:
  const Json* look_up(std::string_view name);
  void complain(std::string_view name, std::string message, std::string hint);

  const Json& request_;
  std::vector<std::string> known_{"command"};
  std::optional<Answer> fault_;
};

}  // namespace cp::api
