// SPDX-License-Identifier: Apache-2.0
// Result<T>: a value, or an error that a person can act on. Nothing below the shells throws or prints;
// the user's faults travel up in this type.
#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>

#include "base/span.h"

namespace cp {

// What kind of fault. One line of meaning each; the shells map them to exit codes.
enum class ErrorCode {
  kBadPuzzle,     // the text is no puzzle: wrong length, wrong character, unknown shape
  kBadName,       // a house, cell, technique or shape name that does not exist
  kBadArgument,   // a number out of range, options that exclude one another
  kNotProper,     // the request needs exactly one solution and the puzzle has none or several
  kNotFound,      // a file that is not there or cannot be read
  kCannotWrite,   // a file or folder that cannot be written
  kLimit,         // a stated limit was reached before an answer was found
  kBug,           // a broken promise inside Counterpoise
};

// A message says what was read and what was wanted; the hint says what to try.
struct Error {
  ErrorCode code = ErrorCode::kBug;
  std::string message;
  std::string hint;
  TextSpan where;
};

template <typename T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::move(value)) {}            // NOLINT: implicit on purpose
  Result(Error error) : content_(std::move(error)) {}        // NOLINT: implicit on purpose

  [[nodiscard]] bool is_ok() const { return content_.index() == 0; }
  explicit operator bool() const { return is_ok(); }

  // Precondition: is_ok().
  [[nodiscard]] const T& value() const& {
    assert(is_ok());
    return *std::get_if<0>(&content_);
  }
  [[nodiscard]] T& value() & {
    assert(is_ok());
    return *std::get_if<0>(&content_);
  }
  [[nodiscard]] T&& value() && {
    assert(is_ok());
    return std::move(*std::get_if<0>(&content_));
  }
  const T* operator->() const { return &value(); }
  const T& operator*() const& { return value(); }

  // Precondition: !is_ok().
  [[nodiscard]] const Error& error() const {
    assert(!is_ok());
    return *std::get_if<1>(&content_);
  }

 private:
  std::variant<T, Error> content_;
};

}  // namespace cp
