// SPDX-License-Identifier: Apache-2.0
// The shelf of the person at the desk, for the page shelf.html: find, charts, tags, notes and lessons, through the desk's server.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "serve/page_answer.h"
#include "shelf/ask.h"

namespace cp::cli {

// Answers the paths below /shelf (docs/formats/shelf_door.md):
//   GET  /shelf/about                                     the name, counts, names in use
//   GET  /shelf/find?query=...&by=...&limit=...&skip=...  as shelf find --json
//   GET  /shelf/charts?query=...                          how what fits is spread
//   POST /shelf/tag, /shelf/use, /shelf/note              {"number":17,"text":"...","drop":false}: the puzzle as it is now
// Faults of the request are 400 with {"error":{...}} as everywhere.
class ServedShelf {
 public:
  // Errors: what Shelf::open says.
  static Result<ServedShelf> open(const std::string& path);

  [[nodiscard]] std::optional<serve::DoorReply> answer(const serve::DoorRequest& request) const;

 private:
  std::string name_;
  std::shared_ptr<Shelf> shelf_;  // shared only because a door is a copyable function
};

}  // namespace cp::cli
