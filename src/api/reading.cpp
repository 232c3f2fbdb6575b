// SPDX-License-Identifier: Apache-2.0
#include "api/reading.h"

#include "grid/notation.h"

namespace cp::api {

bool is_puzzle(std::string_view text) { return parse_position(text).is_ok(); }

Result<bool> try_puzzle(std::string_view text) {
  const auto position = parse_position(text);
  if (!position) return position.error();
  return true;
}

}  // namespace cp::api
