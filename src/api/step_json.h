// SPDX-License-Identifier: Apache-2.0
// One step of a path as JSON. Its keys are explained in docs/formats/path.md.
#pragma once

#include "api/json.h"
#include "path/path.h"

namespace cp::api {

Json step_json(const PathStep& at);

// The parts of a measure, without its cost.
Json measure_json(const Measure& measure);
// What a whole path asks of a person.
Json path_measure_json(const Path& path);
// Where a path stopped, and why. Precondition: it is not solved.
Json stuck_json(const Path& path);

}  // namespace cp::api
