// SPDX-License-Identifier: Apache-2.0
// The cards of the techniques (docs/manual/techniques): their parts are there, the example is a position in which the technique
// fires, what the card says of it is what the program says, and the figure is the one the program draws.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "deduce/technique.h"
#include "export/board_svg.h"
#include "grid/notation.h"
#include "lesson/figure.h"
#include "speak/step_text.h"
#include "verify/step_check.h"

namespace cp {
namespace {

std::string read_file(const std::string& path) {
  std::ifstream in(std::string(CP_SOURCE_DIR) + "/" + path);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

class Card : public testing::TestWithParam<std::string_view> {};

TEST_P(Card, HasItsPartsAndAnExampleThatHolds) {
  const Technique& technique = **find_technique(GetParam());
  const std::string id(technique.id);
  const std::string text = read_file("docs/manual/techniques/" + id + ".md");
  std::size_t last = 0;
  for (const char* heading : {"# ", "\n## What it is\n", "\n## Why it holds\n", "\n## What to look for\n", "\n## Example\n", "```position\n"}) {
    const std::size_t at = text.find(heading, last);
    ASSERT_NE(at, std::string::npos) << id << " lacks " << heading;
    last = at;
  }
  const std::size_t start = text.find("```position\n") + 12;
  const auto position = parse_position(text.substr(start, text.find("```", start) - start));
  ASSERT_TRUE(position.is_ok()) << id << ": " << position.error().message;
  StepList all;
  technique.find(*position, all);
  const auto told = std::find_if(all.steps.begin(), all.steps.end(), [&](const Step& step) { return text.find("\n" + step_text(step, *position) + "\n") != std::string::npos; });
  ASSERT_NE(told, all.steps.end()) << id << ": none of its steps is told on the card";
  EXPECT_TRUE(check_step(*position, *told).holds);
  EXPECT_EQ(read_file("docs/pictures/techniques/" + id + ".svg"), board_svg(step_figure(*told, *position, std::string(technique.name)), SvgUse::kFile, id)) << id;
}

std::vector<std::string_view> ids() {
  std::vector<std::string_view> all;
  for (const Technique& technique : catalogue()) all.push_back(technique.id);
  return all;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, Card, testing::ValuesIn(ids()), [](const auto& parameter) {
  std::string name(parameter.param);
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

// The list of the catalogue names them all, with their costs.
TEST(CatalogueList, IsTheCatalogue) {
  const std::string text = read_file("docs/manual/techniques.md");
  for (const Technique& technique : catalogue()) {
    const std::string line = "](techniques/" + std::string(technique.id) + ".md) | `" + std::string(technique.id) + "` | " + std::to_string(technique.cost) + " |";
    EXPECT_NE(text.find(line), std::string::npos) << line;
  }
}

}  // namespace
}  // namespace cp
