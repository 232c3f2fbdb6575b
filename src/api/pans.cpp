// SPDX-License-Identifier: Apache-2.0
#include "api/pans.h"

#include "base/text.h"

namespace cp::api {

namespace {

std::string_view field_of(bool is_left) { return is_left ? "left" : "right"; }

}  // namespace

Pans read_pans(const Shape& shape, const std::string& left, const std::string& right) {
  Pans pans;
  for (const bool is_left : {true, false}) {
    const auto pan = parse_pan(shape, is_left ? left : right, is_left);
    if (!pan) {
      pans.fault = refuse(pan.error(), std::string(field_of(is_left)));
      return pans;
    }
    pans.weights.insert(pans.weights.end(), pan->begin(), pan->end());
  }
  return pans;
}

Pans read_full_pans(const Shape& shape, const std::string& left, const std::string& right) {
  for (const bool is_left : {true, false}) {
    if (!trimmed(is_left ? left : right).empty()) continue;
    Pans pans;
    pans.fault = refuse(Error{ErrorCode::kBadArgument, "the " + std::string(field_of(is_left)) + " pan is empty",
                              "name at least one house on each side, as in r1,r2 against c1,c2", {}},
                        std::string(field_of(is_left)));
    return pans;
  }
  Pans pans = read_pans(shape, left, right);
  if (pans.is_ok() && cp::weigh(Position(shape), pans.weights).weights.empty()) {
    pans.fault = refuse(Error{ErrorCode::kBadArgument, "both pans hold the same houses, so nothing is left to weigh", "change a house on one side", {}}, "right");
  }
  return pans;
}

}  // namespace cp::api
