// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "api/near_names.h"
#include "exact/grid_count.h"
#include "grid/shape.h"

namespace cp::api {

Answer count(const CountRequest& request) {
  const Shape* shape = find_shape(request.shape);
  if (shape == nullptr) {
    std::vector<std::string> names;
    for (const Shape* known : all_shapes()) names.emplace_back(known->name());
    return refuse(Error{ErrorCode::kBadName, "'" + request.shape + "' is not a shape", name_hint(request.shape, names, "the shapes are"), {0, request.shape.size(), 1, 1}},
                  "shape");
  }
  const auto grids = count_grids(*shape);
  if (!grids) return refuse(grids.error(), "shape");
  Answer answer;
  answer.json["shape"] = shape->name();
  answer.json["grids"] = *grids;
  return answer;
}

}  // namespace cp::api
