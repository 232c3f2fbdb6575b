// SPDX-License-Identifier: Apache-2.0
// An SQLite file, and statements with bound values. Only this room knows SQL; no text of a user ever becomes part of one.
//
// The first thing that goes wrong is kept, and from then on nothing happens any more: every later call does nothing and
// says "no row". So a piece of work is written down straight, and looked at once, where it is committed.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace cp {

class Database;

// One run of a prepared statement; made by Database::run(). Its place among the prepared ones is free again afterwards.
class Rows {
 public:
  Rows(Database& database, sqlite3_stmt* statement, bool is_own = false) : database_(&database), statement_(statement), is_own_(is_own) {}
  Rows(const Rows&) = delete;
  Rows& operator=(const Rows&) = delete;
  Rows(Rows&& other) noexcept : database_(other.database_), statement_(other.statement_), bound_(other.bound_), is_own_(other.is_own_) { other.statement_ = nullptr; }
  ~Rows();

  // Values for the question marks, in order.
  Rows& with(std::int64_t number);
  Rows& with(std::string_view text);
  Rows& with_bytes(std::string_view bytes);

  // The next row, if any. A statement that gives no rows is done by calling this once.
  bool next();
  // For statements without rows.
  void done() { next(); }

  // Columns of the row, from 0. A text or a run of bytes lives until the next row.
  [[nodiscard]] std::int64_t number(int column) const;
  [[nodiscard]] std::string text(int column) const;

 private:
  Database* database_;
  sqlite3_stmt* statement_;  // null: something went wrong before
  int bound_ = 0;
  bool is_own_;  // prepared for this run alone
};

class Database {
 public:
  enum class Mode {
    kRead,    // it must be there; nothing is changed
    kWrite,   // it must be there
    kCreate,  // made when it is not there
  };
  // Errors kNotFound, kCannotWrite, and kBadArgument when the file is something else. What is in the file stays as it is.
  static Result<Database> open(const std::string& path, Mode mode);

  Database(Database&& other) noexcept;
  Database& operator=(Database&&) = delete;
  Database(const Database&) = delete;
  ~Database();

  // A statement, prepared once for each text that is literally in the program.
  Rows run(std::string_view sql);
  // The same for a text that was put together for one question; it is not kept.
  Rows ask(const std::string& sql);
  // Several statements without values, as in a schema.
  void run_all(std::string_view sql);
  // One whole number that a statement gives; 0 when it gives none.
  std::int64_t number(std::string_view sql);

  // Everything between the two happens wholly or not at all, also when the process is killed between them.
  void begin();
  // The first thing that went wrong since begin(); then nothing of it has happened, and the next begin() starts clean.
  std::optional<Error> commit();

  // What went wrong; empty so far.
  [[nodiscard]] const std::optional<Error>& trouble() const { return trouble_; }
  // Takes the trouble away, to go on after reading.
  std::optional<Error> take_trouble();
  void fail(Error error);
  // A value, or the trouble that came up while it was made; the trouble is taken away.
  template <typename T>
  Result<T> settled(T value) {
    if (auto trouble = take_trouble()) return std::move(*trouble);
    return value;
  }

  [[nodiscard]] std::int64_t last_id() const;
  // Rows that the last statement changed.
  [[nodiscard]] int changed() const;

 private:
  friend class Rows;
  Database(sqlite3* handle, std::string path) : handle_(handle), path_(std::move(path)) {}
  void note(int code);  // keeps what SQLite says, in plain words

  sqlite3* handle_;
  std::string path_;
  std::map<std::string, sqlite3_stmt*, std::less<>> prepared_;
  std::optional<Error> trouble_;
  bool is_inside_ = false;
};

}  // namespace cp
