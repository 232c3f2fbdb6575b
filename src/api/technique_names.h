// SPDX-License-Identifier: Apache-2.0
// Names of techniques, families and groups in requests.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "api/answer.h"

namespace cp::api {

// Error kBadName for the first of the names that means nothing, with near names as a hint; `field` is where it stood.
std::optional<Answer> unknown_technique(std::string_view field, const std::vector<std::string>& names);

}  // namespace cp::api
