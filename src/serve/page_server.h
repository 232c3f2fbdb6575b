// SPDX-License-Identifier: Apache-2.0
// Serves the page on the loopback address of this machine and nowhere else. One thread, a bounded number of
// connections, bounded heads and bodies, a time for everything; every connection carries one request.
#pragma once

#include "serve/page_answer.h"

namespace cp::serve {

// A fixed port, so that what the page keeps in the browser (which belongs to address and port) is found again.
inline constexpr int kUsualPort = 27381;
inline constexpr int kPortsToTry = 10;
inline constexpr std::size_t kMostConnections = 48;  // beyond these the oldest one that has not asked yet has to go

class PageServer {
 public:
  // `door` answers what the page asks beyond its files; none: GET and HEAD of files alone.
  explicit PageServer(PageFiles files, DeskDoor door = {}) : files_(std::move(files)), door_(std::move(door)) {}
  ~PageServer();
  PageServer(const PageServer&) = delete;
  PageServer& operator=(const PageServer&) = delete;

  // Listens on 127.0.0.1. `port` 0: any free one. When the port is taken the next `tries` - 1 are tried.
  // Gives the port. Error kBadArgument: all are taken; kBug: this machine has no loopback to offer.
  Result<int> listen(int port, int tries);

  // Answers requests until `stop` (a file descriptor) can be read. Precondition: listen() succeeded.
  void run(int stop);

 private:
  int listener_ = -1;
  int port_ = 0;
  PageFiles files_;
  DeskDoor door_;
};

}  // namespace cp::serve
