// SPDX-License-Identifier: Apache-2.0
// Another program, started without a shell, listened to line by line, and ended when the user wants to stop.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace cp::cli {

struct ChildEnd {
  bool is_started = false;
  bool is_stopped = false;  // a StopWish came and the child was ended
  int exit_code = -1;       // 127 when the program could not be started
  std::string complaint;    // the end of what it said on standard error
};

// The path of a program on PATH; empty if it is not there.
std::string program_on_path(const std::string& name);

// Runs a program to its end. `on_line` gets what it prints, line by line.
ChildEnd run_child(const std::string& program, const std::vector<std::string>& words, const std::function<void(const std::string&)>& on_line);

}  // namespace cp::cli
