// SPDX-License-Identifier: Apache-2.0
// Serves the desk until it is stopped, and shows it in the browser.
#include <fcntl.h>
#include <spawn.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <filesystem>

#include "cli/command.h"
#include "cli/report.h"
#include "cli/served_lessons.h"
#include "cli/served_shelf.h"
#include "serve/page_server.h"

extern char** environ;  // NOLINT: POSIX names it so

namespace cp::cli {

namespace {

struct Words {
  int port = serve::kUsualPort;
  bool names_port = false;
  bool no_open = false;
  std::string folder;
  std::string lessons;
  std::string shelf;
};

int stop_pipe[2] = {-1, -1};  // a signal writes, the server reads

void on_stop(int /*signal*/) {
  const char byte = 's';
  [[maybe_unused]] const ssize_t written = ::write(stop_pipe[1], &byte, 1);
}

bool prepare_to_stop() {
  if (::pipe2(stop_pipe, O_CLOEXEC | O_NONBLOCK) != 0) return false;
  struct sigaction action {};
  action.sa_handler = on_stop;
  return ::sigaction(SIGINT, &action, nullptr) == 0 && ::sigaction(SIGTERM, &action, nullptr) == 0 && ::sigaction(SIGHUP, &action, nullptr) == 0;
}

// Where the built page lies: after an install, or beside the folder of the build.
std::string page_folder() {
  namespace fs = std::filesystem;
  std::error_code trouble;
  const fs::path program = fs::read_symlink("/proc/self/exe", trouble).parent_path();
  const fs::path installed = program / "../share/counterpoise/desk";
  const fs::path built = program / "../desk";
  return (fs::exists(installed / "index.html", trouble) ? installed : built).lexically_normal().string();
}

// Asks the desktop to show the page. Without one, or without xdg-open, the address on the terminal has to do.
void open_browser(const std::string& address) {
  if (std::getenv("DISPLAY") == nullptr && std::getenv("WAYLAND_DISPLAY") == nullptr) return;
  std::signal(SIGCHLD, SIG_IGN);  // nobody waits for the browser
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  for (const int stream : {0, 1, 2}) posix_spawn_file_actions_addopen(&actions, stream, "/dev/null", O_RDWR, 0);
  std::string program = "xdg-open";
  std::string argument = address;
  char* words[] = {program.data(), argument.data(), nullptr};
  pid_t child = 0;
  ::posix_spawnp(&child, program.c_str(), &actions, nullptr, words, environ);
  posix_spawn_file_actions_destroy(&actions);
}

// What the desk may ask besides its page.
Result<serve::DeskDoor> open_door(const Words& words) {
  if (words.lessons.empty() && words.shelf.empty()) return serve::DeskDoor();
  std::optional<ServedLessons> lessons;
  if (!words.lessons.empty()) {
    auto opened = ServedLessons::open(words.lessons);
    if (!opened) return opened.error();
    lessons = std::move(opened).value();
  }
  std::optional<ServedShelf> shelf;
  if (!words.shelf.empty()) {
    auto opened = ServedShelf::open(words.shelf);
    if (!opened) return opened.error();
    shelf = std::move(opened).value();
  }
  return serve::DeskDoor([lessons = std::move(lessons), shelf = std::move(shelf)](const serve::DoorRequest& request) {
    auto reply = lessons ? lessons->answer(request) : std::nullopt;
    return reply || !shelf ? reply : shelf->answer(request);
  });
}

int run(const Words& words) {
  auto files = serve::read_page(words.folder.empty() ? page_folder() : words.folder);
  if (!files) return fail(files.error(), false);
  auto door = open_door(words);
  if (!door) return fail(door.error(), false);
  serve::PageServer server(std::move(files).value(), std::move(door).value());
  const auto port = server.listen(words.port, words.names_port ? 1 : serve::kPortsToTry);
  if (!port) return fail(port.error(), false);
  if (!prepare_to_stop()) return fail(Error{ErrorCode::kBug, "cannot prepare to be stopped", "", {}}, false);
  if (words.port != 0 && *port != words.port) {
    complain(Error{ErrorCode::kBadArgument, "port " + std::to_string(words.port) + " is taken, perhaps by another desk; this one uses " + std::to_string(*port),
                   "what the desk keeps in the browser belongs to the port: work from another port is not seen here", {}});
  }
  const std::string address = "http://127.0.0.1:" + std::to_string(*port) + "/";
  if (!say("The desk is at " + address + " on this machine. Ctrl-C stops it.\n")) return cannot_say();
  if (!words.no_open) open_browser(address);
  server.run(stop_pipe[0]);
  return 0;
}

}  // namespace

void add_desk(Program& program) {
  auto words = std::make_shared<Words>();
  CLI::App* command = program.app.add_subcommand("desk", "The workbench in your browser, served on this machine alone");
  CLI::Option* port = command->add_option("--port", words->port, "the port on 127.0.0.1; 0: any that is free")->type_name("N")->check(CLI::Range(0, 65535))->capture_default_str();
  command->add_flag("--no-open", words->no_open, "do not open the browser");
  command->add_option("--folder", words->folder, "where the built page is, when it is not beside the program")->type_name("FOLDER");
  command->add_option("--lessons", words->lessons, "a folder of lessons, or one .lesson file, that the desk may read and write")->type_name("PATH");
  command->add_option("--shelf", words->shelf, "a shelf that the page shelf.html may search and write tags and notes on")->type_name("FILE");
  command->footer(
      "Serves until Ctrl-C. Exit code 0: stopped; 64: port taken or no page there.\n"
      "Examples:\n"
      "  counterpoise desk\n"
      "  counterpoise desk --lessons my-lessons --shelf my.shelf\n"
      "  counterpoise desk --no-open --port 8080\n");
  command->callback([words, port, &program] {
    words->names_port = port->count() > 0;
    program.exit_code = run(*words);
  });
}

}  // namespace cp::cli
