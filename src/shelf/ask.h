// SPDX-License-Identifier: Apache-2.0
// Questions to the shelf in the words of a person, and shelved puzzles as text.
#pragma once

#include <string>

#include "store/shelf.h"

namespace cp {

// parse_query() with the names of the catalogue. Errors with their place in the text.
Result<QueryTerm> read_query(std::string_view text);

// "number", "givens", "steps", "hardest" or "effort". Error kBadName.
Result<FindOrder> read_order(std::string_view name);

// One line each, without a line end: the puzzle alone; a record of a table whose header is shelf_table_header(); a JSON object
// (docs/formats/shelf.md).
std::string shelf_line(const ShelvedPuzzle& puzzle);
std::string shelf_table_header();
std::string shelf_record(const ShelvedPuzzle& puzzle);
std::string shelf_json(const ShelvedPuzzle& puzzle);

// The answer of shelf find --json and of the page: an object with the puzzles found. Error kNotFound when one is gone meanwhile.
Result<std::string> find_json(Shelf& shelf, const Found& found);

// For people: "17: 24 givens, steps 57, hardest 40 (x-wing), effort 310; tags opening", and the puzzle below it.
std::string shelf_words(const ShelvedPuzzle& puzzle);

// What is wrong with a tag or the name of a lesson, if anything: it has to stand in a query and in a table.
std::optional<Error> wrong_word(const std::string& word);

}  // namespace cp
