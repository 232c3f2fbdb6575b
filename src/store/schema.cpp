// SPDX-License-Identifier: Apache-2.0
#include "store/schema.h"

#include <array>

#include "base/text.h"

namespace cp {

namespace {

// Version 1: puzzles, where they came from, and the teacher's words.
//
// A facet is anything a puzzle may have or not have: a tag, a lesson that uses it. The list of a facet lies in the order
// of the puzzles, so lists are walked and crossed without sorting. Numbers have indexes of their own.
constexpr std::string_view kVersion1 = R"sql(
CREATE TABLE sources(
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  licence TEXT NOT NULL,
  UNIQUE(name, licence));
CREATE TABLE puzzles(
  id INTEGER PRIMARY KEY,
  canonical BLOB NOT NULL UNIQUE,
  givens INTEGER NOT NULL,
  solutions INTEGER NOT NULL,
  used INTEGER NOT NULL DEFAULT 0,
  source INTEGER NOT NULL REFERENCES sources,
  import INTEGER NOT NULL REFERENCES imports,
  line INTEGER NOT NULL,
  text TEXT NOT NULL,
  name TEXT NOT NULL);
CREATE INDEX puzzles_givens ON puzzles(givens);
CREATE INDEX puzzles_source ON puzzles(source);
CREATE INDEX puzzles_not_proper ON puzzles(solutions) WHERE solutions <> 1;
CREATE INDEX puzzles_used ON puzzles(used) WHERE used > 0;
CREATE TABLE imports(
  id INTEGER PRIMARY KEY,
  label TEXT NOT NULL,
  byte INTEGER NOT NULL DEFAULT 0,
  line INTEGER NOT NULL DEFAULT 0,
  bytes_check INTEGER NOT NULL DEFAULT 0,
  is_done INTEGER NOT NULL DEFAULT 0,
  fresh INTEGER NOT NULL DEFAULT 0,
  repeats INTEGER NOT NULL DEFAULT 0,
  faults INTEGER NOT NULL DEFAULT 0);
CREATE INDEX imports_label ON imports(label);
CREATE TABLE repeats(
  import INTEGER NOT NULL,
  line INTEGER NOT NULL,
  puzzle INTEGER NOT NULL,
  is_same INTEGER NOT NULL,
  PRIMARY KEY(import, line)) WITHOUT ROWID;
CREATE TABLE faults(
  import INTEGER NOT NULL,
  line INTEGER NOT NULL,
  place INTEGER NOT NULL,
  message TEXT NOT NULL,
  PRIMARY KEY(import, line)) WITHOUT ROWID;
CREATE TABLE facet_names(
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  total INTEGER NOT NULL DEFAULT 0,
  UNIQUE(kind, name));
CREATE TABLE facets(
  facet INTEGER NOT NULL,
  puzzle INTEGER NOT NULL,
  PRIMARY KEY(facet, puzzle)) WITHOUT ROWID;
CREATE TABLE words(
  puzzle INTEGER NOT NULL REFERENCES puzzles,
  kind TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY(puzzle, kind, text)) WITHOUT ROWID;
CREATE TABLE notes(
  id INTEGER PRIMARY KEY,
  puzzle INTEGER NOT NULL REFERENCES puzzles,
  text TEXT NOT NULL);
CREATE INDEX notes_puzzle ON notes(puzzle);
)sql";

// Version 2: what surveys found. The facets of a survey (techniques on the path, balances, ...) are listed in `facets`, so
// that a later survey can take them back.
constexpr std::string_view kVersion2 = R"sql(
CREATE TABLE surveys(
  puzzle INTEGER PRIMARY KEY REFERENCES puzzles,
  depth INTEGER NOT NULL,
  steps INTEGER NOT NULL,
  hardest INTEGER NOT NULL,
  effort INTEGER NOT NULL,
  beyond_singles INTEGER NOT NULL,
  narrow INTEGER NOT NULL,
  open_tenths INTEGER NOT NULL,
  facets BLOB NOT NULL,
  record TEXT NOT NULL);
CREATE INDEX surveys_hardest ON surveys(hardest);
CREATE INDEX surveys_effort ON surveys(effort);
CREATE INDEX surveys_steps ON surveys(steps);
CREATE INDEX surveys_beyond_singles ON surveys(beyond_singles);
CREATE INDEX surveys_depth ON surveys(depth);
)sql";

constexpr std::array<std::string_view, kShelfVersion> kSteps = {kVersion1, kVersion2};

std::int64_t version_of(Database& database) { return database.number("PRAGMA user_version"); }
std::int64_t mark_of(Database& database) { return database.number("PRAGMA application_id"); }
bool is_empty(Database& database) { return database.number("SELECT count(*) FROM sqlite_schema") == 0; }

std::optional<Error> foreign_or_newer(Database& database, const std::string& path) {
  if (mark_of(database) != kShelfMark) return Error{ErrorCode::kBadArgument, "'" + path + "' belongs to another program", "name the file of a shelf, or a new file", {}};
  const std::int64_t version = version_of(database);
  if (version <= kShelfVersion) return std::nullopt;
  return Error{ErrorCode::kBadArgument, "the shelf '" + path + "' is of version " + to_text(version) + "; this program knows versions up to " + to_text(kShelfVersion),
               "use the Counterpoise that wrote it, or a newer one", {}};
}

}  // namespace

std::optional<Error> bring_up_to_date(Database& database, const std::string& path) {
  if (mark_of(database) == kShelfMark && version_of(database) == kShelfVersion) return database.take_trouble();
  database.begin();
  const bool is_new = is_empty(database) && mark_of(database) == 0;
  if (database.trouble()) return database.commit();
  if (!is_new) {
    if (auto wrong = foreign_or_newer(database, path)) database.fail(std::move(*wrong));
  }
  const auto version = static_cast<std::size_t>(is_new ? 0 : version_of(database));
  for (std::size_t step = version; step < kSteps.size(); ++step) database.run_all(kSteps[step]);
  if (version < kSteps.size()) {
    database.run_all("PRAGMA application_id = " + to_text(kShelfMark));
    database.run_all("PRAGMA user_version = " + to_text(kShelfVersion));
  }
  return database.commit();
}

std::optional<Error> check_version(Database& database, const std::string& path) {
  if (auto wrong = foreign_or_newer(database, path)) return wrong;
  if (version_of(database) == kShelfVersion) return std::nullopt;
  return Error{ErrorCode::kBadArgument, "the shelf '" + path + "' is of an older version", "any command that writes brings it up to date; the program needs the right to write the file", {}};
}

}  // namespace cp
