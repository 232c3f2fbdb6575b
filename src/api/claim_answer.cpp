// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "api/claim_json.h"
#include "api/commands.h"
#include "api/parts.h"
#include "base/text.h"
#include "grid/notation.h"
#include "speak/naming.h"

namespace cp::api {

namespace {

struct Judged {
  Board board;
  Script script;
  ScriptAnswer answer;
};

// Everything up to the verdicts; `field` is where the claims stand in the request.
std::optional<Answer> judge(const Position& position, const std::string& claims, const std::string& footing, const std::string& field, std::optional<Judged>& judged) {
  auto board = judge_board(position);
  if (!board) return refuse(board.error(), "puzzle");
  auto script = parse_script(board->position, claims, footing);
  if (!script) {
    // The claims go with another footing: then the fault is in this one, and its place counts there.
    const bool is_footing = !footing.empty() && parse_script(board->position, claims, "position").is_ok();
    return refuse(script.error(), is_footing ? "footing" : field);
  }
  auto answer = judge_script(*board, *script);
  if (!answer) return refuse(answer.error(), field);
  judged = Judged{std::move(*board), std::move(*script), std::move(*answer)};
  return std::nullopt;
}

void add_board(Json& json, const Judged& judged, bool reveal) {
  const CellSet& wrong = judged.board.wrong_marks;
  if (!wrong.is_empty()) {
    json["wrong_marks"] = cells_json(judged.board.position.shape(), wrong);
    json["wrong_marks_text"] = "Not trusted, since they leave out the true digit: " + cell_names(judged.board.position.shape(), wrong) + ".";
  }
  if (reveal && judged.board.truth) json["solution"] = judged.board.truth->to_line();
}

Outcome outcome_of(Verdict verdict) {
  if (verdict == Verdict::kProved) return Outcome::kDone;
  return verdict == Verdict::kRefuted ? Outcome::kRefuted : Outcome::kOpen;
}

std::string summary_of(const Judged& judged) {
  const auto size = judged.answer.answers.size();
  const int first = judged.answer.first_not_implied;
  if (first == 0) return "All " + counted(static_cast<int>(size), "claim") + " are proved.";
  const ScriptClaim& claim = judged.script.claims[static_cast<std::size_t>(first) - 1];
  return "The first claim that its footing does not imply is number " + to_text(first) + ", in line " + to_text(claim.line) + ": " + claim.text;
}

// A script may also be JSON: a list of lines, or an object with `claims` and what else a request has.
std::optional<Answer> read_json_script(ClaimsRequest& request) {
  const std::size_t start = request.script.find_first_not_of(" \t\r\n");
  if (start == std::string::npos || (request.script[start] != '[' && request.script[start] != '{')) return std::nullopt;
  const auto wrong = [](std::string message) {
    return refuse(Error{ErrorCode::kBadArgument, std::move(message), "give a list of texts, or {\"puzzle\": \"...\", \"footing\": \"...\", \"claims\": [\"...\"]}", {}}, "script");
  };
  const Json json = Json::parse(request.script, nullptr, false);
  if (json.is_discarded()) return wrong("the script starts like JSON and is none");
  const Json* list = &json;
  if (json.is_object()) {
    for (const auto& [key, value] : json.items()) {
      if (key == "claims") list = &value;
      else if (key == "puzzle" && value.is_string()) request.puzzle = request.puzzle.empty() ? value.get<std::string>() : request.puzzle;
      else if (key == "footing" && value.is_string()) request.footing = request.footing.empty() ? value.get<std::string>() : request.footing;
      else if (key == "after_basics" && value.is_boolean()) request.after_basics = request.after_basics || value.get<bool>();
      else return wrong("'" + key + "' cannot stand there in a script");
    }
  }
  if (!list->is_array()) return wrong("the claims are no list");
  std::string text;
  for (const Json& line : *list) {
    if (!line.is_string()) return wrong("a claim is no text");
    std::string one = line.get<std::string>();
    std::replace(one.begin(), one.end(), '\n', ';');
    text += one + "\n";
  }
  request.script = std::move(text);
  return std::nullopt;
}

}  // namespace

Answer claim(const ClaimRequest& request) {
  const auto position = open_position(request.puzzle, request.after_basics);
  if (!position) return refuse(position.error(), "puzzle");
  std::optional<Judged> judged;
  if (auto fault = judge(*position, request.claim, request.footing, "claim", judged)) return std::move(*fault);
  // Several may be given; the last is the question, the others are said on the way.
  const std::size_t last = judged->answer.answers.size() - 1;
  Answer answer;
  answer.json = claim_json(judged->board, judged->script.claims[last], judged->answer.answers[last], static_cast<int>(last) + 1, judged->answer.rests_on_unproved[last]);
  add_board(answer.json, *judged, request.reveal);
  answer.outcome = outcome_of(judged->answer.answers[last].verdict);
  return answer;
}

Answer claims(const ClaimsRequest& given) {
  ClaimsRequest request = given;
  if (auto fault = read_json_script(request)) return std::move(*fault);
  const ScriptHead head = script_head(request.script);
  const bool is_own = request.puzzle.empty();
  if (is_own && head.puzzle.empty()) {
    return refuse(Error{ErrorCode::kBadArgument, "the script names no puzzle", "start it with a line: puzzle 53..7.... (81 characters), or give the puzzle beside it", {}}, "script");
  }
  const auto position = open_position(is_own ? head.puzzle : request.puzzle, request.after_basics || head.after_basics);
  if (!position) {
    Error error = position.error();
    if (is_own && error.where.is_known()) {
      error.where.line = head.where.line;
      error.where.column += head.where.column - 1;
      error.where.offset += head.where.offset;
    }
    return refuse(std::move(error), is_own ? "script" : "puzzle");
  }
  std::optional<Judged> judged;
  if (auto fault = judge(*position, request.script, request.footing, "script", judged)) return std::move(*fault);
  Answer answer;
  Json list = Json::array();
  for (std::size_t i = 0; i < judged->answer.answers.size(); ++i) {
    list.push_back(claim_json(judged->board, judged->script.claims[i], judged->answer.answers[i], static_cast<int>(i) + 1, judged->answer.rests_on_unproved[i]));
  }
  answer.json["claims"] = std::move(list);
  answer.json["first_not_implied"] = judged->answer.first_not_implied;
  answer.json["text"] = summary_of(*judged);
  add_board(answer.json, *judged, request.reveal);
  for (const ClaimAnswer& each : judged->answer.answers) {
    if (each.verdict == Verdict::kOpen) answer.outcome = Outcome::kOpen;
    if (each.verdict == Verdict::kRefuted && answer.outcome == Outcome::kDone) answer.outcome = Outcome::kRefuted;
  }
  return answer;
}

}  // namespace cp::api
