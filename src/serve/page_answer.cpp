// SPDX-License-Identifier: Apache-2.0
#include "serve/page_answer.h"

#include <algorithm>
#include <optional>
#include <vector>

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
  std::vector<Header> headers;

  // The values of a header, in order.
  [[nodiscard]] std::vector<std::string_view> all(std::string_view name) const {
    std::vector<std::string_view> values;
    for (const Header& header : headers) {
      if (header.name == name) values.push_back(header.value);
    }
    return values;
  }
};

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& letter : small) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return small;
}

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
  request.path = request.path.substr(0, request.path.find('?'));
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
    case 400: return "Bad Request";
    case 403: return "Forbidden";
    case 404: return "Not Found";
    case 405: return "Method Not Allowed";
    case 408: return "Request Timeout";
    case 411: return "Length Required";
    case 413: return "Content Too Large";
    case 421: return "Misdirected Request";
    default: return "Request Header Fields Too Large";
  }
}

std::string head_for(int status, std::string_view type, std::size_t length) {
  std::string head = "HTTP/1.1 " + to_text(status) + " " + std::string(phrase(status)) + "\r\n";
  head += "Content-Type: " + std::string(type) + "\r\nContent-Length: " + to_text(static_cast<long long>(length)) + "\r\n";
  head += "Content-Security-Policy: " + std::string(kPolicy) + "\r\n";
  head +=
      "X-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\nCross-Origin-Opener-Policy: same-origin\r\n"
      "Cross-Origin-Resource-Policy: same-origin\r\nCache-Control: no-cache\r\n";
  if (status == 405) head += "Allow: GET, HEAD\r\n";
  return head + "Connection: close\r\n\r\n";
}

// 0: nothing is wrong.
int fault_in(const Request& request, int port) {
  const std::string number = ":" + to_text(port);
  const std::vector<std::string> ours = {"127.0.0.1" + number, "localhost" + number};
  const auto hosts = request.all("host");
  if (hosts.size() != 1) return 400;
  if (std::find(ours.begin(), ours.end(), in_small_letters(hosts.front())) == ours.end()) return 421;
  for (const std::string_view origin : request.all("origin")) {
    const bool is_ours = std::any_of(ours.begin(), ours.end(), [&](const std::string& host) { return in_small_letters(origin) == "http://" + host; });
    if (!is_ours) return 403;
  }
  if (!request.all("transfer-encoding").empty()) return 411;
  for (const std::string_view length : request.all("content-length")) {
    if (length != "0") return 413;
  }
  return request.method == "GET" || request.method == "HEAD" ? 0 : 405;
}

}  // namespace

PageAnswer refuse_page(int status) { return {status, head_for(status, "text/plain; charset=utf-8", phrase(status).size()), phrase(status)}; }

PageAnswer answer_page(std::string_view head, int port, const PageFiles& files) {
  const auto request = read_request(head);
  if (!request) return refuse_page(400);
  PageAnswer answer;
  const int fault = fault_in(*request, port);
  const auto file = files.find(request->path);
  if (fault != 0) {
    answer = refuse_page(fault);
  } else if (file == files.end()) {
    answer = refuse_page(404);
  } else {
    answer = {200, head_for(200, file->second.type, file->second.bytes.size()), file->second.bytes};
  }
  if (request->method == "HEAD") answer.body = {};
  return answer;
}

}  // namespace cp::serve
