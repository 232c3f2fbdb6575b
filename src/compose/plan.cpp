// SPDX-License-Identifier: Apache-2.0
#include "compose/plan.h"

#include "base/text.h"
#include "compose/detail/plan_words.h"

namespace cp {

namespace {

std::string kinds_text(const std::array<int, 3>& counts) {
  std::vector<std::string> parts;
  for (std::size_t kind = 0; kind < 3; ++kind) {
    if (counts[kind] > 0) parts.push_back(to_text(counts[kind]) + " " + std::string(detail::kKindNames[kind]) + (counts[kind] == 1 ? "" : kind == 2 ? "es" : "s"));
  }
  return joined(parts, " + ");
}

std::string count_text(const Look& look) {
  const std::string least = to_text(look.least);
  const std::string most = to_text(look.most);
  if (look.counts_empty) {
    if (look.most == 0) return "all";
    return "all but " + (look.least == look.most ? least : least + "-" + most);
  }
  if (look.most == 0) return "none";
  if (look.most >= detail::kNoMost) return "at least " + least;
  if (look.least == look.most) return least;
  return look.least == 0 ? "at most " + most : least + "-" + most;
}

std::string pattern_text(const std::string& pattern) {
  const Shape& shape = plan_shape();
  std::string text = "pattern:\n";
  for (const Cell cell : shape.all_cells()) {
    const int column = shape.column_of(cell);
    text += column == 0 ? "  " : column % shape.box_columns() == 0 ? " | " : " ";
    text += pattern[cell.index];
    if (column == shape.side() - 1) text += "\n";
  }
  return text;
}

}  // namespace

std::string idea_text(const PlannedIdea& idea) {
  switch (idea.kind) {
    case PlannedIdea::Kind::kHouses: return pan_text(plan_shape(), idea.weights, true) + " against " + pan_text(plan_shape(), idea.weights, false);
    case PlannedIdea::Kind::kOfAKind: return kinds_text(idea.left) + " against " + kinds_text(idea.right);
    case PlannedIdea::Kind::kTechnique: return "technique " + idea.technique;
    case PlannedIdea::Kind::kAnyBalance: break;
  }
  return "any balance";
}

std::string look_text(const Look& look) {
  std::string region;
  if (look.region == Look::Region::kHouses) {
    std::vector<std::string> names;
    for (const House house : look.houses) names.push_back(plan_shape().name_of(house));
    region = joined(names, ",");
  } else {
    region = detail::kRegionNames[static_cast<std::size_t>(look.region)];
  }
  return region + " " + count_text(look);
}

std::string to_text(const Plan& plan) {
  std::string text = std::string(kPlanFirstLine) + "\n";
  if (!plan.title.empty()) text += "title: " + plan.title + "\n";
  text += "idea: " + idea_text(plan.idea) + "\n";
  if (plan.idea.is_balance()) {
    text += "level: " + to_text(plan.idea.level) + "\n";
    text += "slack: " + to_text(plan.idea.slack) + "\n";
  }
  text += "before: " + (plan.before.empty() ? "nothing" : joined(plan.before, ", ")) + "\n";
  if (!plan.without.empty()) text += "without: " + joined(plan.without, ", ") + "\n";
  text += "after: " + (plan.after.empty() ? "nothing" : joined(plan.after, ", ")) + "\n";
  text += "givens: " + to_text(plan.least_givens) + (plan.least_givens == plan.most_givens ? "" : "-" + to_text(plan.most_givens)) + "\n";
  for (const Symmetry symmetry : plan.symmetries) text += "symmetry: " + std::string(detail::kSymmetryNames[static_cast<std::size_t>(symmetry)]) + "\n";
  for (const Look& look : plan.looks) text += "look: " + look_text(look) + "\n";
  if (plan.minimal) text += "minimal: yes\n";
  if (!plan.pattern.empty()) text += pattern_text(plan.pattern);
  return text;
}

}  // namespace cp
