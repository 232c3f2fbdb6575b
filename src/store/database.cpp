// SPDX-License-Identifier: Apache-2.0
#include "store/database.h"

#include <sqlite3.h>

#include <cassert>
#include <filesystem>
#include <utility>

namespace cp {

namespace {

constexpr int kPatience = 10'000;  // milliseconds to wait for another program that writes

// How the program works with the file, a memory of 128 MiB among it. Nothing here is written into the file: it may be another's.
// The question at the end finds out whether it is one of SQLite at all.
constexpr std::string_view kHabits =
    "PRAGMA synchronous = NORMAL; PRAGMA foreign_keys = ON; PRAGMA cache_size = -131072; PRAGMA temp_store = MEMORY; PRAGMA mmap_size = 1073741824; "
    "SELECT count(*) FROM sqlite_schema;";

struct Fault {
  ErrorCode code;
  std::string message;
  std::string hint;
};

Fault fault_of(int code, const std::string& path, const char* detail) {
  const std::string name = "'" + path + "'";
  switch (code & 0xff) {
    case SQLITE_NOTADB: return {ErrorCode::kBadArgument, name + " is no shelf", "name the file of a shelf, or a new file"};
    case SQLITE_CANTOPEN: return {ErrorCode::kNotFound, "cannot open the shelf " + name, "check the name and the permissions of its folder"};
    case SQLITE_BUSY:
    case SQLITE_LOCKED: return {ErrorCode::kCannotWrite, "another program is writing to the shelf " + name, "wait until it is done, then give the command again"};
    case SQLITE_READONLY:
    case SQLITE_PERM: return {ErrorCode::kCannotWrite, "the shelf " + name + " may not be written", "check the permissions of the file and of its folder"};
    case SQLITE_FULL: return {ErrorCode::kCannotWrite, "the disk is full: the shelf " + name + " cannot grow", "make room; what was finished before is safe, and the same command goes on"};
    case SQLITE_IOERR: return {ErrorCode::kCannotWrite, "the disk failed while the shelf " + name + " was used", "check the disk; what was finished before is safe"};
    case SQLITE_CORRUPT: return {ErrorCode::kBadArgument, "the shelf " + name + " is damaged", "take the newest copy of it"};
    case SQLITE_INTERRUPT: return {ErrorCode::kLimit, "the question to the shelf was stopped", "ask for less"};
    default: return {ErrorCode::kBug, "the shelf " + name + " could not be used: " + detail, "please report what you typed"};
  }
}

int flags_of(Database::Mode mode) {
  switch (mode) {
    case Database::Mode::kRead: return SQLITE_OPEN_READONLY;
    case Database::Mode::kWrite: return SQLITE_OPEN_READWRITE;
    default: return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
  }
}

}  // namespace

// ---- Rows --------------------------------------------------------------------

Rows::~Rows() {
  if (statement_ == nullptr) return;
  if (is_own_) {
    sqlite3_finalize(statement_);
    return;
  }
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
}

Rows& Rows::with(std::int64_t number) {
  if (statement_ != nullptr) database_->note(sqlite3_bind_int64(statement_, ++bound_, number));
  return *this;
}

Rows& Rows::with(std::string_view text) {
  if (statement_ != nullptr) database_->note(sqlite3_bind_text64(statement_, ++bound_, text.data(), text.size(), SQLITE_TRANSIENT, SQLITE_UTF8));
  return *this;
}

Rows& Rows::with_bytes(std::string_view bytes) {
  if (statement_ != nullptr) database_->note(sqlite3_bind_blob64(statement_, ++bound_, bytes.data(), bytes.size(), SQLITE_TRANSIENT));
  return *this;
}

bool Rows::next() {
  if (statement_ == nullptr || database_->trouble_) return false;
  assert(bound_ == sqlite3_bind_parameter_count(statement_));
  const int code = sqlite3_step(statement_);
  if (code != SQLITE_ROW && code != SQLITE_DONE) database_->note(code);
  return code == SQLITE_ROW;
}

std::int64_t Rows::number(int column) const { return sqlite3_column_int64(statement_, column); }

std::string Rows::text(int column) const {
  const void* bytes = sqlite3_column_blob(statement_, column);
  const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
  return bytes == nullptr ? std::string() : std::string(static_cast<const char*>(bytes), size);
}

// ---- Database ------------------------------------------------------------------

Result<Database> Database::open(const std::string& path, Mode mode) {
  std::error_code ignored;
  const bool is_there = std::filesystem::exists(path, ignored);
  if (!is_there && mode != Mode::kCreate) {
    return Error{ErrorCode::kNotFound, "there is no shelf '" + path + "'", "check the name; shelf import makes a new one", {}};
  }
  if (std::filesystem::is_directory(path, ignored)) return Error{ErrorCode::kBadArgument, "'" + path + "' is a folder", "name the file of the shelf", {}};
  sqlite3* handle = nullptr;
  const int code = sqlite3_open_v2(path.c_str(), &handle, flags_of(mode) | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, nullptr);
  Database database(handle, path);
  database.note(code);
  if (code == SQLITE_OK) sqlite3_busy_timeout(handle, kPatience);
  if (mode == Mode::kRead) database.run_all("PRAGMA query_only = ON");
  database.run_all(kHabits);
  if (database.trouble_) return *database.trouble_;
  return database;
}

Database::Database(Database&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)), path_(std::move(other.path_)), prepared_(std::move(other.prepared_)), trouble_(std::move(other.trouble_)), is_inside_(other.is_inside_) {
  other.prepared_.clear();
}

Database::~Database() {
  for (const auto& [sql, statement] : prepared_) sqlite3_finalize(statement);
  sqlite3_close(handle_);
}

void Database::note(int code) {
  if (code == SQLITE_OK || trouble_) return;
  Fault fault = fault_of(code, path_, handle_ == nullptr ? "no memory" : sqlite3_errmsg(handle_));
  trouble_ = Error{fault.code, std::move(fault.message), std::move(fault.hint), {}};
}

void Database::fail(Error error) {
  if (!trouble_) trouble_ = std::move(error);
}

std::optional<Error> Database::take_trouble() { return std::exchange(trouble_, std::nullopt); }

Rows Database::run(std::string_view sql) {
  if (trouble_) return {*this, nullptr};
  const auto found = prepared_.find(sql);
  if (found != prepared_.end()) return {*this, found->second};
  sqlite3_stmt* statement = nullptr;
  note(sqlite3_prepare_v3(handle_, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT, &statement, nullptr));
  if (statement != nullptr) prepared_.emplace(std::string(sql), statement);
  return {*this, statement};
}

Rows Database::ask(const std::string& sql) {
  sqlite3_stmt* statement = nullptr;
  if (!trouble_) note(sqlite3_prepare_v2(handle_, sql.data(), static_cast<int>(sql.size()), &statement, nullptr));
  return {*this, statement, true};
}

void Database::run_all(std::string_view sql) {
  if (!trouble_) note(sqlite3_exec(handle_, std::string(sql).c_str(), nullptr, nullptr, nullptr));
}

std::int64_t Database::number(std::string_view sql) {
  Rows rows = run(sql);
  return rows.next() ? rows.number(0) : 0;
}

void Database::begin() {
  assert(!is_inside_);
  run_all("BEGIN IMMEDIATE");
  is_inside_ = !trouble_;
}

std::optional<Error> Database::commit() {
  if (is_inside_ && !trouble_) run_all("COMMIT");
  if (is_inside_ && trouble_) sqlite3_exec(handle_, "ROLLBACK", nullptr, nullptr, nullptr);
  is_inside_ = false;
  return take_trouble();
}

std::int64_t Database::last_id() const { return sqlite3_last_insert_rowid(handle_); }
int Database::changed() const { return sqlite3_changes(handle_); }

}  // namespace cp
