// SPDX-License-Identifier: Apache-2.0
// What is written beside the puzzles: the teacher's words and the surveys, with the facets that make them quick to find.
#include "base/text.h"
#include "store/packed.h"
#include "store/shelf.h"

namespace cp {

bool Shelf::has(std::int64_t puzzle) {
  Rows rows = database_.run("SELECT 1 FROM puzzles WHERE id = ?");
  if (rows.with(puzzle).next()) return true;
  database_.fail(Error{ErrorCode::kNotFound, "there is no puzzle number " + to_text(puzzle) + " on the shelf", "shelf find lists puzzles with their numbers; nothing was changed", {}});
  return false;
}

void Shelf::list_facet(std::int64_t facet, std::int64_t puzzle) {
  database_.run("INSERT INTO facets(facet, puzzle) VALUES(?, ?)").with(facet).with(puzzle).done();
  database_.run("UPDATE facet_names SET total = total + 1 WHERE id = ?").with(facet).done();
}

void Shelf::unlist_facet(std::int64_t facet, std::int64_t puzzle) {
  database_.run("DELETE FROM facets WHERE facet = ? AND puzzle = ?").with(facet).with(puzzle).done();
  database_.run("UPDATE facet_names SET total = total - 1 WHERE id = ?").with(facet).done();
}

void Shelf::put_word(std::int64_t puzzle, std::string_view kind, const std::string& word) {
  database_.run("INSERT OR IGNORE INTO words(puzzle, kind, text) VALUES(?, ?, ?)").with(puzzle).with(kind).with(word).done();
  if (database_.trouble() || database_.changed() == 0) return;
  list_facet(facet_id({std::string(kind), word}), puzzle);
  if (kind == kLessonKind) database_.run("UPDATE puzzles SET used = used + 1 WHERE id = ?").with(puzzle).done();
}

std::optional<Error> Shelf::add_word(const std::vector<std::int64_t>& puzzles, std::string_view kind, const std::string& word) {
  database_.begin();
  for (const std::int64_t puzzle : puzzles) {
    if (has(puzzle)) put_word(puzzle, kind, word);
  }
  return commit();
}

std::optional<Error> Shelf::drop_word(const std::vector<std::int64_t>& puzzles, std::string_view kind, const std::string& word) {
  database_.begin();
  for (const std::int64_t puzzle : puzzles) {
    if (!has(puzzle)) break;
    database_.run("DELETE FROM words WHERE puzzle = ? AND kind = ? AND text = ?").with(puzzle).with(kind).with(word).done();
    if (database_.trouble() || database_.changed() == 0) continue;
    unlist_facet(facet_id({std::string(kind), word}), puzzle);
    if (kind == kLessonKind) database_.run("UPDATE puzzles SET used = used - 1 WHERE id = ?").with(puzzle).done();
  }
  return commit();
}

std::optional<Error> Shelf::add_note(std::int64_t puzzle, const std::string& text) {
  database_.begin();
  if (has(puzzle)) database_.run("INSERT INTO notes(puzzle, text) VALUES(?, ?)").with(puzzle).with(text).done();
  return commit();
}

std::optional<Error> Shelf::drop_notes(std::int64_t puzzle) {
  database_.begin();
  if (has(puzzle)) database_.run("DELETE FROM notes WHERE puzzle = ?").with(puzzle).done();
  return commit();
}

Result<std::vector<PuzzleText>> Shelf::to_survey(std::int64_t above, std::int64_t up_to, int depth, std::int64_t limit) {
  std::vector<PuzzleText> all;
  {
    Rows rows = database_.run(
        "SELECT p.id, p.text FROM puzzles p LEFT JOIN surveys s ON s.puzzle = p.id WHERE p.id > ? AND p.id <= ? AND p.solutions = 1 AND (s.puzzle IS NULL OR s.depth < ?) ORDER BY p.id LIMIT ?");
    rows.with(above).with(up_to).with(std::int64_t{depth}).with(limit);
    while (rows.next()) all.push_back({rows.number(0), rows.text(1)});
  }
  return database_.settled(std::move(all));
}

void Shelf::take_back_facets(std::int64_t puzzle) {
  std::vector<std::int64_t> facets;
  {
    Rows rows = database_.run("SELECT facets FROM surveys WHERE puzzle = ?");
    if (rows.with(puzzle).next()) facets = unpacked_numbers(rows.text(0));
  }
  for (const std::int64_t facet : facets) unlist_facet(facet, puzzle);
}

void Shelf::keep_survey(const SurveyRow& row) {
  take_back_facets(row.puzzle);
  std::vector<std::int64_t> facets;
  for (const FacetName& facet : row.facets) {
    facets.push_back(facet_id(facet));
    list_facet(facets.back(), row.puzzle);
  }
  database_
      .run("INSERT OR REPLACE INTO surveys(puzzle, depth, steps, hardest, effort, beyond_singles, narrow, open_tenths, facets, record) VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .with(row.puzzle)
      .with(std::int64_t{row.depth})
      .with(std::int64_t{row.steps})
      .with(std::int64_t{row.hardest})
      .with(std::int64_t{row.effort})
      .with(std::int64_t{row.beyond_singles})
      .with(std::int64_t{row.narrow})
      .with(std::int64_t{row.open_tenths})
      .with_bytes(packed_numbers(facets))
      .with(row.record)
      .done();
}

std::optional<Error> Shelf::keep_surveys(const std::vector<SurveyRow>& rows) {
  database_.begin();
  for (const SurveyRow& row : rows) {
    if (has(row.puzzle)) keep_survey(row);
  }
  return commit();
}

}  // namespace cp
