// SPDX-License-Identifier: Apache-2.0
#include "cli/served_shelf.h"

#include <algorithm>
#include <filesystem>
#include <map>

#include "api/answer.h"
#include "base/text.h"
#include "course/portrait.h"
#include "scan/record_json.h"
#include "serve/percent_byte.h"

namespace cp::cli {

namespace {

using serve::DoorReply;

constexpr std::string_view kRoot = "/shelf/";
constexpr std::int64_t kMostFound = 200;
constexpr std::int64_t kMostCounted = 2000;  // puzzles in the charts: a moment's reading
constexpr std::size_t kLongestWord = 2000;  // bytes of a tag, a note, the name of a lesson

DoorReply reply(std::string json, int status = 200) { return {status, "application/json", std::move(json), {}}; }

DoorReply refusal(const Error& error, const std::string& field = {}, int status = 400) { return reply(api::to_line(api::refuse(error, field).json), status); }

// A value of a query string: '+' is a blank, "%20" a byte.
std::string decoded(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (const auto byte = serve::percent_byte(text, at)) {
      result.push_back(*byte);
      at += 2;
    } else {
      result.push_back(text[at] == '+' ? ' ' : text[at]);
    }
  }
  return result;
}

std::map<std::string, std::string> fields_of(std::string_view query) {
  std::map<std::string, std::string> fields;
  for (const std::string& part : split(query, '&')) {
    const auto equals = part.find('=');
    if (equals != std::string::npos) fields[part.substr(0, equals)] = decoded(std::string_view(part).substr(equals + 1));
  }
  return fields;
}

// A whole number within bounds; the usual one when it is none.
std::int64_t number_of(const std::string& text, std::int64_t usual, std::int64_t most) {
  if (text.empty() || text.size() > 9 || !std::all_of(text.begin(), text.end(), [](char digit) { return digit >= '0' && digit <= '9'; })) return usual;
  return std::min<std::int64_t>(std::stoll(text), most);
}

DoorReply about(Shelf& shelf, const std::string& name) {
  const auto counts = shelf.counts();
  if (!counts) return refusal(counts.error());
  Json json = Json::object();
  json["name"] = name;
  json["puzzles"] = counts->puzzles;
  json["proper"] = counts->proper;
  json["surveyed"] = counts->surveyed;
  json["used"] = counts->used;
  json["notes"] = counts->notes;
  const std::pair<const char*, Result<std::vector<std::string>>> lists[] = {{"tags", shelf.names_of(kTagKind)}, {"lessons", shelf.names_of(kLessonKind)}, {"sources", shelf.source_names()}};
  for (const auto& [key, names] : lists) {
    if (!names) return refusal(names.error());
    json[key] = *names;
  }
  return reply(api::to_line(json));
}

DoorReply find(Shelf& shelf, std::string_view text) {
  auto fields = fields_of(text);
  const auto query = read_query(fields["query"]);
  if (!query) return refusal(query.error(), "query");
  const auto order = read_order(fields["by"].empty() ? "number" : fields["by"]);
  if (!order) return refusal(order.error(), "by");
  const auto found = shelf.find(*query, {*order, std::max<std::int64_t>(1, number_of(fields["limit"], 20, kMostFound)), number_of(fields["skip"], 0, 1'000'000'000)});
  if (!found) return refusal(found.error());
  auto answer = find_json(shelf, *found);
  return answer ? reply(std::move(answer).value()) : refusal(answer.error());
}

// What is known of the puzzle: the last survey, or its givens and whether it is proper.
std::optional<SurveyRecord> record_of(const ShelvedPuzzle& puzzle) {
  if (!puzzle.record.empty()) {
    const auto line = parse_scan_line(puzzle.record);
    return line ? line->record : std::nullopt;
  }
  SurveyRecord record;
  record.givens = puzzle.givens;
  record.solutions = puzzle.solutions == 1 ? "one" : puzzle.solutions == 0 ? "none" : "many";
  return record;
}

Json chart_json(const Chart& chart, std::size_t number) {
  Json json = Json::object();
  json["title"] = chart.title;
  json["words"] = chart.words;
  json["bars"] = Json::array();
  for (const Bar& bar : chart.bars) json["bars"].push_back(Json{{"label", bar.label}, {"count", bar.count}});
  json["svg"] = chart_svg(chart, SvgUse::kInline, "chart-" + std::to_string(number));
  return json;
}

DoorReply charts(Shelf& shelf, std::string_view text) {
  auto fields = fields_of(text);
  const auto query = read_query(fields["query"]);
  if (!query) return refusal(query.error(), "query");
  const auto found = shelf.find(*query, {FindOrder::kNumber, kMostCounted, 0});
  if (!found) return refusal(found.error());
  Portrait portrait;
  for (const std::int64_t number : found->numbers) {
    const auto puzzle = shelf.puzzle(number);
    if (!puzzle) return refusal(puzzle.error());
    if (const auto record = record_of(*puzzle)) portrait.add(*record);
    else portrait.add_fault();
  }
  Json json = Json::object();
  json["words"] = portrait.words();
  json["puzzles"] = portrait.puzzles();
  json["has_more"] = found->has_more;
  json["charts"] = Json::array();
  for (const Chart& chart : portrait.charts()) json["charts"].push_back(chart_json(chart, json["charts"].size() + 1));
  return reply(api::to_line(json));
}

DoorReply write(Shelf& shelf, std::string_view what, std::string_view body) {
  const Json wish = Json::parse(body, nullptr, false);
  if (!wish.is_object() || !wish.value("number", Json()).is_number_integer()) return refusal({ErrorCode::kBadArgument, "the request names no puzzle", "send {\"number\":17,\"text\":\"...\"}", {}});
  const auto number = wish.at("number").get<std::int64_t>();
  const std::string text = wish.value("text", Json()).is_string() ? std::string(trimmed(wish.at("text").get<std::string>())) : std::string();
  const bool drop = wish.value("drop", Json(false)) == Json(true);
  const bool is_note = what == "note";
  if (text.size() > kLongestWord) return refusal({ErrorCode::kBadArgument, "the text is too long", "at most 2000 bytes", {}}, "text");
  if (text.empty() && !(is_note && drop)) return refusal({ErrorCode::kBadArgument, "the text is empty", "write a word", {}}, "text");
  if (!is_note && !drop) {  // whatever is there may go
    if (auto wrong = wrong_word(text)) return refusal(*wrong, "text");
  }
  const std::string_view kind = what == "tag" ? kTagKind : kLessonKind;
  const auto trouble = is_note ? (drop ? shelf.drop_notes(number) : shelf.add_note(number, text)) : drop ? shelf.drop_word({number}, kind, text) : shelf.add_word({number}, kind, text);
  if (trouble) return refusal(*trouble);
  const auto puzzle = shelf.puzzle(number);
  if (!puzzle) return refusal(puzzle.error());
  return reply(shelf_json(*puzzle));
}

}  // namespace

Result<ServedShelf> ServedShelf::open(const std::string& path) {
  auto shelf = Shelf::open(path, Database::Mode::kWrite);
  if (!shelf) return shelf.error();
  ServedShelf served;
  served.name_ = std::filesystem::path(path).filename().string();
  served.shelf_ = std::make_shared<Shelf>(std::move(shelf).value());
  return served;
}

std::optional<DoorReply> ServedShelf::answer(const serve::DoorRequest& request) const {
  if (!request.path.starts_with(kRoot)) return std::nullopt;
  const std::string_view what = request.path.substr(kRoot.size());
  const bool is_read = request.method == "GET" || request.method == "HEAD";
  if (what == "about" && is_read) return about(*shelf_, name_);
  if (what == "find" && is_read) return find(*shelf_, request.query);
  if (what == "charts" && is_read) return charts(*shelf_, request.query);
  if ((what == "tag" || what == "use" || what == "note") && request.method == "POST") return write(*shelf_, what, request.body);
  return refusal({ErrorCode::kBadName, "the shelf has no such door", "see docs/formats/shelf_door.md", {}}, {}, 404);
}

}  // namespace cp::cli
