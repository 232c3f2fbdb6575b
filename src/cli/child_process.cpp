// SPDX-License-Identifier: Apache-2.0
#include "cli/child_process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>

#include "base/text.h"
#include "cli/stop_wish.h"

namespace cp::cli {

namespace {

constexpr std::size_t kComplaint = 2000;  // bytes kept
constexpr int kPatience = 100;            // milliseconds between looks at the wish to stop

struct Pipe {
  int read = -1;
  int write = -1;
};

bool open_pipe(Pipe& pipe) {
  std::array<int, 2> ends{};
  if (::pipe2(ends.data(), O_CLOEXEC) != 0) return false;
  pipe = {ends[0], ends[1]};
  return true;
}

[[noreturn]] void become(const std::string& program, const std::vector<std::string>& words, const Pipe& out, const Pipe& err) {
  const int nothing = ::open("/dev/null", O_RDONLY);
  if (nothing < 0 || ::dup2(nothing, STDIN_FILENO) < 0 || ::dup2(out.write, STDOUT_FILENO) < 0 || ::dup2(err.write, STDERR_FILENO) < 0) ::_exit(127);
  std::vector<char*> arguments{const_cast<char*>(program.c_str())};
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  ::execv(program.c_str(), arguments.data());
  ::_exit(127);
}

// Reads what is there; false at the end.
bool read_some(int from, std::string& text) {
  std::array<char, 4096> buffer{};
  const ssize_t count = ::read(from, buffer.data(), buffer.size());
  if (count > 0) text.append(buffer.data(), static_cast<std::size_t>(count));
  return count > 0 || (count < 0 && errno == EINTR);
}

void give_lines(std::string& text, const std::function<void(const std::string&)>& on_line) {
  for (auto end = text.find('\n'); end != std::string::npos; end = text.find('\n')) {
    on_line(text.substr(0, end));
    text.erase(0, end + 1);
  }
}

// Until both ends are closed. Ends the child when the user wants to stop.
void listen(pid_t child, int out, int err, const std::function<void(const std::string&)>& on_line, ChildEnd& result) {
  std::array<pollfd, 2> ends = {{{out, POLLIN, 0}, {err, POLLIN, 0}}};
  std::string text;
  while (ends[0].fd >= 0 || ends[1].fd >= 0) {
    if (StopWish::signal() != 0 && !result.is_stopped) {
      ::kill(child, SIGKILL);
      result.is_stopped = true;
    }
    if (::poll(ends.data(), ends.size(), kPatience) <= 0) continue;
    if (ends[0].revents != 0 && !read_some(out, text)) ends[0].fd = -1;
    if (ends[1].revents != 0 && !read_some(err, result.complaint)) ends[1].fd = -1;
    if (result.complaint.size() > kComplaint) result.complaint.erase(0, result.complaint.size() - kComplaint);
    give_lines(text, on_line);
  }
}

}  // namespace

std::string program_on_path(const std::string& name) {
  const char* path = std::getenv("PATH");
  for (const std::string& folder : split(path == nullptr ? "" : path, ':')) {
    std::string program = folder + "/" + name;
    if (!folder.empty() && ::access(program.c_str(), X_OK) == 0) return program;
  }
  return {};
}

ChildEnd run_child(const std::string& program, const std::vector<std::string>& words, const std::function<void(const std::string&)>& on_line) {
  ChildEnd result;
  Pipe out;
  Pipe err;
  if (!open_pipe(out) || !open_pipe(err)) return result;
  const pid_t child = ::fork();
  if (child == 0) become(program, words, out, err);
  ::close(out.write);
  ::close(err.write);
  if (child > 0) {
    result.is_started = true;
    listen(child, out.read, err.read, on_line, result);
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    result.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  }
  ::close(out.read);
  ::close(err.read);
  return result;
}

}  // namespace cp::cli
