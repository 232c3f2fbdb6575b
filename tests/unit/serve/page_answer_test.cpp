// SPDX-License-Identifier: Apache-2.0
// The rules of RFC 9112 that matter to a server of a few files, and our own stricter ones.
#include "serve/page_answer.h"

#include <gtest/gtest.h>

#include "base/rng.h"

namespace cp::serve {
namespace {

constexpr int kPort = 4711;

int status_of(const std::string& head) {
  const PageFiles files = {{"/", {"text/html; charset=utf-8", "page"}}, {"/desk.js", {"text/javascript; charset=utf-8", "script"}}};
  return answer_page(head, kPort, files).status;
}

std::string request(const std::string& line, const std::string& more = "") { return line + "\r\nHost: 127.0.0.1:4711\r\n" + more + "\r\n"; }

TEST(PageAnswer, GivesFilesOfThePage) {
  EXPECT_EQ(status_of(request("GET / HTTP/1.1")), 200);
  EXPECT_EQ(status_of(request("HEAD /desk.js HTTP/1.0")), 200);
  EXPECT_EQ(status_of(request("GET /?from=shelf HTTP/1.1")), 200);
  EXPECT_EQ(status_of(request("GET /other.js HTTP/1.1")), 404);
  EXPECT_EQ(status_of(request("GET /../desk.js HTTP/1.1")), 404);
}

TEST(PageAnswer, WantsOneHostOfOurs) {
  EXPECT_EQ(status_of("GET / HTTP/1.1\r\nHOST:LOCALHOST:4711\r\n\r\n"), 200) << "names of headers and hosts know no case";
  EXPECT_EQ(status_of("GET / HTTP/1.1\r\nHost: 127.0.0.1:4712\r\n\r\n"), 421);
  EXPECT_EQ(status_of("GET / HTTP/1.1\r\n\r\n"), 400);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Host: 127.0.0.1:4711\r\n")), 400);
}

TEST(PageAnswer, RefusesBodiesAndOtherMethods) {
  EXPECT_EQ(status_of(request("POST / HTTP/1.1", "Content-Length: 3\r\n")), 413);
  EXPECT_EQ(status_of(request("POST / HTTP/1.1", "Transfer-Encoding: chunked\r\n")), 411);
  EXPECT_EQ(status_of(request("POST / HTTP/1.1")), 405);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Content-Length: 0\r\n")), 200);
}

TEST(PageAnswer, RefusesOtherOrigins) {
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Origin: http://localhost:4711\r\n")), 200);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Origin: http://localhost\r\n")), 403);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Origin: http://127.0.0.1:4711\r\nOrigin: null\r\n")), 403);
}

TEST(PageAnswer, HeadersAreNotFolded) {
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", " folded: line\r\n")), 400);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Name\t: value\r\n")), 400);
  EXPECT_EQ(status_of(request("GET / HTTP/1.1", "Empty:\r\n")), 200);
}

// Mutilated heads get some refusal or, unharmed where it matters, the file; never anything else.
TEST(PageAnswer, AnswersWhateverComes) {
  const std::string good = request("GET /desk.js HTTP/1.1", "Origin: http://127.0.0.1:4711\r\nAccept: */*\r\n");
  Rng rng(7);
  int refused = 0;
  for (int round = 0; round < 20'000; ++round) {
    std::string head = good;
    for (std::uint32_t i = 0; i <= rng.below(4); ++i) head[rng.below(static_cast<std::uint32_t>(head.size()))] = static_cast<char>(rng.below(256));
    if (rng.below(5) == 0) head.resize(rng.below(static_cast<std::uint32_t>(head.size())));
    const int status = status_of(head);
    EXPECT_TRUE(status == 200 || status == 400 || status == 403 || status == 404 || status == 405 || status == 421) << status << "\n" << head;
    refused += status == 200 ? 0 : 1;
  }
  EXPECT_GT(refused, 10'000);
}

// A door that tells what it was asked.
PageAnswer asked(const std::string& head, std::string_view body = {}) {
  const PageFiles files = {{"/", {"text/html; charset=utf-8", "page"}}};
  const DeskDoor door = [](const DoorRequest& request) -> std::optional<DoorReply> {
    if (!request.path.starts_with("/door")) return std::nullopt;
    return DoorReply{200, "text/plain", std::string(request.method) + " " + std::string(request.query) + " " + std::string(request.if_match) + " " + std::string(request.body), "tag"};
  };
  return answer_page(head, kPort, files, door, body);
}

const std::string kOurs = "Origin: http://127.0.0.1:4711\r\n";

TEST(PageAnswer, ADoorHearsMethodQueryConditionAndBody) {
  const PageAnswer answer = asked(request("PUT /door/x?a=b HTTP/1.1", kOurs + "Content-Length: 4\r\nIf-Match: \"old\"\r\n"), "four");
  EXPECT_EQ(answer.status, 200);
  EXPECT_EQ(answer.own_body, "PUT a=b \"old\" four");
  EXPECT_NE(answer.head.find("ETag: \"tag\"\r\n"), std::string::npos);
  EXPECT_EQ(asked(request("HEAD /door HTTP/1.1")).own_body, "");
  EXPECT_EQ(asked(request("GET / HTTP/1.1")).body, "page") << "what is not the door's is the page's";
}

TEST(PageAnswer, WritingNeedsAnOriginOfOursAndAKnownLength) {
  EXPECT_EQ(asked(request("PUT /door HTTP/1.1", "Content-Length: 0\r\n")).status, 403) << "browsers always say where they come from";
  EXPECT_EQ(asked(request("PUT /door HTTP/1.1", "Origin: http://example.org\r\nContent-Length: 0\r\n")).status, 403);
  EXPECT_EQ(asked(request("PUT /door HTTP/1.1", kOurs)).status, 411);
  EXPECT_EQ(asked(request("PUT /door HTTP/1.1", kOurs + "Content-Length: 9999999\r\n")).status, 413);
  EXPECT_EQ(asked(request("PUT /door HTTP/1.1", kOurs + "Content-Length: +4\r\n")).status, 413);
  EXPECT_EQ(asked(request("DELETE /door HTTP/1.1", kOurs)).status, 405);
  EXPECT_EQ(asked(request("PUT / HTTP/1.1", kOurs + "Content-Length: 0\r\n")).status, 405) << "the page itself is never written";
  EXPECT_EQ(asked(request("GET /door HTTP/1.1", "Content-Length: 4\r\n")).status, 413);
}

TEST(PageAnswer, ABodyIsWaitedForOnlyWhenItWillBeRead) {
  const std::string good = request("PUT /door HTTP/1.1", kOurs + "Content-Length: 12\r\n");
  EXPECT_EQ(body_bytes_after(good, kPort, true), 12U);
  EXPECT_EQ(body_bytes_after(good, kPort, false), 0U);
  EXPECT_EQ(body_bytes_after(request("PUT /door HTTP/1.1", "Content-Length: 12\r\n"), kPort, true), 0U);
}

}  // namespace
}  // namespace cp::serve
