// SPDX-License-Identifier: Apache-2.0
// What comes back through the door: an answer or an error, as JSON, and how it went.
#pragma once

#include <optional>
#include <string>

#include "api/json.h"
#include "base/result.h"

namespace cp::api {

// How a request went. The numbers are the exit codes of the program and part of the interface
// (docs/formats/errors.md).
enum class Outcome : int {
  kDone = 0,       // done, or proved
  kRefuted = 1,    // the question was answered with no
  kOpen = 2,       // no answer was found within what was tried
  kBadInput = 64,  // the request cannot be understood
  kBug = 70,       // a broken promise inside Counterpoise
};

struct Answer {
  Json json;                   // the answer, or {"error": {...}}
  Outcome outcome = Outcome::kDone;
  std::optional<Error> error;  // set when json is an error
  std::string field;           // the field of the request that the place of the error counts in; may be empty

  [[nodiscard]] bool is_ok() const { return !error.has_value(); }
};

// An error as an answer. `field` names the part of the request that was wrong.
Answer refuse(Error error, std::string field = {});

// "bad-puzzle" for kBadPuzzle and so on: the names used in JSON.
std::string_view name_of(ErrorCode code);

// The outcome that an error stands for: kLimit is open, kBug a bug, everything else bad input.
Outcome outcome_of(ErrorCode code);

// A value as one line of text. Bytes that are no UTF-8 come out as U+FFFD.
std::string to_line(const Json& json);

}  // namespace cp::api
