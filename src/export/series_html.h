// SPDX-License-Identifier: Apache-2.0
// The page that leads to the lessons of a series: what each needs and teaches, and which technique occurs where.
#pragma once

#include <string>
#include <vector>

#include "lesson/series.h"

namespace cp {

// Each lesson is taken to be in a folder of its name beside the page. One file, no script, nothing from outside.
std::string series_html(const SeriesAbout& about, const std::vector<SeriesMember>& members, const SeriesPlan& plan);

}  // namespace cp
