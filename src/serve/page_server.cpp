// SPDX-License-Identifier: Apache-2.0
#include "serve/page_server.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <vector>

#include "base/text.h"

namespace cp::serve {

namespace {

using Clock = std::chrono::steady_clock;

constexpr auto kTimeToAsk = std::chrono::seconds(10);     // for a whole request
constexpr auto kTimeToListen = std::chrono::seconds(60);  // for the whole answer
constexpr int kTick = 500;                                // milliseconds between looks at the clock

// One request and its answer.
class Connection {
 public:
  explicit Connection(int socket) : socket_(socket), deadline_(Clock::now() + kTimeToAsk) {}

  [[nodiscard]] int socket() const { return socket_; }
  [[nodiscard]] bool is_asking() const { return !has_answer_; }
  [[nodiscard]] bool is_done() const { return is_done_; }
  [[nodiscard]] short events() const { return is_asking() || is_lingering() ? POLLIN : POLLOUT; }

  void read(int port, const PageFiles& files, const DeskDoor& door) {
    std::array<char, 16384> bytes{};
    const ssize_t count = ::recv(socket_, bytes.data(), bytes.size(), 0);
    if (count < 0 && (errno == EAGAIN || errno == EINTR)) return;
    if (count <= 0) {
      is_done_ = true;
      return;
    }
    if (is_lingering()) return;  // what comes after the request is thrown away
    asked_.append(bytes.data(), static_cast<std::size_t>(count));
    if (head_bytes_ == 0 && !find_head(port, static_cast<bool>(door))) return;
    if (asked_.size() < head_bytes_ + body_bytes_) return;
    const std::string_view whole(asked_);
    give(answer_page(whole.substr(0, head_bytes_), port, files, door, whole.substr(head_bytes_, body_bytes_)));
  }

  void write() {
    const std::string_view part = sent_ < answer_.head.size() ? std::string_view(answer_.head).substr(sent_) : body().substr(sent_ - answer_.head.size());
    const ssize_t count = ::send(socket_, part.data(), part.size(), MSG_NOSIGNAL);
    if (count < 0 && (errno == EAGAIN || errno == EINTR)) return;
    if (count < 0) {
      is_done_ = true;
      return;
    }
    sent_ += static_cast<std::size_t>(count);
    if (sent_ < answer_.head.size() + body().size()) return;
    // A refused body may still be on its way: closing now would make the other side miss the answer.
    ::shutdown(socket_, SHUT_WR);
    deadline_ = std::min(deadline_, Clock::now() + std::chrono::seconds(2));
  }

  void look_at_clock() {
    if (Clock::now() < deadline_) return;
    if (is_asking()) {
      give(refuse_page(408));
    } else {
      is_done_ = true;
    }
  }

 private:
  [[nodiscard]] bool is_lingering() const { return has_answer_ && sent_ == answer_.head.size() + body().size(); }
  [[nodiscard]] std::string_view body() const { return answer_.own_body.empty() ? answer_.body : std::string_view(answer_.own_body); }

  // True when the head is whole and fine in length.
  bool find_head(int port, bool has_door) {
    const auto end = asked_.find("\r\n\r\n");
    if (end != std::string::npos && end + 4 <= kMostHeadBytes) {
      head_bytes_ = end + 4;
      body_bytes_ = body_bytes_after(std::string_view(asked_).substr(0, head_bytes_), port, has_door);
      return true;
    }
    if (end != std::string::npos || asked_.size() >= kMostHeadBytes) give(refuse_page(431));
    return false;
  }

  void give(PageAnswer answer) {
    answer_ = std::move(answer);
    has_answer_ = true;
    deadline_ = Clock::now() + kTimeToListen;
    write();
  }

  int socket_;
  Clock::time_point deadline_;
  std::string asked_;
  std::size_t head_bytes_ = 0;
  std::size_t body_bytes_ = 0;
  PageAnswer answer_;
  std::size_t sent_ = 0;
  bool has_answer_ = false;
  bool is_done_ = false;
};

void accept_all(int listener, std::vector<Connection>& connections) {
  for (int socket = ::accept4(listener, nullptr, nullptr, SOCK_NONBLOCK | SOCK_CLOEXEC); socket >= 0;
       socket = ::accept4(listener, nullptr, nullptr, SOCK_NONBLOCK | SOCK_CLOEXEC)) {
    if (connections.size() >= kMostConnections) {
      auto oldest = std::find_if(connections.begin(), connections.end(), [](const Connection& each) { return each.is_asking(); });
      if (oldest == connections.end()) oldest = connections.begin();
      ::close(oldest->socket());
      connections.erase(oldest);
    }
    connections.emplace_back(socket);
  }
}

void drop_done(std::vector<Connection>& connections) {
  std::erase_if(connections, [](const Connection& each) {
    if (each.is_done()) ::close(each.socket());
    return each.is_done();
  });
}

}  // namespace

PageServer::~PageServer() {
  if (listener_ >= 0) ::close(listener_);
}

Result<int> PageServer::listen(int port, int tries) {
  for (int attempt = 0; attempt < tries && port + attempt <= 65535; ++attempt) {
    const int socket = ::socket(AF_INET, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0);
    const int yes = 1;
    ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof(yes));
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    address.sin_port = htons(static_cast<std::uint16_t>(port + attempt));
    socklen_t size = sizeof(address);
    auto* plain = reinterpret_cast<sockaddr*>(&address);
    if (socket >= 0 && ::bind(socket, plain, size) == 0 && ::listen(socket, 64) == 0 && ::getsockname(socket, plain, &size) == 0) {
      listener_ = socket;
      port_ = ntohs(address.sin_port);
      return port_;
    }
    const int trouble = errno;
    if (socket >= 0) ::close(socket);
    if (trouble != EADDRINUSE && trouble != EACCES) {
      return Error{ErrorCode::kBug, std::string("cannot listen on 127.0.0.1: ") + std::strerror(trouble), "", {}};
    }
  }
  const std::string range = tries > 1 ? "ports " + to_text(port) + " to " + to_text(port + tries - 1) + " are" : "port " + to_text(port) + " is";
  return Error{ErrorCode::kBadArgument, range + " taken or not allowed", "choose another with --port, or --port 0 for any that is free", {}};
}

void PageServer::run(int stop) {
  std::vector<Connection> connections;
  for (;;) {
    std::vector<pollfd> waiting = {{stop, POLLIN, 0}, {listener_, POLLIN, 0}};
    for (const Connection& each : connections) waiting.push_back({each.socket(), each.events(), 0});
    if (::poll(waiting.data(), waiting.size(), kTick) < 0 && errno != EINTR) break;
    if (waiting[0].revents != 0) break;
    for (std::size_t i = 0; i < connections.size(); ++i) {
      const short happened = waiting[i + 2].revents;
      if ((happened & POLLOUT) != 0) {
        connections[i].write();
      } else if (happened != 0) {
        connections[i].read(port_, files_, door_);
      }
      connections[i].look_at_clock();
    }
    drop_done(connections);
    if (waiting[1].revents != 0) accept_all(listener_, connections);
  }
  for (const Connection& each : connections) ::close(each.socket());
}

}  // namespace cp::serve
