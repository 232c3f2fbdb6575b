// SPDX-License-Identifier: Apache-2.0
// The shelf: one file with the teacher's puzzles, what is known of them and what was said about them
// (docs/formats/shelf.md). Whatever is written is written wholly or not at all, also when the program is killed; several
// programs may read while one writes.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "store/database.h"
#include "store/query.h"
#include "store/query_sql.h"
#include "stream/line_source.h"

namespace cp {

// ---- coming in -------------------------------------------------------------------

// A puzzle as an import brings it.
struct NewPuzzle {
  std::string text;       // its givens, one character a cell
  std::string canonical;  // its canonical form: the same for all that differ by symmetry only
  int givens = 0;
  int solutions = 0;      // 0, 1, or 2 for several
  std::string name = {};
  std::string source = {};
  std::string licence = {};
  std::vector<std::string> tags = {};
  std::vector<std::string> lessons = {};
  std::string note = {};
};

// A line of an import: a puzzle, or what is wrong with it.
struct NewLine {
  std::uint64_t line = 0;
  std::optional<NewPuzzle> puzzle = {};
  std::string fault = {};
  int column = 0;  // of the fault, from 1; 0: none in particular
};

// What became of a line.
struct Shelved {
  std::uint64_t line = 0;
  enum class As { kFresh, kRepeat, kSame, kFault } as = As::kFresh;  // kRepeat: up to symmetry; kSame: the same text
  std::int64_t puzzle = 0;  // its number, or that of the one which was there
};

// How far an import is.
struct ImportState {
  std::int64_t id = 0;
  std::string label;
  Place place;
  bool is_done = false;
  std::int64_t fresh = 0;
  std::int64_t repeats = 0;
  std::int64_t faults = 0;
};

struct RepeatedLine {
  std::uint64_t line = 0;
  std::int64_t puzzle = 0;
  bool is_same = false;
};
struct FaultyLine {
  std::uint64_t line = 0;
  int column = 0;
  std::string message;
};

// ---- standing there ----------------------------------------------------------------

struct ShelvedPuzzle {
  std::int64_t number = 0;
  std::string text;
  std::string name;
  std::string source;
  std::string licence;
  int givens = 0;
  int solutions = 0;
  std::vector<std::string> tags;
  std::vector<std::string> lessons;
  std::vector<std::string> notes;
  std::string record;  // what the last survey said, as JSON; empty: not surveyed
};

struct ShelfCounts {
  std::int64_t puzzles = 0;
  std::int64_t proper = 0;
  std::int64_t surveyed = 0;
  std::int64_t used = 0;
  std::int64_t notes = 0;
};

// What a survey adds to a puzzle.
struct SurveyRow {
  std::int64_t puzzle = 0;
  int depth = 0;
  int steps = 0;
  int hardest = 0;
  int effort = 0;
  int beyond_singles = 0;
  int narrow = 0;
  int open_tenths = 0;
  std::vector<FacetName> facets = {};  // in any order, none twice
  std::string record = {};             // JSON
};

struct PuzzleText {
  std::int64_t number = 0;
  std::string text;
};

struct FindOptions {
  FindOrder order = FindOrder::kNumber;
  std::int64_t limit = 20;  // 0: all
  std::int64_t skip = 0;
};

struct Found {
  std::vector<std::int64_t> numbers;
  bool has_more = false;
  std::string leader;
};

// How a query is answered.
struct QueryAccount {
  std::string understood;
  std::string leader;
  std::string sql;
  std::vector<std::string> plan;  // SQLite's own words: SEARCH f USING PRIMARY KEY (facet=? AND puzzle=?)
};

class Shelf {
 public:
  static Result<Shelf> open(const std::string& path, Database::Mode mode);

  // -- imports. The newest one with this label, if any.
  Result<std::optional<ImportState>> find_import(const std::string& label);
  Result<ImportState> begin_import(const std::string& label);
  // Shelves the lines, and notes that everything up to `after` is dealt with: both or neither. Brings `state` up to date.
  Result<std::vector<Shelved>> add(ImportState& state, const std::vector<NewLine>& lines, const Place& after, bool is_done);
  Result<std::vector<ImportState>> imports();
  // In the order of the lines, at most `limit`.
  Result<std::vector<RepeatedLine>> repeats_of(std::int64_t import, std::int64_t limit);
  Result<std::vector<FaultyLine>> faults_of(std::int64_t import, std::int64_t limit);

  // -- reading
  Result<ShelfCounts> counts();
  // Error kNotFound when there is no puzzle of that number.
  Result<ShelvedPuzzle> puzzle(std::int64_t number);
  Result<Found> find(const QueryTerm& query, const FindOptions& options);
  Result<QueryAccount> explain(const QueryTerm& query, const FindOptions& options);
  // A line for everything the shelf holds, in a fixed order that does not depend on how the work was divided or stopped.
  std::optional<Error> each_line(const std::function<void(const std::string& line)>& take);
  // Names in use of a kind of facets (tags, lessons), sorted; sources.
  Result<std::vector<std::string>> names_of(std::string_view kind);
  Result<std::vector<std::string>> source_names();

  // -- the teacher's words. Error kNotFound when one of the puzzles is not there; then nothing is changed.
  std::optional<Error> add_word(const std::vector<std::int64_t>& puzzles, std::string_view kind, const std::string& word);
  std::optional<Error> drop_word(const std::vector<std::int64_t>& puzzles, std::string_view kind, const std::string& word);
  std::optional<Error> add_note(std::int64_t puzzle, const std::string& text);
  std::optional<Error> drop_notes(std::int64_t puzzle);

  // -- surveys. Proper puzzles with a number above the one and up to the other that were not surveyed to this depth, in order.
  Result<std::vector<PuzzleText>> to_survey(std::int64_t above, std::int64_t up_to, int depth, std::int64_t limit);
  std::optional<Error> keep_surveys(const std::vector<SurveyRow>& rows);

  // After much was written: lets SQLite look at the indexes again and shortens the journal.
  std::optional<Error> tidy();

 private:
  explicit Shelf(Database database) : database_(std::move(database)) {}
  std::int64_t source_id(const std::string& name, const std::string& licence);
  std::int64_t facet_id(const FacetName& facet);
  std::optional<Error> commit();
  Shelved shelve(const ImportState& state, const NewLine& line);
  void list_facet(std::int64_t facet, std::int64_t puzzle);  // the puzzle has it from now on
  void unlist_facet(std::int64_t facet, std::int64_t puzzle);
  void put_word(std::int64_t puzzle, std::string_view kind, const std::string& word);
  void keep_survey(const SurveyRow& row);
  void take_back_facets(std::int64_t puzzle);
  bool has(std::int64_t puzzle);

  Database database_;
  std::map<std::pair<std::string, std::string>, std::int64_t> source_ids_;
  std::map<FacetName, std::int64_t> facet_ids_;
};

}  // namespace cp
