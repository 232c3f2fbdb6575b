// SPDX-License-Identifier: Apache-2.0
#include "store/shelf.h"

#include "base/text.h"
#include "store/packed.h"
#include "store/schema.h"

namespace cp {

namespace {

constexpr std::string_view kImportColumns = "id, label, byte, line, bytes_check, is_done, fresh, repeats, faults";

ImportState import_from(const Rows& rows) {
  ImportState state;
  state.id = rows.number(0);
  state.label = rows.text(1);
  state.place = {static_cast<std::uint64_t>(rows.number(2)), static_cast<std::uint64_t>(rows.number(3)), static_cast<std::uint64_t>(rows.number(4))};
  state.is_done = rows.number(5) != 0;
  state.fresh = rows.number(6);
  state.repeats = rows.number(7);
  state.faults = rows.number(8);
  return state;
}

Error no_puzzle(std::int64_t number) {
  return Error{ErrorCode::kNotFound, "there is no puzzle number " + to_text(number) + " on the shelf", "shelf find lists puzzles with their numbers", {}};
}

}  // namespace

Result<Shelf> Shelf::open(const std::string& path, Database::Mode mode) {
  auto opened = Database::open(path, mode);
  if (!opened) return opened.error();
  Database& database = opened.value();
  const bool is_read = mode == Database::Mode::kRead;
  if (auto wrong = is_read ? check_version(database, path) : bring_up_to_date(database, path)) return std::move(*wrong);
  // Readers and one writer side by side, safe against a killed process. It stands in the file, so only now: the file is ours.
  if (!is_read) database.run_all("PRAGMA journal_mode = WAL");
  if (auto trouble = database.take_trouble()) return std::move(*trouble);
  return Shelf(std::move(database));
}

std::optional<Error> Shelf::commit() {
  auto trouble = database_.commit();
  if (trouble) {  // what was given numbers is gone again
    source_ids_.clear();
    facet_ids_.clear();
  }
  return trouble;
}

// ---- imports -------------------------------------------------------------------------

Result<std::optional<ImportState>> Shelf::find_import(const std::string& label) {
  static const std::string kSql = "SELECT " + std::string(kImportColumns) + " FROM imports WHERE label = ? ORDER BY id DESC LIMIT 1";
  std::optional<ImportState> found;
  {
    Rows rows = database_.run(kSql);
    if (rows.with(label).next()) found = import_from(rows);
  }
  return database_.settled(std::move(found));
}

Result<ImportState> Shelf::begin_import(const std::string& label) {
  ImportState state;
  state.label = label;
  database_.begin();
  database_.run("INSERT INTO imports(label) VALUES(?)").with(label).done();
  state.id = database_.last_id();
  if (auto trouble = commit()) return std::move(*trouble);
  return state;
}

std::int64_t Shelf::source_id(const std::string& name, const std::string& licence) {
  std::int64_t& id = source_ids_[{name, licence}];
  if (id == 0) {
    database_.run("INSERT OR IGNORE INTO sources(name, licence) VALUES(?, ?)").with(name).with(licence).done();
    Rows rows = database_.run("SELECT id FROM sources WHERE name = ? AND licence = ?");
    if (rows.with(name).with(licence).next()) id = rows.number(0);
  }
  return id;
}

std::int64_t Shelf::facet_id(const FacetName& facet) {
  std::int64_t& id = facet_ids_[facet];
  if (id == 0) {
    database_.run("INSERT OR IGNORE INTO facet_names(kind, name) VALUES(?, ?)").with(facet.kind).with(facet.name).done();
    Rows rows = database_.run("SELECT id FROM facet_names WHERE kind = ? AND name = ?");
    if (rows.with(facet.kind).with(facet.name).next()) id = rows.number(0);
  }
  return id;
}

Shelved Shelf::shelve(const ImportState& state, const NewLine& line) {
  Shelved shelved{line.line, Shelved::As::kFault, 0};
  const auto number = static_cast<std::int64_t>(line.line);
  if (!line.puzzle) {
    database_.run("INSERT INTO faults(import, line, place, message) VALUES(?, ?, ?, ?)").with(state.id).with(number).with(std::int64_t{line.column}).with(line.fault).done();
    return shelved;
  }
  const NewPuzzle& puzzle = *line.puzzle;
  const std::string canonical = packed_cells(puzzle.canonical);
  database_
      .run("INSERT INTO puzzles(canonical, givens, solutions, source, import, line, text, name) VALUES(?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT(canonical) DO NOTHING")
      .with_bytes(canonical)
      .with(std::int64_t{puzzle.givens})
      .with(std::int64_t{puzzle.solutions})
      .with(source_id(puzzle.source, puzzle.licence))
      .with(state.id)
      .with(number)
      .with(puzzle.text)
      .with(puzzle.name)
      .done();
  if (database_.changed() == 1) {
    shelved.as = Shelved::As::kFresh;
    shelved.puzzle = database_.last_id();
  } else {
    Rows rows = database_.run("SELECT id, text FROM puzzles WHERE canonical = ?");
    if (rows.with_bytes(canonical).next()) {
      shelved.puzzle = rows.number(0);
      shelved.as = rows.text(1) == puzzle.text ? Shelved::As::kSame : Shelved::As::kRepeat;
    }
    database_.run("INSERT INTO repeats(import, line, puzzle, is_same) VALUES(?, ?, ?, ?)").with(state.id).with(number).with(shelved.puzzle).with(std::int64_t{shelved.as == Shelved::As::kSame}).done();
  }
  // The words of a repeat are kept with the puzzle that is there: nothing a teacher wrote is lost.
  for (const std::string& tag : puzzle.tags) put_word(shelved.puzzle, kTagKind, tag);
  for (const std::string& lesson : puzzle.lessons) put_word(shelved.puzzle, kLessonKind, lesson);
  if (!puzzle.note.empty()) database_.run("INSERT INTO notes(puzzle, text) SELECT ?1, ?2 WHERE NOT EXISTS(SELECT 1 FROM notes WHERE puzzle = ?1 AND text = ?2)").with(shelved.puzzle).with(puzzle.note).done();
  return shelved;
}

Result<std::vector<Shelved>> Shelf::add(ImportState& state, const std::vector<NewLine>& lines, const Place& after, bool is_done) {
  ImportState next = state;
  std::vector<Shelved> all;
  database_.begin();
  for (const NewLine& line : lines) {
    all.push_back(shelve(state, line));
    next.fresh += all.back().as == Shelved::As::kFresh ? 1 : 0;
    next.faults += all.back().as == Shelved::As::kFault ? 1 : 0;
    if (database_.trouble()) break;
  }
  next.repeats = state.repeats + static_cast<std::int64_t>(all.size()) - (next.fresh - state.fresh) - (next.faults - state.faults);
  next.place = after;
  next.is_done = is_done;
  database_.run("UPDATE imports SET byte = ?, line = ?, bytes_check = ?, is_done = ?, fresh = ?, repeats = ?, faults = ? WHERE id = ?")
      .with(static_cast<std::int64_t>(after.offset))
      .with(static_cast<std::int64_t>(after.line))
      .with(static_cast<std::int64_t>(after.check))
      .with(std::int64_t{is_done})
      .with(next.fresh)
      .with(next.repeats)
      .with(next.faults)
      .with(state.id)
      .done();
  if (auto trouble = commit()) return std::move(*trouble);
  state = next;
  return all;
}

Result<std::vector<ImportState>> Shelf::imports() {
  static const std::string kSql = "SELECT " + std::string(kImportColumns) + " FROM imports ORDER BY id";
  std::vector<ImportState> all;
  for (Rows rows = database_.run(kSql); rows.next();) all.push_back(import_from(rows));
  return database_.settled(std::move(all));
}

Result<std::vector<RepeatedLine>> Shelf::repeats_of(std::int64_t import, std::int64_t limit) {
  std::vector<RepeatedLine> all;
  Rows rows = database_.run("SELECT line, puzzle, is_same FROM repeats WHERE import = ? ORDER BY line LIMIT ?");
  rows.with(import).with(limit);
  while (rows.next()) all.push_back({static_cast<std::uint64_t>(rows.number(0)), rows.number(1), rows.number(2) != 0});
  return database_.settled(std::move(all));
}

Result<std::vector<FaultyLine>> Shelf::faults_of(std::int64_t import, std::int64_t limit) {
  std::vector<FaultyLine> all;
  Rows rows = database_.run("SELECT line, place, message FROM faults WHERE import = ? ORDER BY line LIMIT ?");
  rows.with(import).with(limit);
  while (rows.next()) all.push_back({static_cast<std::uint64_t>(rows.number(0)), static_cast<int>(rows.number(1)), rows.text(2)});
  return database_.settled(std::move(all));
}

// ---- reading ---------------------------------------------------------------------------

Result<ShelfCounts> Shelf::counts() {
  ShelfCounts counts;
  counts.puzzles = database_.number("SELECT count(*) FROM puzzles");
  counts.proper = counts.puzzles - database_.number("SELECT count(*) FROM puzzles INDEXED BY puzzles_not_proper WHERE solutions <> 1");
  counts.surveyed = database_.number("SELECT count(*) FROM surveys");
  counts.used = database_.number("SELECT count(*) FROM puzzles INDEXED BY puzzles_used WHERE used > 0");
  counts.notes = database_.number("SELECT count(*) FROM notes");
  return database_.settled(counts);
}

Result<ShelvedPuzzle> Shelf::puzzle(std::int64_t number) {
  ShelvedPuzzle puzzle;
  {
    Rows rows = database_.run(
        "SELECT p.text, p.name, s.name, s.licence, p.givens, p.solutions, v.record FROM puzzles p JOIN sources s ON s.id = p.source "
        "LEFT JOIN surveys v ON v.puzzle = p.id WHERE p.id = ?");
    if (!rows.with(number).next()) {
      if (auto trouble = database_.take_trouble()) return std::move(*trouble);
      return no_puzzle(number);
    }
    puzzle.number = number;
    puzzle.text = rows.text(0);
    puzzle.name = rows.text(1);
    puzzle.source = rows.text(2);
    puzzle.licence = rows.text(3);
    puzzle.givens = static_cast<int>(rows.number(4));
    puzzle.solutions = static_cast<int>(rows.number(5));
    puzzle.record = rows.text(6);
  }
  {
    Rows rows = database_.run("SELECT kind, text FROM words WHERE puzzle = ? ORDER BY kind, text");
    rows.with(number);
    while (rows.next()) (rows.text(0) == kTagKind ? puzzle.tags : puzzle.lessons).push_back(rows.text(1));
  }
  Rows rows = database_.run("SELECT text FROM notes WHERE puzzle = ? ORDER BY id");
  rows.with(number);
  while (rows.next()) puzzle.notes.push_back(rows.text(0));
  return database_.settled(std::move(puzzle));
}

Result<Found> Shelf::find(const QueryTerm& query, const FindOptions& options) {
  Found found;
  const CompiledQuery compiled = compile_query(database_, query, options.order);
  found.leader = compiled.leader;
  {
    Rows rows = start_query(database_, compiled, options.limit == 0 ? -1 : options.limit + 1, options.skip);
    while (rows.next()) found.numbers.push_back(rows.number(0));
  }
  found.has_more = options.limit > 0 && static_cast<std::int64_t>(found.numbers.size()) > options.limit;
  if (found.has_more) found.numbers.pop_back();
  return database_.settled(std::move(found));
}

Result<QueryAccount> Shelf::explain(const QueryTerm& query, const FindOptions& options) {
  QueryAccount account;
  CompiledQuery compiled = compile_query(database_, query, options.order);
  account.understood = to_text(query);
  account.leader = compiled.leader;
  account.sql = compiled.sql;
  compiled.sql = "EXPLAIN QUERY PLAN " + compiled.sql;
  {
    Rows rows = start_query(database_, compiled, options.limit, options.skip);
    while (rows.next()) account.plan.push_back(rows.text(3));
  }
  return database_.settled(std::move(account));
}

std::optional<Error> Shelf::each_line(const std::function<void(const std::string& line)>& take) {
  const auto all = [&](std::string_view name, std::string_view sql, int columns) {
    Rows rows = database_.run(sql);
    while (rows.next()) {
      std::string line(name);
      for (int column = 0; column < columns; ++column) line += "\t" + rows.text(column);
      take(line);
    }
  };
  all("source", "SELECT id, name, licence FROM sources ORDER BY id", 3);
  all("import", "SELECT id, label, byte, line, bytes_check, is_done, fresh, repeats, faults FROM imports ORDER BY id", 9);
  all("repeat", "SELECT import, line, puzzle, is_same FROM repeats ORDER BY import, line", 4);
  all("fault", "SELECT import, line, place, message FROM faults ORDER BY import, line", 4);
  all("puzzle", "SELECT id, hex(canonical), givens, solutions, used, source, import, line, text, name FROM puzzles ORDER BY id", 10);
  all("word", "SELECT puzzle, kind, text FROM words ORDER BY puzzle, kind, text", 3);
  all("note", "SELECT id, puzzle, text FROM notes ORDER BY id", 3);
  all("survey", "SELECT puzzle, depth, steps, hardest, effort, beyond_singles, narrow, open_tenths, record FROM surveys ORDER BY puzzle", 9);
  all("facet", "SELECT n.kind, n.name, n.total, count(f.puzzle), total(f.puzzle) FROM facet_names n LEFT JOIN facets f ON f.facet = n.id GROUP BY n.id ORDER BY n.kind, n.name", 5);
  return database_.take_trouble();
}

Result<std::vector<std::string>> Shelf::names_of(std::string_view kind) {
  std::vector<std::string> names;
  Rows rows = database_.run("SELECT name FROM facet_names WHERE kind = ? AND total > 0 ORDER BY name");
  rows.with(kind);
  while (rows.next()) names.push_back(rows.text(0));
  return database_.settled(std::move(names));
}

Result<std::vector<std::string>> Shelf::source_names() {
  std::vector<std::string> names;
  Rows rows = database_.run("SELECT DISTINCT name FROM sources ORDER BY name");
  while (rows.next()) names.push_back(rows.text(0));
  return database_.settled(std::move(names));
}

std::optional<Error> Shelf::tidy() {
  database_.run_all("PRAGMA analysis_limit = 1000; PRAGMA optimize; PRAGMA wal_checkpoint(TRUNCATE);");
  return database_.take_trouble();
}

}  // namespace cp
