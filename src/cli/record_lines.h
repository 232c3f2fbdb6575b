// SPDX-License-Identifier: Apache-2.0
// The lines of a scan, read one after the other.
#pragma once

#include <functional>

#include "scan/record_json.h"

namespace cp::cli {

// Visits every line of the file ("-": standard input; plain, gzip or zstd). Error: the file, or the first line that is no
// line of a scan, with its number.
std::optional<Error> for_each_record(const std::string& name, const std::function<void(ScanLine line, std::uint64_t number)>& visit);

}  // namespace cp::cli
