// SPDX-License-Identifier: Apache-2.0
#include "serve/page_answer.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "base/small_letters.h"
#include "base/text.h"

namespace cp::serve {

namespace {

// The page may run its own script and engine and nothing else, talk to nobody else, and stand in no frame. The page
// says the same about itself, for when it is opened from disk.
constexpr std::string_view kPolicy =
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; "
    "worker-src blob: 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

struct Header {
  std::string name;  // small letters
  std::string_view value;
};

struct Request {
  std::string_view method;
  std::string_view path;  // without what follows '?'
  std::string_view query;
  std::vector<Header> headers;

  // The values of a header, in order.
  [[nodiscard]] std::vector<std::string_view> all(std::string_view name) const {
    std::vector<std::string_view> values;
    for (const Header& header : headers) {
      if (header.name == name) values.push_back(header.value);
    }
    return values;
  }
  // The only value of a header; empty when it is missing or there are several.
  [[nodiscard]] std::string_view one(std::string_view name) const {
    const auto values = all(name);
    return values.size() == 1 ? values.front() : std::string_view();
  }
  [[nodiscard]] bool writes() const { return method == "PUT" || method == "POST"; }
};

bool is_name_letter(char letter) {
  constexpr std::string_view kMarks = "!#$%&'*+-.^_`|~";  // RFC 9110, section 5.6.2
  return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || kMarks.find(letter) != std::string_view::npos;
}

// The next line without its end, or nothing when there is none.
std::optional<std::string_view> next_line(std::string_view& rest) {
  const auto end = rest.find("\r\n");
  if (end == std::string_view::npos) return std::nullopt;
  const std::string_view line = rest.substr(0, end);
  rest.remove_prefix(end + 2);
  return line;
}

bool read_request_line(std::string_view line, Request& request) {
  const auto first = line.find(' ');
  const auto second = line.find(' ', first + 1);
  if (first == std::string_view::npos || second == std::string_view::npos) return false;
  request.method = line.substr(0, first);
  request.path = line.substr(first + 1, second - first - 1);
  const std::string_view version = line.substr(second + 1);
  const auto mark = request.path.find('?');
  if (mark != std::string_view::npos) request.query = request.path.substr(mark + 1);
  request.path = request.path.substr(0, mark);
  return (version == "HTTP/1.1" || version == "HTTP/1.0") && !request.method.empty() && request.path.starts_with('/');
}

std::optional<Request> read_request(std::string_view head) {
  Request request;
  const auto first = next_line(head);
  if (!first || !read_request_line(*first, request)) return std::nullopt;
  while (const auto line = next_line(head)) {
    if (line->empty()) return request;
    const auto colon = line->find(':');
    if (colon == std::string_view::npos || colon == 0) return std::nullopt;
    std::string name = in_small_letters(line->substr(0, colon));
    if (!std::all_of(name.begin(), name.end(), is_name_letter)) return std::nullopt;
    request.headers.push_back({std::move(name), trimmed(line->substr(colon + 1))});
  }
  return std::nullopt;
}

std::string_view phrase(int status) {
  switch (status) {
    case 200: return "OK";
    case 201: return "Created";
    case 202: return "Accepted";
    case 400: return "Bad Request";
    case 403: return "Forbidden";
    case 404: return "Not Found";
    case 405: return "Method Not Allowed";
    case 408: return "Request Timeout";
    case 411: return "Length Required";
    case 409: return "Conflict";
    case 412: return "Precondition Failed";
    case 413: return "Content Too Large";
    case 422: return "Unprocessable Content";
    case 428: return "Precondition Required";
    case 500: return "Internal Server Error";
    case 421: return "Misdirected Request";
    default: return "Request Header Fields Too Large";
  }
}

std::string head_for(int status, std::string_view type, std::size_t length, bool has_door = false, std::string_view tag = {}) {
  std::string head = "HTTP/1.1 " + to_text(status) + " " + std::string(phrase(status)) + "\r\n";
  head += "Content-Type: " + std::string(type) + "\r\nContent-Length: " + to_text(static_cast<long long>(length)) + "\r\n";
  head += "Content-Security-Policy: " + std::string(kPolicy) + "\r\n";
  head +=
      "X-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\nCross-Origin-Opener-Policy: same-origin\r\n"
      "Cross-Origin-Resource-Policy: same-origin\r\nCache-Control: no-cache\r\n";
  if (status == 405) head += has_door ? "Allow: GET, HEAD, PUT, POST\r\n" : "Allow: GET, HEAD\r\n";
  if (!tag.empty()) head += "ETag: \"" + std::string(tag) + "\"\r\n";
  return head + "Connection: close\r\n\r\n";
}

// Digits alone; nothing when it is anything else or more than any body of ours.
std::optional<std::size_t> length_of(std::string_view text) {
  std::size_t length = 0;
  for (const char digit : text) {
    if (digit < '0' || digit > '9' || length > kMostBodyBytes) return std::nullopt;
    length = length * 10 + static_cast<std::size_t>(digit - '0');
  }
  return text.empty() || length > kMostBodyBytes ? std::nullopt : std::optional(length);
}

// 0: nothing is wrong with the body that is announced.
int body_fault_in(const Request& request, bool has_door) {
  if (!request.all("transfer-encoding").empty()) return 411;
  const auto lengths = request.all("content-length");
  if (!has_door || !request.writes()) {
    return std::all_of(lengths.begin(), lengths.end(), [](std::string_view length) { return length == "0"; }) ? 0 : 413;
  }
  if (lengths.size() != 1) return 411;
  return length_of(lengths.front()) ? 0 : 413;
}

// 0: nothing is wrong.
int fault_in(const Request& request, int port, bool has_door) {
  const std::string number = ":" + to_text(port);
  const std::vector<std::string> ours = {"127.0.0.1" + number, "localhost" + number};
  const auto hosts = request.all("host");
  if (hosts.size() != 1) return 400;
  if (std::find(ours.begin(), ours.end(), in_small_letters(hosts.front())) == ours.end()) return 421;
  const auto origins = request.all("origin");
  for (const std::string_view origin : origins) {
    const bool is_ours = std::any_of(ours.begin(), ours.end(), [&](const std::string& host) { return in_small_letters(origin) == "http://" + host; });
    if (!is_ours) return 403;
  }
  if (const int fault = body_fault_in(request, has_door)) return fault;
  if (request.method == "GET" || request.method == "HEAD") return 0;
  if (!has_door || !request.writes()) return 405;
  return origins.empty() ? 403 : 0;  // browsers always name it; a page elsewhere can not take it off
}

PageAnswer from_door(DoorReply reply) {
  PageAnswer answer{reply.status, head_for(reply.status, reply.type, reply.body.size(), true, reply.tag), {}, {}};
  answer.own_body = std::move(reply.body);
  return answer;
}

std::optional<DoorReply> ask_door(const Request& request, const DeskDoor& door, std::string_view body) {
  if (!door) return std::nullopt;
  return door({request.method, request.path, request.query, request.one("if-match"), request.one("if-none-match"), body});
}

}  // namespace

PageAnswer refuse_page(int status) { return {status, head_for(status, "text/plain; charset=utf-8", phrase(status).size()), phrase(status), {}}; }

std::size_t body_bytes_after(std::string_view head, int port, bool has_door) {
  const auto request = read_request(head);
  if (!request || !has_door || !request->writes() || fault_in(*request, port, has_door) != 0) return 0;
  return length_of(request->one("content-length")).value_or(0);
}

PageAnswer answer_page(std::string_view head, int port, const PageFiles& files, const DeskDoor& door, std::string_view body) {
  const auto request = read_request(head);
  if (!request) return refuse_page(400);
  PageAnswer answer;
  const bool has_door = static_cast<bool>(door);
  const auto file = files.find(request->path);
  if (const int fault = fault_in(*request, port, has_door)) {
    answer = refuse_page(fault);
    if (fault == 405) answer.head = head_for(405, "text/plain; charset=utf-8", answer.body.size(), has_door);
  } else if (auto reply = ask_door(*request, door, body)) {
    answer = from_door(std::move(*reply));
  } else if (request->writes()) {
    answer = refuse_page(file == files.end() ? 404 : 405);
  } else if (file == files.end()) {
    answer = refuse_page(404);
  } else {
    answer = {200, head_for(200, file->second.type, file->second.bytes.size()), file->second.bytes, {}};
  }
  if (request->method == "HEAD") {
    answer.body = {};
    answer.own_body.clear();
  }
  return answer;
}

}  // namespace cp::serve
