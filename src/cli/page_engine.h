// SPDX-License-Identifier: Apache-2.0
// The script that lets pupils try steps on a lesson page: the engine as WebAssembly and what is around it.
#pragma once

#include <string>

namespace cp::cli {

// Empty when it is not there: pages are whole without it. Read once. It lies beside the program, in ../lesson or ../share/counterpoise/lesson.
const std::string& page_engine();

}  // namespace cp::cli
