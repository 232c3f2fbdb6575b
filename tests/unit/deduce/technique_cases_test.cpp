// SPDX-License-Identifier: Apache-2.0
// Runs tests/cases/deduce/*.case: one test a case, named after it.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "case_file.h"
#include "deduce/technique.h"
#include "grid/notation.h"
#include "oracle/reason_replay.h"
#include "step/step.h"

namespace cp::cases {
namespace {

struct NamedCase {
  std::string technique;
  Case content;
};

// How GoogleTest shows a case.
void PrintTo(const NamedCase& shown, std::ostream* out) { *out << shown.technique << ": " << shown.content.shows; }

Result<std::vector<Case>> cases_of(const Technique& technique) {
  std::string file(technique.id);
  std::replace(file.begin(), file.end(), '-', '_');
  std::ifstream in(std::string(CP_SOURCE_DIR) + "/tests/cases/deduce/" + file + ".case");
  std::stringstream text;
  text << in.rdbuf();
  return read_cases(text.str());
}

std::vector<NamedCase> all_cases() {
  std::vector<NamedCase> all;
  for (const Technique& technique : catalogue()) {
    const auto cases = cases_of(technique);
    if (!cases) continue;  // TechniqueCases.EveryFileReads says what is wrong
    for (const Case& each : *cases) all.push_back({std::string(technique.id), each});
  }
  return all;
}

std::vector<std::string> as_lines(const Shape& shape, const std::vector<ExpectedStep>& steps) {
  std::vector<std::string> lines;
  for (const ExpectedStep& step : steps) lines.push_back(to_text(shape, step));
  return lines;
}

class TechniqueCase : public testing::TestWithParam<NamedCase> {};

TEST_P(TechniqueCase, SaysWhatTheCaseExpects) {
  const Case& content = GetParam().content;
  const Technique& technique = **find_technique(GetParam().technique);
  StepList found;
  technique.find(content.position, found);
  std::vector<ExpectedStep> steps;
  for (const Step& step : found.steps) {
    steps.push_back({step.placements, step.eliminations});
    EXPECT_EQ(oracle::replay_fault(content.position, step), "");
  }
  const Shape& shape = content.position.shape();
  EXPECT_EQ(as_lines(shape, steps), as_lines(shape, content.expected))
      << content.name << " (" << content.shows << "), line " << content.line << "\n" << to_candidate_text(content.position);
}

std::string name_of_case(const testing::TestParamInfo<NamedCase>& parameter) {
  std::string name = parameter.param.content.name;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Cases, TechniqueCase, testing::ValuesIn(all_cases()), name_of_case);

TEST(TechniqueCases, EveryFileReads) {
  for (const Technique& technique : catalogue()) {
    const auto cases = cases_of(technique);
    EXPECT_TRUE(cases.is_ok()) << technique.id << ": " << (cases ? "" : cases.error().message);
  }
}

TEST(TechniqueCases, EachTechniqueHasThreeFiringThreeNearMissesAndAnotherShape) {
  std::map<std::string, std::array<int, 3>> counts;
  std::set<std::string> names;
  for (const NamedCase& each : all_cases()) {
    auto& [firing, missing, other_shape] = counts[each.technique];
    ++(each.content.expected.empty() ? missing : firing);
    other_shape += each.content.position.shape().side() != 9 && !each.content.expected.empty() ? 1 : 0;
    EXPECT_FALSE(each.content.shows.empty()) << each.content.name;
    EXPECT_TRUE(names.insert(each.content.name).second) << each.content.name << " stands twice";
  }
  for (const Technique& technique : catalogue()) {
    const auto& [firing, missing, other_shape] = counts[std::string(technique.id)];
    EXPECT_GE(firing, 3) << technique.id;
    EXPECT_GE(missing, 3) << technique.id;
    EXPECT_GE(other_shape, 1) << technique.id;
  }
}

// The example in the manual is a case file that holds.
TEST(CaseFile, TheExampleInTheManualHolds) {
  std::ifstream in(std::string(CP_SOURCE_DIR) + "/docs/formats/case.md");
  std::stringstream text;
  text << in.rdbuf();
  const std::string page = text.str();
  const std::size_t start = page.find("```case\n");
  ASSERT_NE(start, std::string::npos);
  const auto cases = read_cases(page.substr(start + 8, page.find("\n```", start) - start - 7));
  ASSERT_TRUE(cases.is_ok()) << cases.error().message;
  ASSERT_EQ(cases->size(), 2U);
  for (const Case& each : *cases) {
    StepList found;
    (*find_technique("naked-pair"))->find(each.position, found);
    ASSERT_EQ(found.steps.size(), each.expected.size()) << each.name;
    for (std::size_t i = 0; i < found.steps.size(); ++i) EXPECT_EQ(found.steps[i].eliminations, each.expected[i].eliminations);
  }
}

TEST(CaseFile, SaysWhichLineIsWrong) {
  const auto unknown = read_cases("case a-b\ngrid empty 9x9\nexpects nothing\n");
  ASSERT_FALSE(unknown.is_ok());
  EXPECT_EQ(unknown.error().message, "line 3: 'expects' is not a word of this format");
  const auto neither = read_cases("case a-b\ngrid empty 9x9\n");
  ASSERT_FALSE(neither.is_ok());
  EXPECT_EQ(neither.error().message, "line 3: a-b expects steps or nothing, not both or neither");
  const auto digit = read_cases("case a-b\ngrid empty 4x4\nkeep r1c1 5\nexpect nothing\n");
  ASSERT_FALSE(digit.is_ok());
  EXPECT_EQ(digit.error().message, "line 3: '5' is not a digit");
}

TEST(CaseFile, ReadsGridsOverSeveralLinesAndLimits) {
  const auto cases = read_cases("case two-lines\nshow s\ngrid\n  1... ....\n  .... ....   # rest\nkeep r2c2 34\nonly 2 in r4: r4c1\nexpect r4c1 = 2\n");
  ASSERT_TRUE(cases.is_ok()) << cases.error().message;
  const Position& position = cases->front().position;
  EXPECT_EQ(to_line(position), "1...............");
  EXPECT_EQ(position.candidates(Cell(5)).size(), 2);
  EXPECT_EQ(position.places(position.shape().row(3), Digit(1)).size(), 1);
}

}  // namespace
}  // namespace cp::cases
