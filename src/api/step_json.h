// SPDX-License-Identifier: Apache-2.0
// One step of a path as JSON. Its keys are explained in docs/formats/path.md.
#pragma once

#include "api/json.h"
#include "path/path.h"

namespace cp::api {

Json step_json(const PathStep& at);

}  // namespace cp::api
