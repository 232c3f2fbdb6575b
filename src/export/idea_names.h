// SPDX-License-Identifier: Apache-2.0
// How ideas and techniques are called in a language, by the names that lessons give them.
#pragma once

#include <string>
#include <vector>

#include "speak/speaker.h"

namespace cp {

// "the ring theorem" for ring-theorem, "naked pair" for naked-pair; a name that nobody knows stays as it is.
std::string idea_name(const Speaker& speaker, const std::string& name);

// "singles, slack and the ring theorem"; empty for none.
std::string idea_names(const Speaker& speaker, const std::vector<std::string>& names);

}  // namespace cp
