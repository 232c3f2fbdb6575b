// SPDX-License-Identifier: Apache-2.0
// The series of data/series, which travels inside the program, so that no path has to be right.
#pragma once

#include "api/commands.h"

namespace cp::cli {

api::SeriesRequest bundled_series();

}  // namespace cp::cli
