// SPDX-License-Identifier: Apache-2.0
// What is said of an idea by its id: a technique of the catalogue, or "balance".
#pragma once

#include <string>
#include <string_view>

#include "deduce/technique.h"
#include "path/measure.h"

namespace cp {

// Its name in a sentence; what is no technique is said as it stands.
inline std::string shown(std::string_view id) {
  const Technique* technique = technique_or_null(id);
  return std::string(technique != nullptr ? technique->name : id);
}

// The least that a step of it costs.
inline int cost_of(std::string_view id) {
  const Technique* technique = technique_or_null(id);
  return technique != nullptr ? technique->cost : kLeastBalanceCost;
}

}  // namespace cp
