// SPDX-License-Identifier: Apache-2.0
#include "api/answer.h"

namespace cp::api {

namespace {

Json where_json(const TextSpan& where, const std::string& field) {
  Json json = Json::object();
  if (!field.empty()) json["field"] = field;
  json["line"] = where.line;
  json["column"] = where.column;
  json["offset"] = where.offset;
  json["length"] = where.length;
  return json;
}

}  // namespace

std::string_view name_of(ErrorCode code) {
  switch (code) {
    case ErrorCode::kBadPuzzle: return "bad-puzzle";
    case ErrorCode::kBadName: return "bad-name";
    case ErrorCode::kBadArgument: return "bad-argument";
    case ErrorCode::kNotProper: return "not-proper";
    case ErrorCode::kNotFound: return "not-found";
    case ErrorCode::kCannotWrite: return "cannot-write";
    case ErrorCode::kLimit: return "limit";
    case ErrorCode::kBug: return "bug";
  }
  return "bug";
}

Outcome outcome_of(ErrorCode code) {
  if (code == ErrorCode::kLimit) return Outcome::kOpen;
  return code == ErrorCode::kBug ? Outcome::kBug : Outcome::kBadInput;
}

Answer refuse(Error error, std::string field) {
  Json body = Json::object();
  body["code"] = name_of(error.code);
  body["message"] = error.message;
  body["hint"] = error.hint;
  if (error.where.is_known()) body["where"] = where_json(error.where, field);
  Answer answer;
  answer.json["error"] = std::move(body);
  answer.outcome = outcome_of(error.code);
  answer.error = std::move(error);
  answer.field = std::move(field);
  return answer;
}

std::string to_line(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace cp::api
