// SPDX-License-Identifier: Apache-2.0
#include "cli/record_lines.h"

#include "stream/line_source.h"

namespace cp::cli {

std::optional<Error> for_each_record(const std::string& name, const std::function<void(ScanLine line, std::uint64_t number)>& visit) {
  auto source = LineSource::open(name);
  if (!source) return source.error();
  std::string text;
  while (source.value().next(text)) {
    if (text.find_first_not_of(" \t\r") == std::string::npos) continue;
    auto line = parse_scan_line(text);
    const std::uint64_t number = source.value().place().line;
    if (!line) {
      Error error = line.error();
      error.message = name + ", line " + std::to_string(number) + ": " + error.message;
      return error;
    }
    visit(std::move(line).value(), number);
  }
  return source.value().trouble();
}

}  // namespace cp::cli
