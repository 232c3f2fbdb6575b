// SPDX-License-Identifier: Apache-2.0
// The JSON type of the door: keys stay in the order in which they were written, so that answers are the same bytes
// everywhere.
#pragma once

#include <nlohmann/json.hpp>

namespace cp {

using Json = nlohmann::ordered_json;

}  // namespace cp
