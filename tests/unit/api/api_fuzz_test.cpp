// SPDX-License-Identifier: Apache-2.0
// Whatever comes through the door or the notation: an answer in valid JSON, never a crash. Seeded, so a failure repeats.
#include <gtest/gtest.h>

#include "api/api.h"
#include "api/commands.h"
#include "base/rng.h"
#include "grid/notation.h"

namespace cp::api {

namespace {

std::string random_bytes(Rng& rng, std::size_t longest) {
  std::string text(rng.below(static_cast<std::uint32_t>(longest) + 1), ' ');
  for (char& byte : text) byte = static_cast<char>(rng.below(256));
  return text;
}

// Characters that matter somewhere, more often than chance would have them.
char likely_character(Rng& rng) {
  static constexpr std::string_view kLikely = "0123456789.,:;|+-=_*()[]{}\"\\/ \t\r\n#rcbABCDEFGeun\xff\xc3\xa9\x00";
  return kLikely[rng.below(static_cast<std::uint32_t>(kLikely.size()))];
}

std::string mutated(std::string text, Rng& rng) {
  for (std::uint32_t times = 1 + rng.below(2) * rng.below(4); times > 0; --times) {
    const std::size_t at = rng.below(static_cast<std::uint32_t>(text.size()) + 1);
    switch (rng.below(9)) {
      case 0: text.insert(at, 1, likely_character(rng)); break;
      case 1: text.erase(at, 1 + rng.below(4)); break;
      case 2: text.resize(at); break;
      case 3: text.insert(at, text.substr(at / 2, rng.below(30))); break;
      default: if (at < text.size()) text[at] = likely_character(rng); break;
    }
  }
  return text;
}

void expect_valid(const std::string& request) {
  const std::string got = answer(request);
  const Json json = Json::parse(got, nullptr, false);
  ASSERT_FALSE(json.is_discarded()) << request << "\n" << got;
  ASSERT_TRUE(json.is_object()) << request;
  ASSERT_EQ(got.find('\n'), std::string::npos) << request;
  if (json.contains("error")) {
    ASSERT_NE(json["error"]["code"], "bug") << request << "\n" << got;
    ASSERT_FALSE(json["error"]["message"].get<std::string>().empty()) << request;
  }
}

TEST(ApiFuzz, RandomBytes) {
  Rng rng(1);
  for (int i = 0; i < 20'000; ++i) expect_valid(random_bytes(rng, 120));
}

TEST(ApiFuzz, MutatedRequests) {
  // Small grids: a mutated puzzle may leave everything open, and then the larger ones take their time.
  const std::vector<std::string> requests = {
      R"({"command":"check","puzzle":"..3.1......4.1.."})",
      R"({"command":"path","puzzle":"..3.1......4.1..","without":["x-wing","balance"],"max_slack":2})",
      R"({"command":"weigh","puzzle":"..3.1......4.1..","left":"r1,2*r2","right":"c1;b4","after_basics":true,"level":5})",
      R"({"command":"weigh","puzzle":"..3.1......4.1..","max_slack":1,"limit":2})",
      R"({"command":"lesson","puzzle":"..3.1......4.1..","title":"A \u00e9 title","notes":true})",
      R"({"command":"lesson_draft","puzzle":"..3.1......4.1..","idea":"naked-single","language":"de"})",
      R"({"command":"lesson_check","lesson":"counterpoise lesson 1\ntitle: a\npuzzle: ..3.1......4.1..\n\n== A\n@singles\n@balance left r1 right c1 name x\n@show x cases 2\n@claim r1c1 = 2"})",
      R"({"command":"series_check","about":"counterpoise series 1\ntitle: s\nassumes: single","names":["a"],"lessons":["counterpoise lesson 1\ntitle: a\npuzzle: ..3.1......4.1..\n\n== A\n@solution"]})",
      R"({"command":"count","shape":"4x4"})",
      R"({"command":"claim","puzzle":"..3.1......4.1..","claim":"r1c1 = 2","footing":"r1, b1","after_basics":true})",
      R"({"command":"claims","script":"puzzle ..3.1......4.1..\nlet a = r1c1 r1c2\na hold 2,4","reveal":true})",
      R"({"command":"check","puzzle":"1 23 (4) =1 | 34 1 2 . / 2 1 4 3 | 12 34 . 1"})",
  };
  Rng rng(2);
  int answered = 0;
  for (int i = 0; i < 6'000; ++i) {
    const std::string request = mutated(requests[rng.below(static_cast<std::uint32_t>(requests.size()))], rng);
    expect_valid(request);
    if (answer(request).find("\"error\"") == std::string::npos) ++answered;
  }
  EXPECT_GT(answered, 100) << "the mutations hardly ever leave a request that can be answered";
}

// The language of claims has signs of its own; mutations of scripts that use all of it.
TEST(ApiFuzz, MutatedClaims) {
  const std::vector<std::string> sayings = {
      "r1c1 = 2 or r2c2 != 3 and not r3c4 in 1,4", "if r12c34 not in 2..4 then (r1c1 = r4c4 => r1c2 r1c3 hold 1,?)", "exactly two 3s in r1 r2", "no 4 in open b1", "a 2 in {r1 & b1}",
      "{r1 b4} = {c2 r2c2} + 1..4 - 2 + 2*1 - 1,1", "at most 2 1,2 in r1 without r1c1", "r1c1 \xE2\x89\xA0 r2c3", "r1c1 \xE2\x88\x88 1,2",
      "let top = r1c12 r3; balance x = r1,2*b4 : c2,r4,r2; top hold 1,1,2,3,4,?; {x.left} = {x.right}",
  };
  const std::vector<std::string> footings = {"", "rules", "position", "digits, r1, b2", "x", "earlier", "#1, c3", "x and top"};
  const std::vector<std::string> words = {"and ", "or ", "not ", "if ", "then ", "=> ", "r1c1 ", "r4 ", "hold ", "in ", "exactly ", "two ", "{", "}", "(", ")", "1..4", " = ", " != ", "open ", ";", "#1", "?", "x.left "};
  Rng rng(5);
  int answered = 0;
  for (int i = 0; i < 6'000; ++i) {
    std::string text = sayings[rng.below(static_cast<std::uint32_t>(sayings.size()))];
    const std::uint32_t how = rng.below(4);
    if (how < 2) text = mutated(text, rng);
    else if (how == 2) text.insert(rng.below(static_cast<std::uint32_t>(text.size()) + 1), words[rng.below(static_cast<std::uint32_t>(words.size()))]);
    const std::string footing = rng.below(2) == 0 ? "" : footings[rng.below(static_cast<std::uint32_t>(footings.size()))];
    const std::string grid = rng.below(3) == 0 ? "................" : "..3.1......4.1..";
    const bool is_script = rng.below(2) == 0;
    const ClaimsRequest script{"puzzle " + grid + "\nr1c1 in 1..4\n" + text, "", footing};
    const Answer got = is_script ? claims(script) : claim({grid, text, footing});
    if (got.is_ok()) ++answered;
    else ASSERT_NE(got.error->code, ErrorCode::kBug) << text;
    ASSERT_FALSE(Json::parse(to_line(got.json), nullptr, false).is_discarded()) << text;
  }
  EXPECT_GT(answered, 800);
}

TEST(ApiFuzz, ClaimsThatAreTooMuch) {
  const std::string grid = "..3.1......4.1..";
  std::string chain = "r1c1 = 2";
  for (int i = 0; i < 10'000; ++i) chain += " or r1c1 = 2";
  for (const std::string& text : {std::string(10'000, '(') + "r1c1 = 2" + std::string(10'000, ')'), std::string(100'000, '{'), std::string(100'000, 'r'), std::string(100'000, '9'),
                                  std::string(100'000, ' '), chain, "exactly " + std::string(50'000, '9') + " 2s in r1", "r1c" + std::string(100'000, '1') + " = 2", std::string(3'000, '#')}) {
    expect_valid(to_line({{"command", "claim"}, {"puzzle", grid}, {"claim", text}}));
    expect_valid(to_line({{"command", "claim"}, {"puzzle", grid}, {"claim", "r1c1 = 2"}, {"footing", text}}));
    expect_valid(to_line({{"command", "claims"}, {"script", "puzzle " + grid + "\n" + text}}));
  }
  std::string nots;
  for (int i = 0; i < 900; ++i) nots += "not ";
  expect_valid(to_line({{"command", "claim"}, {"puzzle", grid}, {"claim", nots + "r1c1 = 2"}}));
}

// Written lessons with every kind of line; a fault has a line and a column within the text.
TEST(ApiFuzz, MutatedLessons) {
  const std::string text =
      "counterpoise lesson 1\n% note\ntitle: A \xC3\xA9 title\npuzzle: ..3.1......4.1..\nidea: balance\nlevel: 3\nneeds: single, x\nteaches: balance\nlanguage: he\nminutes: 3\n\n== First\n"
      "Words with a *term*.\n\n| note\n? question\n! answer\n\\ == words\n@let far = r1c1 r2c2\n@balance left r1,2*r2 right c1,b4,c2 name ring\n@show ring cases 2,3\n@claim {ring.left} = {ring.right} footing ring\n"
      "@time 1m30s\n\n== Second\n@step r2c2 = 3 by hidden-single\n@board candidates all; digits 2; focus far; frame r1c1 = 2; strike r2c2 <> 1; after\n@singles\n@solution\n\n== Third\n@aside 1...............\n@apply single, locked\n";
  ASSERT_TRUE(lesson_check({text, false}).is_ok());
  Rng rng(6);
  int read = 0;
  for (int i = 0; i < 3'000; ++i) {
    const std::string lesson = mutated(text, rng);
    const Answer got = rng.below(8) == 0 ? lesson_build({lesson, true}) : lesson_check({lesson, false});
    read += got.is_ok() ? 1 : 0;
    if (!got.is_ok()) {
      ASSERT_NE(got.error->code, ErrorCode::kBug) << lesson;
      ASSERT_FALSE(got.error->message.empty()) << lesson;
    }
    ASSERT_FALSE(Json::parse(to_line(got.json), nullptr, false).is_discarded()) << lesson;
    if (i % 10 == 0) {
      ASSERT_FALSE(Json::parse(to_line(series_check({"", {{"a", lesson}, {"b", lesson}}}).json), nullptr, false).is_discarded()) << lesson;
    }
  }
  EXPECT_GT(read, 100) << "the mutations hardly ever leave a lesson that builds";
}

TEST(ApiFuzz, ExchangedFields) {
  const Json values = Json::parse(R"([null, true, 0, 1, 2, -1, 5, 1e9, 1.5, "", "r1", "r1,c2", "2*b3", "99*r1,r2", "100*r1", "x", "r1c1 = 2", "rules", "puzzle ..3.1......4.1..\nr1c1 = 2", "4x4", "9x9",
      "..3.1......4.1..", "11..............", "................", "1234341221434321", "x-wing", "de", "counterpoise lesson 1\ntitle: a\npuzzle: ..3.1......4.1..\n\n== A\n@singles", ["counterpoise lesson 1\ntitle: a\npuzzle: ..3.1......4.1..\n\n== A"], "counterpoise series 1\ntitle: a", ["x-wing"], ["balance"], [], {}, [[]]])");
  const std::vector<std::string> fields = {"puzzle", "left", "right", "after_basics", "level", "max_slack", "limit", "without", "title", "notes", "shape", "claim", "script", "footing", "reveal", "odd",
                                           "lesson", "idea", "language", "about", "lessons", "names"};
  const std::vector<std::string> commands = {"check", "path", "weigh", "lesson", "count", "claim", "claims", "lesson_draft", "lesson_check", "lesson_build", "series_check"};
  Rng rng(4);
  int answered = 0;
  for (int i = 0; i < 6'000; ++i) {
    Json request = {{"command", commands[rng.below(static_cast<std::uint32_t>(commands.size()))]}, {"puzzle", "..3.1......4.1.."}};
    for (std::uint32_t more = rng.below(4); more > 0; --more) {
      request[fields[rng.below(static_cast<std::uint32_t>(fields.size()))]] = values[rng.below(static_cast<std::uint32_t>(values.size()))];
    }
    expect_valid(to_line(request));
    answered += answer_json(request).is_ok() ? 1 : 0;
  }
  EXPECT_GT(answered, 500);
}

TEST(ApiFuzz, DeepNesting) {
  expect_valid(std::string(100'000, '['));
  expect_valid(std::string(100'000, '[') + std::string(100'000, ']'));
  std::string deep = R"({"command":"check","puzzle":)";
  for (int i = 0; i < 20'000; ++i) deep += R"({"a":)";
  expect_valid(deep + "1" + std::string(20'001, '}'));
}

TEST(ApiFuzz, NotationReadsBackWhatItWrites) {
  Rng rng(3);
  const std::vector<std::string> texts = {
      "..3.1......4.1..",
      "6........7.35...2.....14.........9.....9....435.1....2.6.3.1..7....9..6..452...1.",
      "1 23 (4) =1 | 34 1 2 .\n2 1 4 3 | 12 34 . 1",
      "4 . . | . . .\n. 5 . | . 6 .\n------+------\n. . 1 | . . .\n. . . | 2 . .\n------+------\n. 3 . | . 4 .\n. . . | . . 6\n",
  };
  int read = 0;
  for (int i = 0; i < 40'000; ++i) {
    const std::string text = rng.below(4) == 0 ? random_bytes(rng, 300) : mutated(texts[rng.below(static_cast<std::uint32_t>(texts.size()))], rng);
    const auto position = parse_position(text);
    if (!position) {
      ASSERT_FALSE(position.error().message.empty()) << text;
      ASSERT_LE(position.error().where.offset, text.size()) << text;
      continue;
    }
    ++read;
    ASSERT_TRUE(position->is_consistent()) << text;
    if (position->has_clash()) continue;  // a cell without candidates has no word of its own
    const auto again = parse_position(to_candidate_text(*position));
    ASSERT_TRUE(again.is_ok()) << text << "\n" << to_candidate_text(*position);
    ASSERT_TRUE(*again == *position) << text << "\n" << to_candidate_text(*position);
  }
  EXPECT_GT(read, 3'000);
}

}  // namespace

}  // namespace cp::api
