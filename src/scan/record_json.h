// SPDX-License-Identifier: Apache-2.0
// Records as JSON, one a line, keys always in the same order. The form is docs/formats/scan.md.
#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "scan/survey_record.h"

namespace cp {

// One line without its end. `line` above 0 is written as the number of the line the puzzle stood in.
std::string record_line(const SurveyRecord& record, std::uint64_t line = 0);

// The line for something that is no puzzle: {"line":...,"error":{"message":...,"hint":...}}.
std::string error_line(const Error& error, std::uint64_t line);

// A line of a scan, read back.
struct ScanLine {
  std::uint64_t line = 0;                // 0: not said
  std::optional<SurveyRecord> record;    // empty for an error line
  std::string error;                     // its message
};
// Error kBadArgument when it is no line of a scan; keys that are not known are passed over.
Result<ScanLine> parse_scan_line(std::string_view text);

}  // namespace cp
