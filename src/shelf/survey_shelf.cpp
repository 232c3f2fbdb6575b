// SPDX-License-Identifier: Apache-2.0
#include "shelf/survey_shelf.h"

#include <algorithm>
#include <limits>
#include <set>

#include "grid/notation.h"
#include "path/selection.h"
#include "scan/record_json.h"
#include "scan/survey_puzzle.h"
#include "shelf/in_parallel.h"

namespace cp {

namespace {

constexpr std::int64_t kBlock = 256;  // puzzles that are surveyed and kept in one piece
constexpr std::int64_t kNoEnd = std::numeric_limits<std::int64_t>::max();

// A survey that asked what is needed is deeper than one that did not.
int depth_number(SurveyDepth depth, bool asked_needed) { return 2 * static_cast<int>(depth) + (asked_needed ? 1 : 0); }

const Technique* technique_of(const std::string& id) {
  for (const Technique& technique : catalogue()) {
    if (technique.id == id) return &technique;
  }
  return nullptr;  // a balance
}

bool is_single(const std::string& id) {
  const Technique* technique = technique_of(id);
  return technique != nullptr && technique->family == "single";
}

void put_path(const SurveyPath& path, std::set<FacetName>& facets) {
  facets.insert({std::string(kPathKind), path.end == "solved" ? "solved" : "stuck"});
  for (const TechniqueUse& use : path.techniques) {
    facets.insert({std::string(kUsesKind), use.technique});
    const Technique* technique = technique_of(use.technique);
    if (technique == nullptr) continue;
    facets.insert({std::string(kUsesKind), std::string(technique->family)});
    if (technique->needs_unique) facets.insert({std::string(kUsesKind), std::string(kUniquenessGroup)});
  }
  if (path.end == "solved" && std::all_of(path.tail.begin(), path.tail.end(), is_single)) facets.insert({std::string(kPathKind), "tail singles"});
}

// Which kinds of houses stand in the pans: bit 0 rows, 1 columns, 2 boxes.
unsigned kinds_in(const BalanceNote& balance) {
  unsigned kinds = 0;
  for (const char letter : balance.left + balance.right) kinds |= letter == 'r' ? 1U : letter == 'c' ? 2U : letter == 'b' ? 4U : 0U;
  return kinds;
}

void put_balances(const std::vector<BalanceNote>& balances, std::set<FacetName>& facets) {
  for (unsigned allowed = 1; allowed < 8; ++allowed) {
    int least = kMostSlack + 1;
    for (const BalanceNote& balance : balances) {
      if ((kinds_in(balance) & ~allowed) == 0) least = std::min(least, balance.slack);
    }
    if (least <= kMostSlack) facets.insert({std::string(kBalanceKind), balance_facet({(allowed & 1U) != 0, (allowed & 2U) != 0, (allowed & 4U) != 0}, least)});
  }
}

// Puzzles still to be surveyed, block by block.
class Waiting {
 public:
  Waiting(Shelf& shelf, const ShelfSurveyWish& wish) : shelf_(shelf), wish_(wish), depth_(depth_number(wish.depth, wish.ask_needed)) {}

  std::optional<Error> begin() {
    if (!wish_.query) return std::nullopt;
    auto found = shelf_.find(*wish_.query, {FindOrder::kNumber, 0, 0});
    if (!found) return found.error();
    numbers_ = std::move(found).value().numbers;
    return std::nullopt;
  }

  Result<std::vector<PuzzleText>> next(std::int64_t most) {
    if (!wish_.query) {
      auto block = shelf_.to_survey(above_, kNoEnd, depth_, most);
      if (block && !block->empty()) above_ = block->back().number;
      return block;
    }
    std::vector<PuzzleText> block;
    while (at_ < numbers_.size() && static_cast<std::int64_t>(block.size()) < most) {
      auto one = shelf_.to_survey(numbers_[at_] - 1, numbers_[at_], depth_, 1);
      if (!one) return one;
      if (!one->empty()) block.push_back(std::move(one->front()));
      ++at_;
    }
    return block;
  }

 private:
  Shelf& shelf_;
  const ShelfSurveyWish& wish_;
  int depth_;
  std::int64_t above_ = 0;
  std::vector<std::int64_t> numbers_;
  std::size_t at_ = 0;
};

}  // namespace

SurveyRow survey_row(std::int64_t puzzle, const SurveyRecord& record) {
  const SurveyPath& path = *record.path;
  SurveyRow row;
  row.puzzle = puzzle;
  row.depth = depth_number(record.depth, record.asked_needed && record.depth == SurveyDepth::kFull);
  row.steps = path.steps;
  row.hardest = path.hardest;
  row.effort = path.effort;
  row.beyond_singles = path.beyond_singles;
  row.narrow = path.narrow;
  row.open_tenths = path.open_tenths;
  std::set<FacetName> facets;
  put_path(path, facets);
  for (const std::string& name : record.needed) facets.insert({std::string(kNeedsKind), name});
  put_balances(record.balances, facets);
  row.facets.assign(facets.begin(), facets.end());
  row.record = record_line(record);
  return row;
}

Result<std::int64_t> survey_shelf(Shelf& shelf, const ShelfSurveyWish& wish, const ShelfSurveyProgress& progress) {
  Waiting waiting(shelf, wish);
  if (auto trouble = waiting.begin()) return std::move(*trouble);
  const SurveyWish how{wish.depth, wish.ask_needed};
  const int depth = depth_number(wish.depth, wish.ask_needed);
  std::int64_t done = 0;
  for (;;) {
    const std::int64_t most = wish.most == 0 ? kBlock : std::min(kBlock, wish.most - done);
    const auto block = waiting.next(most);
    if (!block) return block.error();
    if (block->empty()) return done;
    std::vector<SurveyRow> rows(block->size());
    in_parallel(block->size(), wish.threads, 1, [&](std::size_t at) {
      const PuzzleText& puzzle = (*block)[at];
      const SurveyRecord record = survey_puzzle(parse_position(puzzle.text).value(), how);
      if (!record.path) return;
      rows[at] = survey_row(puzzle.number, record);
      rows[at].depth = depth;  // also where nothing could be asked, because the path is stuck: asking again would not help
    });
    std::erase_if(rows, [](const SurveyRow& row) { return row.puzzle == 0; });
    if (auto trouble = shelf.keep_surveys(rows)) return std::move(*trouble);
    done += static_cast<std::int64_t>(block->size());
    if ((progress && !progress(done)) || done == wish.most) return done;
  }
}

}  // namespace cp
