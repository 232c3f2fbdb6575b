// SPDX-License-Identifier: Apache-2.0
// The two pans of a request.
#pragma once

#include <string>
#include <vector>

#include "api/answer.h"
#include "balance/weighing.h"

namespace cp::api {

struct Pans {
  std::vector<Weight> weights;
  Answer fault;  // set when the pans cannot be read; its field is "left" or "right", and places count in that text

  [[nodiscard]] bool is_ok() const { return fault.is_ok(); }
};

// Reads both pans. Either may be empty; what lies in both takes each other away. Fault: unknown houses.
Pans read_pans(const Shape& shape, const std::string& left, const std::string& right);

// The same for a balance that has to say something: an empty pan and pans that take each other away altogether are
// faults, too.
Pans read_full_pans(const Shape& shape, const std::string& left, const std::string& right);

}  // namespace cp::api
