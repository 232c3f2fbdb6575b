// SPDX-License-Identifier: Apache-2.0
// Everything the program prints: answers to stdout, errors to stderr.
#pragma once

#include <string>
#include <string_view>

#include "api/answer.h"

namespace cp::cli {

// Where a text came from, so that a message can show the place in it.
struct Source {
  std::string_view text;     // what the place of an error counts in
  std::string name;          // "--left", "puzzles.txt"; how a person knows it; may be empty
  bool has_lines = false;    // name the line and column, as in "puzzles.txt:3:9"
  int line_offset = 0;       // lines before the text
};

// Prints to stdout and flushes. False when that failed; the program should then stop (the reader has gone, the disk is full).
[[nodiscard]] bool say(std::string_view text);

// Many short texts, said in few writes. What is not said by a call of end() is lost.
class SaidTogether {
 public:
  // False when a write failed, as say().
  [[nodiscard]] bool add(std::string_view text);
  [[nodiscard]] bool end();

 private:
  std::string text_;
};

// The exit code after say() failed; a message unless the reader has just gone away.
int cannot_say();

// The option that gives a field of the request: "--max-slack" for "max_slack".
std::string option_of(std::string field);

// The error as somebody at the command line reads it: "--max-slack is 9" for "max_slack is 9".
Error in_options(Error error, const std::string& field);

// `counterpoise: message`, the line with a caret under the place, `hint: ...`.
void complain(const Error& error, const Source& source = {});

// An error that ends the program: complain(), and with --json the error object on stdout. Gives the exit code.
int fail(const Error& error, bool as_json, const Source& source = {}, const std::string& field = {});

// Text in lines of at most `width` characters, each with the indent in front. Existing line ends stay.
std::string wrapped(std::string_view text, std::string_view indent = "", std::size_t width = 100);

// "r1c2, r3c4" from a JSON list of texts; "none" when empty.
std::string joined_texts(const Json& list, std::string_view separator = ", ");

// "5 leaves r1c2 ..." in short: "r1c2 <> 5, r3c4 <> 2" for eliminations, "r1c2 = 5" for placements.
std::string candidates_text(const Json& list, std::string_view sign);

}  // namespace cp::cli
