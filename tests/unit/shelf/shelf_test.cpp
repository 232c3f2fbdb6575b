// SPDX-License-Identifier: Apache-2.0
// The shelf as a store: what is put there is found again, also by a model without SQL, also in older files.
#include "store/shelf.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "base/rng.h"
#include "store/schema.h"
#include "support/scratch_folder.h"

namespace cp {
namespace {

class ShelfTest : public support::ScratchFolderTest {
 protected:
  Shelf fresh() {
    auto shelf = Shelf::open(path("a.shelf"), Database::Mode::kCreate);
    EXPECT_TRUE(shelf.is_ok()) << shelf.error().message;
    return std::move(shelf).value();
  }
};

// A puzzle that is told apart by its number alone.
NewLine line_of(std::uint64_t number, int givens = 24, int solutions = 1) {
  NewPuzzle puzzle;
  puzzle.text = std::string(81, '.');
  for (std::uint64_t rest = number, at = 0; rest > 0; rest /= 9, ++at) puzzle.text[at] = static_cast<char>('1' + rest % 9);
  puzzle.canonical = puzzle.text;
  puzzle.givens = givens;
  puzzle.solutions = solutions;
  puzzle.source = "own";
  NewLine line{number};
  line.puzzle = std::move(puzzle);
  return line;
}

QueryTerm query(std::string_view text) {
  auto term = parse_query(text, [](const std::string&, std::string_view) { return std::optional<Error>(); });
  EXPECT_TRUE(term.is_ok()) << text;
  return std::move(term).value();
}

std::vector<std::int64_t> all_found(Shelf& shelf, std::string_view text, FindOrder order = FindOrder::kNumber) {
  const auto found = shelf.find(query(text), {order, 0, 0});
  EXPECT_TRUE(found.is_ok()) << text << ": " << (found ? "" : found.error().message);
  return found ? found->numbers : std::vector<std::int64_t>{-1};
}

TEST_F(ShelfTest, ImportedPuzzlesAreThereWithTheirWords) {
  Shelf shelf = fresh();
  auto state = shelf.begin_import("some.txt").value();
  NewLine first = line_of(1);
  first.puzzle->tags = {"opening"};
  first.puzzle->note = "nice";
  NewLine broken{2};
  broken.fault = "no puzzle";
  broken.column = 4;
  NewLine again = line_of(1);
  again.line = 3;
  again.puzzle->text[80] = '1';  // another text of the same canonical form
  const auto shelved = shelf.add(state, {first, broken, again}, {100, 3, 77}, true);
  ASSERT_TRUE(shelved.is_ok()) << shelved.error().message;
  EXPECT_EQ((*shelved)[0].as, Shelved::As::kFresh);
  EXPECT_EQ((*shelved)[1].as, Shelved::As::kFault);
  EXPECT_EQ((*shelved)[2].as, Shelved::As::kRepeat);
  EXPECT_EQ((*shelved)[2].puzzle, 1);
  const auto puzzle = shelf.puzzle(1).value();
  EXPECT_EQ(puzzle.tags, std::vector<std::string>{"opening"});
  EXPECT_EQ(puzzle.notes, std::vector<std::string>{"nice"});
  EXPECT_EQ(puzzle.source, "own");
  EXPECT_EQ(shelf.faults_of(state.id, 10)->at(0).column, 4);
  EXPECT_EQ(shelf.repeats_of(state.id, 10)->at(0).line, 3U);
  const auto kept = shelf.find_import("some.txt").value();
  ASSERT_TRUE(kept.has_value());
  EXPECT_EQ(kept->place, (Place{100, 3, 77}));
  EXPECT_EQ(kept->fresh, 1);
  EXPECT_EQ(kept->repeats, 1);
  EXPECT_EQ(kept->faults, 1);
  EXPECT_FALSE(shelf.puzzle(2).is_ok());
  EXPECT_EQ(shelf.puzzle(2).error().code, ErrorCode::kNotFound);
}

TEST_F(ShelfTest, WordsComeAndGo) {
  Shelf shelf = fresh();
  auto state = shelf.begin_import("x").value();
  ASSERT_TRUE(shelf.add(state, {line_of(1), line_of(2), line_of(3)}, {}, true).is_ok());
  EXPECT_FALSE(shelf.add_word({1, 3}, kTagKind, "t").has_value());
  EXPECT_FALSE(shelf.add_word({3}, kLessonKind, "course").has_value());
  EXPECT_EQ(all_found(shelf, "tag t"), (std::vector<std::int64_t>{1, 3}));
  EXPECT_EQ(all_found(shelf, "tag t and unused"), (std::vector<std::int64_t>{1}));
  EXPECT_EQ(all_found(shelf, "used in course"), (std::vector<std::int64_t>{3}));
  EXPECT_EQ(all_found(shelf, "unused in course"), (std::vector<std::int64_t>{1, 2}));
  EXPECT_FALSE(shelf.drop_word({3}, kLessonKind, "course").has_value());
  EXPECT_EQ(all_found(shelf, "used"), (std::vector<std::int64_t>{}));
  EXPECT_FALSE(shelf.add_note(2, "about Fins").has_value());
  EXPECT_EQ(all_found(shelf, "note fin"), (std::vector<std::int64_t>{2}));
  EXPECT_FALSE(shelf.drop_notes(2).has_value());
  EXPECT_EQ(all_found(shelf, "note fin"), (std::vector<std::int64_t>{}));
}

TEST_F(ShelfTest, PuzzlesToSurveyLieBetweenTwoNumbers) {
  Shelf shelf = fresh();
  auto state = shelf.begin_import("x").value();
  ASSERT_TRUE(shelf.add(state, {line_of(1), line_of(2), line_of(3)}, {}, true).is_ok());
  SurveyRow row;
  row.puzzle = 2;
  row.depth = 5;
  ASSERT_FALSE(shelf.keep_surveys({row}).has_value());
  EXPECT_TRUE(shelf.to_survey(1, 2, 5, 9)->empty());  // the next one that waits lies beyond
  ASSERT_EQ(shelf.to_survey(1, 2, 6, 9)->size(), 1U);
  EXPECT_EQ(shelf.to_survey(0, 3, 5, 9)->size(), 2U);
  EXPECT_EQ(shelf.to_survey(0, 3, 5, 1)->front().number, 1);
}

TEST_F(ShelfTest, WhatFailsIsTakenBackWhole) {
  Shelf shelf = fresh();
  auto state = shelf.begin_import("x").value();
  ASSERT_TRUE(shelf.add(state, {line_of(1)}, {}, true).is_ok());
  const auto trouble = shelf.add_word({1, 99}, kTagKind, "t");
  ASSERT_TRUE(trouble.has_value());
  EXPECT_EQ(trouble->message, "there is no puzzle number 99 on the shelf");
  EXPECT_EQ(all_found(shelf, "tag t"), (std::vector<std::int64_t>{}));
  EXPECT_FALSE(shelf.add_word({1}, kTagKind, "t").has_value());  // and it goes on
  EXPECT_EQ(all_found(shelf, "tag t"), (std::vector<std::int64_t>{1}));
}

TEST_F(ShelfTest, AnOlderFileIsBroughtUpToDate) {
  {
    auto old = Database::open(path("old.shelf"), Database::Mode::kCreate);
    ASSERT_TRUE(old.is_ok());
    std::ifstream file(std::string(CP_SOURCE_DIR) + "/tests/data/shelf_version_1.sql");
    std::stringstream text;
    text << file.rdbuf();
    old.value().run_all(text.str());
    ASSERT_FALSE(old.value().trouble().has_value()) << old.value().trouble()->message;
  }
  const auto reading = Shelf::open(path("old.shelf"), Database::Mode::kRead);
  ASSERT_FALSE(reading.is_ok());
  EXPECT_EQ(reading.error().message, "the shelf '" + path("old.shelf") + "' is of an older version");
  auto shelf = Shelf::open(path("old.shelf"), Database::Mode::kWrite);
  ASSERT_TRUE(shelf.is_ok()) << shelf.error().message;
  const auto puzzle = shelf.value().puzzle(1).value();
  EXPECT_EQ(puzzle.name, "four");
  EXPECT_EQ(puzzle.notes, std::vector<std::string>{"for the youngest"});
  EXPECT_EQ(all_found(shelf.value(), "tag small and used in first"), (std::vector<std::int64_t>{1}));
  SurveyRow row;
  row.puzzle = 1;
  row.depth = 1;
  row.facets = {{"uses", "x-wing"}};
  EXPECT_FALSE(shelf.value().keep_surveys({row}).has_value());
  EXPECT_EQ(all_found(shelf.value(), "uses x-wing"), (std::vector<std::int64_t>{1}));
  EXPECT_TRUE(Shelf::open(path("old.shelf"), Database::Mode::kRead).is_ok());
}

std::string bytes_of(const std::string& path) {
  std::stringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  return bytes.str();
}

TEST_F(ShelfTest, ForeignAndNewerFilesAreRefusedAndStayAsTheyAre) {
  {
    auto other = Database::open(path("other"), Database::Mode::kCreate);
    other.value().run_all("PRAGMA journal_mode = DELETE; CREATE TABLE things(a); PRAGMA application_id = 5;");
    auto newer = Database::open(path("newer"), Database::Mode::kCreate);
    newer.value().run_all("PRAGMA journal_mode = DELETE; CREATE TABLE things(a); PRAGMA application_id = 1129345896; PRAGMA user_version = 99;");
    std::ofstream(path("text")) << std::string(5000, 'x');
  }
  const auto message = [&](const std::string& name) {
    const std::string before = bytes_of(path(name));
    EXPECT_FALSE(before.empty());
    std::string said = Shelf::open(path(name), Database::Mode::kCreate).error().message;
    EXPECT_TRUE(bytes_of(path(name)) == before) << name;
    return said;
  };
  EXPECT_NE(message("other").find("belongs to another program"), std::string::npos);
  EXPECT_NE(message("newer").find("is of version 99"), std::string::npos);
  EXPECT_NE(message("text").find("is no shelf"), std::string::npos);
  EXPECT_EQ(Shelf::open(path("none"), Database::Mode::kRead).error().code, ErrorCode::kNotFound);
}

// ---- queries against a model -------------------------------------------------------

struct Model {
  int givens = 0;
  int solutions = 0;
  bool is_surveyed = false;
  int effort = 0;
  std::set<std::string> uses;
  std::set<std::string> tags;
  int rows_columns_slack = 9;  // 9: no such balance
};

// The definition again, plainly. `term` holds, does not hold, or (of a puzzle that was not surveyed) does neither.
std::optional<bool> holds(const QueryTerm& term, const Model& model) {
  switch (term.kind) {
    case QueryTerm::Kind::kAll:
    case QueryTerm::Kind::kAny: {
      const bool all = term.kind == QueryTerm::Kind::kAll;
      std::optional<bool> result = all;
      for (const QueryTerm& part : term.parts) {
        const auto one = holds(part, model);
        if (one == !all) return !all;
        if (!one) result = std::nullopt;
      }
      return result;
    }
    case QueryTerm::Kind::kNot: {
      const auto one = holds(term.parts.front(), model);
      return one ? std::optional<bool>(!*one) : std::nullopt;
    }
    case QueryTerm::Kind::kNumber:
      if (term.number == "givens") return model.givens >= term.low && model.givens <= term.high;
      if (!model.is_surveyed) return std::nullopt;
      return model.effort >= term.low && model.effort <= term.high;
    case QueryTerm::Kind::kProper: return model.solutions == 1;
    case QueryTerm::Kind::kSurveyed: return model.is_surveyed;
    case QueryTerm::Kind::kFacet:
      if (term.facets.front().kind == kTagKind) return model.tags.contains(term.facets.front().name);
      if (!model.is_surveyed) return std::nullopt;
      if (term.facets.front().kind == kUsesKind) return model.uses.contains(term.facets.front().name);
      return std::any_of(term.facets.begin(), term.facets.end(), [&](const FacetName& facet) { return facet.name == "rc/" + std::to_string(model.rows_columns_slack); });
    default: return false;
  }
}

std::vector<Model> fill_with_model(Shelf& shelf, int count, Rng& rng) {
  std::vector<Model> models(1);
  std::vector<NewLine> lines;
  std::vector<SurveyRow> surveys;
  for (int number = 1; number <= count; ++number) {
    Model model;
    model.givens = 17 + static_cast<int>(rng.below(15));
    model.solutions = rng.below(10) == 0 ? 2 : 1;
    model.is_surveyed = model.solutions == 1 && rng.below(3) != 0;
    lines.push_back(line_of(static_cast<std::uint64_t>(number), model.givens, model.solutions));
    for (const char* tag : {"a", "b"}) {
      if (rng.below(8) == 0) model.tags.insert(tag);
    }
    lines.back().puzzle->tags.assign(model.tags.begin(), model.tags.end());
    if (model.is_surveyed) {
      SurveyRow row;
      row.puzzle = number;
      row.depth = 1;
      row.effort = model.effort = static_cast<int>(rng.below(500));
      for (const char* technique : {"x-wing", "naked-pair", "w-wing"}) {
        if (rng.below(4) != 0) continue;
        model.uses.insert(technique);
        row.facets.push_back({std::string(kUsesKind), technique});
      }
      if (rng.below(5) == 0) {
        model.rows_columns_slack = static_cast<int>(rng.below(3));
        row.facets.push_back({std::string(kBalanceKind), balance_facet({true, true, false}, model.rows_columns_slack)});
      }
      surveys.push_back(std::move(row));
    }
    models.push_back(std::move(model));
  }
  auto state = shelf.begin_import("x").value();
  EXPECT_TRUE(shelf.add(state, lines, {}, true).is_ok());
  EXPECT_FALSE(shelf.keep_surveys(surveys).has_value());
  EXPECT_FALSE(shelf.keep_surveys(surveys).has_value());  // a second survey replaces the first
  return models;
}

QueryTerm random_query(Rng& rng, int depth) {
  const char* const terms[] = {"proper",   "surveyed",      "givens <= 20", "givens = 25",    "effort < 100",  "effort > 450",          "uses x-wing",
                               "uses w-wing", "no naked-pair", "tag a",        "not tag b", "balance slack <= 1 over rows columns", "balance slack = 2 over columns rows"};
  if (depth == 0 || rng.below(3) == 0) return query(terms[rng.below(std::size(terms))]);
  if (rng.below(4) == 0) return QueryTerm{QueryTerm::Kind::kNot, {random_query(rng, depth - 1)}};
  QueryTerm term{rng.below(3) == 0 ? QueryTerm::Kind::kAny : QueryTerm::Kind::kAll};
  for (std::uint32_t part = 0; part < 2 + rng.below(2); ++part) term.parts.push_back(random_query(rng, depth - 1));
  return term;
}

TEST_F(ShelfTest, RandomQueriesFindWhatTheModelFinds) {
  Shelf shelf = fresh();
  Rng rng(20261126);
  const std::vector<Model> models = fill_with_model(shelf, 400, rng);
  int with_results = 0;
  for (int round = 0; round < 400; ++round) {
    const QueryTerm term = random_query(rng, 3);
    std::vector<std::int64_t> wanted;
    for (std::size_t number = 1; number < models.size(); ++number) {
      if (holds(term, models[number]) == true) wanted.push_back(static_cast<std::int64_t>(number));
    }
    const auto found = shelf.find(term, {FindOrder::kNumber, 0, 0});
    ASSERT_TRUE(found.is_ok()) << to_text(term) << ": " << found.error().message;
    ASSERT_EQ(found->numbers, wanted) << to_text(term);
    with_results += wanted.empty() ? 0 : 1;
    const auto page = shelf.find(term, {FindOrder::kNumber, 3, 2});
    ASSERT_TRUE(page.is_ok());
    const std::size_t from = std::min<std::size_t>(2, wanted.size());
    ASSERT_EQ(page->numbers, std::vector<std::int64_t>(wanted.begin() + static_cast<std::ptrdiff_t>(from), wanted.begin() + static_cast<std::ptrdiff_t>(std::min(from + 3, wanted.size()))));
    ASSERT_EQ(page->has_more, wanted.size() > 5);
  }
  EXPECT_GT(with_results, 200);
}

TEST_F(ShelfTest, OrdersAreKept) {
  Shelf shelf = fresh();
  Rng rng(7);
  const std::vector<Model> models = fill_with_model(shelf, 200, rng);
  const auto by_effort = all_found(shelf, "givens <= 25", FindOrder::kEffort);
  EXPECT_GT(by_effort.size(), 20U);
  EXPECT_TRUE(std::is_sorted(by_effort.begin(), by_effort.end(), [&](std::int64_t a, std::int64_t b) { return models[static_cast<std::size_t>(a)].effort < models[static_cast<std::size_t>(b)].effort; }));
  const auto by_givens = all_found(shelf, "uses x-wing", FindOrder::kGivens);
  EXPECT_TRUE(std::is_sorted(by_givens.begin(), by_givens.end(), [&](std::int64_t a, std::int64_t b) { return models[static_cast<std::size_t>(a)].givens < models[static_cast<std::size_t>(b)].givens; }));
}

TEST_F(ShelfTest, ThePlanLeadsFromAnIndexAndNeverReadsAllPuzzles) {
  Shelf shelf = fresh();
  Rng rng(3);
  fill_with_model(shelf, 400, rng);
  for (const char* text : {"proper and needs balance slack <= 1 over rows columns and no uniqueness and tail singles and givens <= 26 and unused", "uses x-wing and proper", "givens <= 18 and proper",
                           "tag a and no naked-pair", "effort < 20", "note fin and proper", "source own and used", "used and proper", "not proper"}) {
    for (const FindOrder order : {FindOrder::kNumber, FindOrder::kEffort, FindOrder::kGivens}) {
      const auto account = shelf.explain(query(text), {order, 20, 0});
      ASSERT_TRUE(account.is_ok()) << text;
      bool is_led = false;
      for (const std::string& line : account->plan) {
        // An index of the few puzzles that are not proper may be read whole; no table, and no index of all puzzles.
        const bool is_scan = line.starts_with("SCAN p") || line.starts_with("SCAN s");
        EXPECT_TRUE(!is_scan || line.ends_with("INDEX puzzles_not_proper")) << text << ": " << line;
        is_led = is_led || line.find("SEARCH d USING PRIMARY KEY (facet=?)") != std::string::npos || line.find("INDEX") != std::string::npos;
      }
      EXPECT_TRUE(is_led) << text;
    }
  }
}

}  // namespace
}  // namespace cp
