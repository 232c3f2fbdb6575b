// SPDX-License-Identifier: Apache-2.0
#include "speak/case_groups.h"

#include <algorithm>

#include "base/text.h"
#include "speak/case_words.h"
#include "speak/naming.h"

namespace cp {

namespace {

constexpr std::size_t kGroupsInOnePart = 3;   // more would not fit on a screen
constexpr std::size_t kGroupsOnTheirOwn = 4;  // with more than this, several share a part

// A broken case with one sentence needs no screen of its own.
bool is_brief(const CaseGroup& group) { return group.is_impossible() && group.sentences.size() <= 1; }

std::string broken_words(const CaseGroup& group) { return group.cases.size() == 1 ? "this case cannot be." : "none of these cases can be."; }

StoryPart group_part(const Telling& t, const CaseGroup& group) {
  const ShareCase& first = *group.cases.front();
  StoryPart part;
  part.kind = StoryPart::Kind::kCase;
  part.heading = "Suppose " + supposition(t, group);
  // The heading has said the supposition; one deduction a paragraph.
  for (const std::string& sentence : group.sentences) part.paragraphs.push_back({sentence, ""});
  if (group.is_impossible()) part.paragraphs.push_back({"So " + broken_words(group), ""});
  if (part.paragraphs.empty()) part.paragraphs.push_back({"This removes nothing by itself.", ""});
  part.focus = cells_of_case(first, t.scales, t.position);
  part.removed = removed_in_case(first);
  part.shares = group.cases.size() == 1 ? first.shares : t.forced;
  part.shares_are_supposed = group.cases.size() == 1;
  for (const Lemma& lemma : first.lemmas) part.houses.insert(part.houses.end(), lemma.houses.begin(), lemma.houses.end());
  return part;
}

// Several groups on one screen, without what each of them removes.
void add_shared_parts(const Telling& t, const std::vector<CaseGroup>& groups, const std::string& heading, std::vector<StoryPart>& parts) {
  for (std::size_t i = 0; i < groups.size(); ++i) {
    if (i % kGroupsInOnePart == 0) {
      StoryPart part;
      part.kind = StoryPart::Kind::kCase;
      part.heading = heading + (i == 0 ? "" : ", continued");
      part.shares = t.forced;
      parts.push_back(std::move(part));
    }
    parts.back().paragraphs.push_back({group_text(t, groups[i]), ""});
    parts.back().focus |= cells_of_case(*groups[i].cases.front(), t.scales, t.position);
  }
}

}  // namespace

std::vector<CaseGroup> group_cases(const Telling& t) {
  std::vector<const ShareCase*> ordered;
  for (const ShareCase& share_case : t.reason.cases) ordered.push_back(&share_case);
  std::stable_sort(ordered.begin(), ordered.end(), [](const ShareCase* a, const ShareCase* b) { return a->shares > b->shares; });
  std::vector<CaseGroup> groups;
  for (const ShareCase* share_case : ordered) {
    std::vector<std::string> sentences = lemmas_in_words(*share_case, t.scales, t.position);
    const auto known = std::find_if(groups.begin(), groups.end(), [&](const CaseGroup& group) {
      return group.sentences == sentences && group.is_impossible() == share_case->is_impossible;
    });
    if (known != groups.end()) {
      known->cases.push_back(share_case);
    } else {
      groups.push_back({{share_case}, std::move(sentences)});
    }
  }
  return groups;
}

std::string supposition(const Telling& t, const CaseGroup& group) {
  const std::string other = sum_of(t.forced) > 0 ? "other " : "";
  std::vector<std::string> choices;
  for (const ShareCase* share_case : group.cases) choices.push_back(supposed_in_words(*share_case, t.forced, t.shape));
  if (t.free_slack == 1) return "the " + other + "shared digit is " + listed(choices, "or");
  return "the " + other + "shared digits are " + (choices.size() == 1 ? choices[0] : joined(choices, ", or "));
}

std::string group_text(const Telling& t, const CaseGroup& group) {
  const std::string start = "Suppose " + supposition(t, group) + ". ";
  const std::string broken = broken_words(group);
  if (group.sentences.empty()) return start + (group.is_impossible() ? capitalised(broken) : "This removes nothing by itself.");
  return start + joined(group.sentences, " ") + (group.is_impossible() ? " So " + broken : "");
}

std::string verdict_of_cases(const Telling& t) {
  CaseGroup surviving;
  for (const CaseGroup& group : group_cases(t)) {
    if (!group.is_impossible()) surviving.cases.insert(surviving.cases.end(), group.cases.begin(), group.cases.end());
  }
  const int count = static_cast<int>(surviving.cases.size());
  if (count == 0) return "No case survives, so this position has no solution.";
  if (count == 1) return "Only one case survives: " + supposition(t, surviving) + ".";
  const bool is_all = surviving.cases.size() == t.reason.cases.size();
  return "We do not know which of the " + spoken_number(count) + (is_all ? " cases is the true one." : " surviving cases is the true one.") +
         " But what falls in each of them falls for good.";
}

void add_case_parts(const Telling& t, std::vector<StoryPart>& parts) {
  std::vector<CaseGroup> brief;
  std::vector<CaseGroup> others;
  for (CaseGroup& group : group_cases(t)) (is_brief(group) ? brief : others).push_back(std::move(group));
  const bool is_one = brief.size() == 1 && brief.front().cases.size() == 1;
  const std::string heading = is_one ? "A digit that cannot be shared" : "Digits that cannot be shared";
  add_shared_parts(t, brief, t.free_slack == 1 ? heading : "Digits that cannot be shared together", parts);
  if (others.size() > kGroupsOnTheirOwn) {
    add_shared_parts(t, others, "Case by case", parts);
    return;
  }
  for (const CaseGroup& group : others) parts.push_back(group_part(t, group));
}

}  // namespace cp
