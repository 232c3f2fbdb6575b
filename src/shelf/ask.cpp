// SPDX-License-Identifier: Apache-2.0
#include "shelf/ask.h"

#include <nlohmann/json.hpp>

#include "base/text.h"
#include "path/selection.h"
#include "shelf/table_lines.h"

namespace cp {

namespace {

using Json = nlohmann::ordered_json;

// A number of the path of the survey, or nothing.
std::string path_number(const Json& survey, const char* name) {
  const Json path = survey.is_object() ? survey.value("path", Json()) : Json();
  return path.is_object() && path.contains(name) && path.at(name).is_number() ? path.at(name).dump() : std::string();
}

Json survey_of(const ShelvedPuzzle& puzzle) { return puzzle.record.empty() ? Json() : Json::parse(puzzle.record, nullptr, false); }

// "one", "none" or "several".
std::string_view solutions_word(int solutions) { return solutions == 0 ? "none" : solutions == 1 ? "one" : "several"; }

Json puzzle_json(const ShelvedPuzzle& puzzle) {
  Json json = Json::object();
  json["number"] = puzzle.number;
  json["puzzle"] = puzzle.text;
  json["name"] = puzzle.name;
  json["source"] = puzzle.source;
  json["licence"] = puzzle.licence;
  json["givens"] = puzzle.givens;
  json["solutions"] = solutions_word(puzzle.solutions);
  json["tags"] = puzzle.tags;
  json["lessons"] = puzzle.lessons;
  json["notes"] = puzzle.notes;
  json["survey"] = survey_of(puzzle);
  return json;
}

std::string dumped(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace

Result<QueryTerm> read_query(std::string_view text) {
  return parse_query(text, [](const std::string& name, std::string_view kind) -> std::optional<Error> {
    const auto selection = select_techniques({name}, {});
    if (!selection) return selection.error();
    const auto technique = find_technique(name);
    if (kind != kNeedsKind || !technique) return std::nullopt;
    return Error{ErrorCode::kBadName, "surveys tell which families are needed, not which techniques", "write needs " + std::string((*technique)->family) + ", or uses " + name, {}};
  });
}

Result<FindOrder> read_order(std::string_view name) {
  if (name == "number") return FindOrder::kNumber;
  if (name == "givens") return FindOrder::kGivens;
  if (name == "steps") return FindOrder::kSteps;
  if (name == "hardest") return FindOrder::kHardest;
  if (name == "effort") return FindOrder::kEffort;
  return Error{ErrorCode::kBadName, "puzzles are not put in order by '" + std::string(name) + "'", "the orders are number, givens, steps, hardest and effort", {}};
}

std::optional<Error> wrong_word(const std::string& word) {
  if (trimmed(word).empty()) return Error{ErrorCode::kBadArgument, "the name is empty", "write a word", {}};
  if (word.find_first_of("\n\r\t\";") == std::string::npos) return std::nullopt;
  return Error{ErrorCode::kBadArgument, "the name holds a line end, a tab, a quotation mark or a semicolon", "choose a plain name", {}};
}

std::string shelf_line(const ShelvedPuzzle& puzzle) { return puzzle.text; }

std::string shelf_table_header() { return "number,puzzle,name,source,licence,tags,lessons,note,givens,solutions,steps,hardest,effort"; }

std::string shelf_record(const ShelvedPuzzle& puzzle) {
  const Json survey = survey_of(puzzle);
  const std::vector<std::string> fields = {to_text(puzzle.number),
                                           puzzle.text,
                                           table_field(puzzle.name),
                                           table_field(puzzle.source),
                                           table_field(puzzle.licence),
                                           table_field(joined(puzzle.tags, ";")),
                                           table_field(joined(puzzle.lessons, ";")),
                                           table_field(joined(puzzle.notes, "\n")),
                                           to_text(puzzle.givens),
                                           std::string(solutions_word(puzzle.solutions)),
                                           path_number(survey, "steps"),
                                           path_number(survey, "hardest"),
                                           path_number(survey, "effort")};
  return joined(fields, ",");
}

std::string shelf_json(const ShelvedPuzzle& puzzle) { return dumped(puzzle_json(puzzle)); }

Result<std::string> find_json(Shelf& shelf, const Found& found) {
  Json json = Json::object();
  json["leader"] = found.leader;
  json["has_more"] = found.has_more;
  json["puzzles"] = Json::array();
  for (const std::int64_t number : found.numbers) {
    const auto puzzle = shelf.puzzle(number);
    if (!puzzle) return puzzle.error();
    json["puzzles"].push_back(puzzle_json(*puzzle));
  }
  return dumped(json);
}

std::string shelf_words(const ShelvedPuzzle& puzzle) {
  std::string text = to_text(puzzle.number) + ": " + counted(puzzle.givens, "given");
  if (puzzle.solutions != 1) text += puzzle.solutions == 0 ? ", no solution" : ", several solutions";
  const Json survey = survey_of(puzzle);
  for (const char* name : {"steps", "hardest", "effort"}) {
    if (const std::string number = path_number(survey, name); !number.empty()) text += std::string(", ") + name + " " + number;
  }
  const std::string technique = survey.is_object() && survey.contains("path") ? survey.at("path").value("technique", std::string()) : std::string();
  if (!technique.empty()) text += " (" + technique + ")";
  if (!puzzle.name.empty()) text += "; " + puzzle.name;
  if (!puzzle.source.empty()) text += "; from " + puzzle.source;
  if (!puzzle.tags.empty()) text += "; tags " + joined(puzzle.tags, ", ");
  if (!puzzle.lessons.empty()) text += "; used in " + joined(puzzle.lessons, ", ");
  text += "\n   " + puzzle.text + "\n";
  for (const std::string& note : puzzle.notes) {
    text += "   note: ";
    for (const char letter : note) text += letter == '\n' ? std::string("\n         ") : std::string(1, letter);
    text += "\n";
  }
  return text;
}

}  // namespace cp
