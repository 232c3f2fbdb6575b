// SPDX-License-Identifier: Apache-2.0
#include "api/technique_names.h"

#include <algorithm>

#include "api/near_names.h"
#include "path/selection.h"

namespace cp::api {

std::optional<Answer> unknown_technique(std::string_view field, const std::vector<std::string>& names) {
  const std::vector<std::string> known = technique_names();
  for (const std::string& name : names) {
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    return refuse(Error{ErrorCode::kBadName, "'" + name + "' is not a technique", name_hint(name, known, "the techniques and their families are"), {0, name.size(), 1, 1}},
                  std::string(field));
  }
  return std::nullopt;
}

}  // namespace cp::api
