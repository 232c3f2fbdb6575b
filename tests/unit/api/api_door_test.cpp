// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "api/api.h"
#include "support/data_rows.h"

namespace cp::api {

namespace {

const std::string kFour = "..3.1......4.1..";  // random_minimal_puzzle(4x4, 1)
const std::string kStuck = "6........7.35...2.....14.........9.....9....435.1....2.6.3.1..7....9..6..452...1.";  // 9x9, seed 1600

Json ask(const Json& request) { return Json::parse(answer(to_line(request))); }

std::vector<std::string> keys(const Json& json) {
  std::vector<std::string> names;
  for (const auto& [name, value] : json.items()) names.push_back(name);
  return names;
}

void expect_error(const Json& request, const std::string& code, const std::string& message, const std::string& hint) {
  const Json got = ask(request);
  ASSERT_TRUE(got.contains("error")) << to_line(request) << " gave " << to_line(got);
  EXPECT_EQ(got["error"]["code"], code);
  EXPECT_NE(got["error"]["message"].get<std::string>().find(message), std::string::npos) << to_line(got);
  EXPECT_NE(got["error"]["hint"].get<std::string>().find(hint), std::string::npos) << to_line(got);
}

TEST(ApiDoor, KeysComeInTheDocumentedOrder) {
  EXPECT_EQ(keys(ask({{"command", "check"}, {"puzzle", kFour}})), (std::vector<std::string>{"shape", "givens", "solutions", "solution", "minimal", "text"}));
  EXPECT_EQ(keys(ask({{"command", "path"}, {"puzzle", kFour}})), (std::vector<std::string>{"solved", "steps", "measure"}));
  EXPECT_EQ(keys(ask({{"command", "weigh"}, {"puzzle", kFour}, {"left", "r1"}, {"right", "c1"}})),
            (std::vector<std::string>{"left", "right", "surplus", "slack", "free_slack", "tally", "open_left", "open_right", "level", "eliminations", "text",
                                      "load", "points", "stronger", "impossible", "complete", "remainder_left", "remainder_right", "cancelled", "digits"}));
  EXPECT_EQ(keys(ask({{"command", "weigh"}, {"puzzle", kFour}, {"after_basics", true}})),
            (std::vector<std::string>{"balances", "scanned", "distinct", "examined", "impossible", "position"}));
  EXPECT_EQ(keys(ask({{"command", "survey"}, {"puzzle", kFour}, {"technique", {"x-wing"}}})),
            (std::vector<std::string>{"open_cells", "techniques", "balances", "close", "position"}));
  EXPECT_EQ(keys(ask({{"command", "needed"}, {"puzzle", kFour}, {"technique", {"x-wing"}}})),
            (std::vector<std::string>{"needed", "used", "orders", "text", "with", "without"}));
  EXPECT_EQ(keys(ask({{"command", "alternatives"}, {"puzzle", kFour}, {"eliminate", "r1c1=2"}})),
            (std::vector<std::string>{"target", "found", "alternatives", "position"}));
  EXPECT_EQ(keys(ask({{"command", "count"}, {"shape", "4x4"}})), (std::vector<std::string>{"shape", "grids"}));
}

TEST(ApiDoor, SameRequestSameBytes) {
  for (const char* request : {R"({"command":"path","puzzle":"..3.1......4.1.."})", R"({"command":"lesson","puzzle":"..3.1......4.1..","max_slack":2})", R"([])"}) {
    EXPECT_EQ(answer(request), answer(request));
  }
}

TEST(ApiDoor, RefusesWhatIsNoRequest) {
  for (const char* text : {"", "{", "[]", "null", "\"check\"", "7", "{}", R"({"command":5})", "\xff\xfe"}) {
    const Json got = Json::parse(answer(text));
    ASSERT_TRUE(got.contains("error")) << text;
    EXPECT_EQ(got["error"]["code"], "bad-argument") << text;
  }
}

TEST(ApiDoor, UnknownNamesGetNearOnes) {
  expect_error({{"command", "weight"}}, "bad-name", "'weight' is not a command", "did you mean weigh?");
  expect_error({{"command", "check"}, {"puzzel", kFour}, {"puzzle", kFour}}, "bad-argument", "no field 'puzzel'", "did you mean puzzle?");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"without", {"hidden-singel"}}}, "bad-name", "'hidden-singel'", "did you mean hidden-single?");
  expect_error({{"command", "count"}, {"shape", "4x"}}, "bad-name", "'4x' is not a shape", "4x4");
}

TEST(ApiDoor, FieldsOfTheWrongKind) {
  expect_error({{"command", "check"}}, "bad-argument", "'puzzle' is missing", "puzzle");
  expect_error({{"command", "check"}, {"puzzle", 5}}, "bad-argument", "a whole number", "text");
  expect_error({{"command", "weigh"}, {"puzzle", kFour}, {"after_basics", "yes"}}, "bad-argument", "is a text", "true or false");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"max_slack", 1.5}}, "bad-argument", "fraction", "whole number");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"max_slack", -1}}, "bad-argument", "out of range", "whole number");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"max_slack", 18446744073709551615ULL}}, "bad-argument", "out of range", "whole number");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"max_slack", 3}}, "bad-argument", "max_slack is 3", "0 to 2");
  expect_error({{"command", "weigh"}, {"puzzle", kFour}, {"left", "r1"}, {"right", "c1"}, {"level", 0}}, "bad-argument", "level is 0", "1 to 5");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"without", "x-wing"}}, "bad-argument", "not a list of texts", "[");
  expect_error({{"command", "path"}, {"puzzle", kFour}, {"without", {1}}}, "bad-argument", "not a list of texts", "[");
}

TEST(ApiDoor, PlacesNameTheirField) {
  const Json got = ask({{"command", "weigh"}, {"puzzle", kFour}, {"left", "r1"}, {"right", "c1, x7"}});
  EXPECT_EQ(got["error"]["where"], (Json{{"field", "right"}, {"line", 1}, {"column", 5}, {"offset", 4}, {"length", 2}}));
  const Json puzzle = ask({{"command", "check"}, {"puzzle", "..3.\n1..x"}});
  EXPECT_EQ(puzzle["error"]["where"]["field"], "puzzle");
  EXPECT_EQ(puzzle["error"]["where"]["line"], 2);
}

TEST(ApiDoor, LimitsAreOpenNotWrong) {
  EXPECT_EQ(count({"9x9"}).outcome, Outcome::kOpen);
  EXPECT_EQ(find({std::string(256, '.'), false, 1, 20}).outcome, Outcome::kOpen);
  EXPECT_EQ(weigh({std::string(256, '.'), "r1", "b1", false, 4}).outcome, Outcome::kDone);
}

TEST(ApiDoor, OutcomesOfPaths) {
  EXPECT_EQ(path({kStuck, {}, 1}).outcome, Outcome::kDone);
  EXPECT_EQ(path({kStuck, {}, 1, {"single", "locked", "subset", "fish"}}).outcome, Outcome::kOpen);
  EXPECT_EQ(path({"11..............", {}, 1}).outcome, Outcome::kRefuted);
}

TEST(ApiDoor, AChosenBalanceIsTheFoundOne) {
  const Json found = ask({{"command", "weigh"}, {"puzzle", kStuck}, {"after_basics", true}, {"limit", 3}});
  ASSERT_EQ(found["balances"].size(), 3U);
  for (const Json& balance : found["balances"]) {
    std::vector<std::string> left = balance["left"];
    std::vector<std::string> right = balance["right"];
    const Json chosen = ask({{"command", "weigh"}, {"puzzle", kStuck}, {"after_basics", true}, {"left", joined(left, ",")}, {"right", joined(right, ",")}});
    for (const char* key : {"level", "eliminations", "tally", "slack", "free_slack", "open_left", "open_right", "load", "points", "text"}) {
      EXPECT_EQ(chosen[key], balance[key]) << key;
    }
  }
}

TEST(ApiDoor, TheTallyOfTheWorkedExampleWithDoubleCover) {
  // {r2,r5,r8,c2,c5,c8} against {b1,b3,b5,b7,b9}: surplus 1; r2c5, r5c2, r5c8, r8c5 count twice (worked by hand from the
  // set equation; on the empty grid nothing is known, so each digit's tally is the surplus).
  const Json got = ask({{"command", "weigh"}, {"puzzle", std::string(81, '.')}, {"left", "r2,r5,r8,c2,c5,c8"}, {"right", "b1,b3,b5,b7,b9"}, {"level", 1}});
  EXPECT_EQ(got["surplus"], 1);
  EXPECT_EQ(got["tally"], (Json{1, 1, 1, 1, 1, 1, 1, 1, 1}));
  EXPECT_EQ(got["times"], (Json{{"r2c5", 2}, {"r5c2", 2}, {"r5c8", 2}, {"r8c5", 2}}));
  EXPECT_EQ(got["level"], 0);
}

TEST(ApiDoor, ReviewsALessonThatIsBeingWritten) {
  const std::string digit = ask({{"command", "check"}, {"puzzle", kFour}})["solution"].get<std::string>().substr(0, 1);
  const std::string other = digit == "1" ? "2" : "1";
  const std::string lesson = "counterpoise lesson 1\ntitle: T\npuzzle: " + kFour + "\n\n== First\nThree words here.\n@claim r1c1 = " + other + "\n@claim r1c1 = " + digit +
                             "\n\n== Second\n@step r1c1 = " + other + "\n\n== Third\nWords.\n";
  const Json all = ask({{"command", "lesson_review"}, {"lesson", lesson}});
  ASSERT_TRUE(all.contains("stop")) << to_line(all);
  EXPECT_EQ(all["stop"]["line"], 11);
  EXPECT_EQ(all["stop"]["scene"], "Second");
  ASSERT_EQ(all["scenes"].size(), 2U) << "the scene that stops is shown, what comes after it is not";
  EXPECT_EQ(all["scenes"][0]["words"], 4) << "the heading is read aloud too";
  EXPECT_TRUE(all["scenes"][0]["board"].get<std::string>().starts_with("<svg"));
  const Json& claims = all["scenes"][0]["claims"];
  EXPECT_EQ(claims[0]["verdict"], "refuted");
  EXPECT_EQ(claims[1]["verdict"], "proved");
  EXPECT_EQ(claims[1]["line"], 8);
  const Json second = ask({{"command", "lesson_review"}, {"lesson", lesson}, {"only", 2}})["scenes"][0]["claims"];
  EXPECT_EQ(second[0]["verdict"], "unasked");
  EXPECT_FALSE(second[0].contains("text"));
  EXPECT_EQ(second[1], claims[1]);
  EXPECT_EQ(second[0]["key"], claims[0]["key"]);
  expect_error({{"command", "lesson_review"}, {"lesson", "no lesson"}}, "bad-argument", "this is no lesson", "counterpoise lesson 1");
}

TEST(ApiDoor, EveryPublishedPuzzleIsProper) {
  for (const auto& row : support::published_puzzles()) {
    const Answer got = check({row.puzzle});
    EXPECT_EQ(got.outcome, Outcome::kDone) << row.name;
    EXPECT_EQ(got.json["solution"], row.solution) << row.name;
  }
}

}  // namespace

}  // namespace cp::api
