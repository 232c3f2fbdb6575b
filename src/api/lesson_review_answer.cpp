// SPDX-License-Identifier: Apache-2.0
// A lesson that is being written, for the screen it is written on: docs/formats/lesson_review.md.
#include <optional>
#include <vector>

#include "api/claim_json.h"
#include "api/commands.h"
#include "api/lesson_parts.h"
#include "base/text.h"
#include "export/balance_svg.h"
#include "export/board_svg.h"
#include "export/svg_parts.h"
#include "lesson/build.h"

namespace cp::api {

namespace {

Json counts_json(const DigitCounts& counts, int side) {
  Json json = Json::array();
  for (int i = 0; i < side; ++i) json.push_back(counts[static_cast<std::size_t>(i)]);
  return json;
}

Json tally_json(const TallyTable& table) {
  Json json = Json::object();
  json["surplus"] = table.surplus;
  json["right"] = counts_json(table.known_right, table.side);
  json["left"] = counts_json(table.known_left, table.side);
  json["tally"] = counts_json(table.tally, table.side);
  return json;
}

Json words_json(const Scene& scene) {
  Json paragraphs = Json::array();
  for (const Paragraph& paragraph : scene.paragraphs) {
    Json json = Json::object();
    json["text"] = paragraph.text;
    if (!paragraph.term.empty()) json["term"] = paragraph.term;
    paragraphs.push_back(std::move(json));
  }
  return paragraphs;
}

Json exercises_json(const Scene& scene, const std::string& id) {
  Json exercises = Json::array();
  for (const Exercise& exercise : scene.exercises) {
    const std::string stem = id + "-q" + to_text(static_cast<long long>(exercises.size()) + 1);
    Json json = Json::object();
    json["question"] = exercise.question;
    json["answer"] = exercise.answer;
    if (exercise.answer_board) json["board"] = board_svg(*exercise.answer_board, SvgUse::kInline, stem + "-board");
    if (exercise.answer_pans) json["pans"] = pans_svg(*exercise.answer_pans, SvgUse::kInline, stem + "-pans");
    exercises.push_back(std::move(json));
  }
  return exercises;
}

Json claims_json(const Scene& scene) {
  Json claims = Json::array();
  for (const AskedClaim& claim : scene.claims) {
    Json json = Json::object();
    json["number"] = claim.number;
    json["key"] = claim.key;
    json["line"] = claim.line;
    json["claim"] = claim.text;
    if (!claim.footing.empty()) json["footing"] = claim.footing;
    json["verdict"] = claim.is_asked ? name_of(claim.verdict) : "unasked";
    if (claim.is_asked) json["text"] = claim.reason;
    claims.push_back(std::move(json));
  }
  return claims;
}

Json scene_json(const Scene& scene, const std::string& id) {
  Json json = Json::object();
  json["heading"] = scene.heading;
  json["line"] = scene.line;
  json["seconds"] = scene.seconds;
  json["is_time_given"] = scene.is_time_given;
  json["words"] = word_count(scene);
  json["paragraphs"] = words_json(scene);
  if (scene.board) json["board"] = board_svg(*scene.board, SvgUse::kInline, id + "-board");
  if (scene.pans) json["pans"] = pans_svg(*scene.pans, SvgUse::kInline, id + "-pans");
  if (scene.table) json["tally"] = tally_json(*scene.table);
  json["steps"] = scene.steps;
  json["exercises"] = exercises_json(scene, id);
  json["claims"] = claims_json(scene);
  if (!scene.note.empty()) json["note"] = scene.note;
  if (scene.answer) json["solution"] = board_svg(*scene.answer, SvgUse::kInline, id + "-solution");
  return json;
}

Json stop_json(const BuildStop& stop) {
  Json json = Json::object();
  json["verdict"] = name_of(stop.kind);
  json["message"] = stop.error.message;
  if (!stop.error.hint.empty()) json["hint"] = stop.error.hint;
  json["scene"] = stop.scene;
  json["line"] = stop.error.where.line;
  json["column"] = stop.error.where.column;
  return json;
}

// The worst of what a review found.
Outcome outcome_of(const LessonReview& review) {
  const auto holds = [&review](Verdict verdict, BuildStop::Kind kind) {
    if (review.stop && review.stop->kind == kind) return true;
    for (const Scene& scene : review.document.scenes) {
      for (const AskedClaim& claim : scene.claims) {
        if (claim.verdict == verdict) return true;
      }
    }
    return false;
  };
  if (review.stop && review.stop->kind == BuildStop::Kind::kBug) return Outcome::kBug;
  if (review.stop && review.stop->kind == BuildStop::Kind::kUnfit) return Outcome::kBadInput;
  if (holds(Verdict::kRefuted, BuildStop::Kind::kRefuted)) return Outcome::kRefuted;
  return holds(Verdict::kOpen, BuildStop::Kind::kOpen) ? Outcome::kOpen : Outcome::kDone;
}

}  // namespace

Answer lesson_review(const LessonReviewRequest& request) {
  const auto lesson = parse_lesson(request.lesson);
  if (!lesson) return refuse(lesson.error(), "lesson");
  const LessonReview review = review_lesson(*lesson, request.only >= 0 ? std::optional(request.only) : std::nullopt);
  const Document& document = review.document;
  Answer answer;
  answer.outcome = outcome_of(review);
  Json& json = answer.json;
  json["title"] = document.title;
  json["language"] = document.language;
  json["direction"] = document.is_right_to_left ? "rtl" : "ltr";
  if (document.minutes > 0) json["minutes"] = document.minutes;
  json["seconds"] = total_seconds(document);
  json["words_a_minute"] = kWordsAMinute;
  json["rules"] = svg_rules(SvgUse::kInline);
  json["scenes"] = Json::array();
  for (const Scene& scene : document.scenes) json["scenes"].push_back(scene_json(scene, "s" + to_text(static_cast<long long>(json["scenes"].size()) + 1)));
  if (review.stop) json["stop"] = stop_json(*review.stop);
  return answer;
}

}  // namespace cp::api
