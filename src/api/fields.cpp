// SPDX-License-Identifier: Apache-2.0
#include "api/fields.h"

#include <algorithm>
#include <limits>

#include "api/near_names.h"

namespace cp::api {

namespace {

// What a value is, as a person says it.
std::string kind_of(const Json& value) {
  if (value.is_string()) return "a text";
  if (value.is_boolean()) return "true or false";
  if (value.is_number_integer()) return "a whole number";
  if (value.is_number()) return "a number with a fraction";
  if (value.is_array()) return "a list";
  return value.is_null() ? "null" : "an object";
}

}  // namespace

Fields::Fields(const Json& request) : request_(request) {}

const Json* Fields::look_up(std::string_view name) {
  known_.emplace_back(name);
  const auto found = request_.find(std::string(name));
  return found == request_.end() ? nullptr : &*found;
}

void Fields::complain(std::string_view name, std::string message, std::string hint) {
  if (!fault_) fault_ = refuse(Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {}}, std::string(name));
}

std::string Fields::text(std::string_view name, std::optional<std::string> fallback) {
  const Json* value = look_up(name);
  if (value == nullptr) {
    if (fallback) return *fallback;
    complain(name, "the field '" + std::string(name) + "' is missing", "add \"" + std::string(name) + "\": \"...\"");
    return {};
  }
  if (const auto* text = value->get_ptr<const Json::string_t*>()) return *text;
  complain(name, "the field '" + std::string(name) + "' is " + kind_of(*value), "give a text in quotes");
  return {};
}

bool Fields::flag(std::string_view name, bool fallback) {
  const Json* value = look_up(name);
  if (value == nullptr) return fallback;
  if (const auto* flag = value->get_ptr<const Json::boolean_t*>()) return *flag;
  complain(name, "the field '" + std::string(name) + "' is " + kind_of(*value), "give true or false");
  return fallback;
}

int Fields::number(std::string_view name, int fallback) {
  const Json* value = look_up(name);
  if (value == nullptr) return fallback;
  if (value->is_number_integer()) {
    const bool too_large = value->is_number_unsigned() && value->get<std::uint64_t>() > static_cast<std::uint64_t>(std::numeric_limits<int>::max());
    const auto number = too_large ? std::int64_t{-1} : value->get<std::int64_t>();
    if (number >= 0 && number <= std::numeric_limits<int>::max()) return static_cast<int>(number);
    complain(name, "the field '" + std::string(name) + "' is out of range", "give a small whole number, 0 or more");
    return fallback;
  }
  complain(name, "the field '" + std::string(name) + "' is " + kind_of(*value), "give a whole number");
  return fallback;
}

std::optional<int> Fields::number_if_there(std::string_view name) {
  if (look_up(name) == nullptr) return std::nullopt;
  return number(name, 0);
}

std::vector<std::string> Fields::texts(std::string_view name) {
  std::vector<std::string> list;
  const Json* value = look_up(name);
  if (value == nullptr) return list;
  bool all_texts = value->is_array();
  for (std::size_t i = 0; all_texts && i < value->size(); ++i) {
    const auto* text = (*value)[i].get_ptr<const Json::string_t*>();
    all_texts = text != nullptr;
    if (all_texts) list.push_back(*text);
  }
  if (!all_texts) complain(name, "the field '" + std::string(name) + "' is not a list of texts", "give a list, as in [\"x-wing\"]");
  return list;
}

std::optional<Answer> Fields::finish() {
  for (const auto& [name, value] : request_.items()) {
    if (std::find(known_.begin(), known_.end(), name) != known_.end()) continue;
    if (!fault_) fault_ = refuse(Error{ErrorCode::kBadArgument, "there is no field '" + name + "' here", name_hint(name, known_, "the fields are"), {}}, name);
  }
  return std::move(fault_);
}

}  // namespace cp::api
