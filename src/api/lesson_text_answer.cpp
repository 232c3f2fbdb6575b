// SPDX-License-Identifier: Apache-2.0
// Written lessons and series through the door.
#include "api/lesson_parts.h"

#include <array>
#include <set>

#include "api/near_names.h"
#include "base/text.h"
#include "export/series_html.h"
#include "lesson/series.h"
#include "path/selection.h"

namespace cp::api {

namespace {

Answer stopped(const BuildStop& stop) {
  Answer answer = refuse(stop.error, "lesson");
  answer.json["error"]["verdict"] = name_of(stop.kind);
  if (!stop.scene.empty()) answer.json["error"]["scene"] = stop.scene;
  if (stop.kind == BuildStop::Kind::kRefuted) answer.outcome = Outcome::kRefuted;
  if (stop.kind == BuildStop::Kind::kOpen) answer.outcome = Outcome::kOpen;
  return answer;
}

Json claims_json(const Scene& scene) {
  Json claims = Json::array();
  for (const AskedClaim& claim : scene.claims) {
    Json json = Json::object();
    json["claim"] = claim.text;
    if (!claim.footing.empty()) json["footing"] = claim.footing;
    json["reason"] = claim.reason;
    claims.push_back(std::move(json));
  }
  return claims;
}

Json scene_json(const Scene& scene) {
  Json json = Json::object();
  json["id"] = scene.id;
  json["heading"] = scene.heading;
  json["seconds"] = scene.seconds;
  json["steps"] = scene.steps.size();
  json["exercises"] = scene.exercises.size();
  json["claims"] = claims_json(scene);
  return json;
}

Json document_json(const Document& document) {
  Json json = Json::object();
  json["title"] = document.title;
  json["language"] = document.language;
  json["seconds"] = total_seconds(document);
  json["needs"] = document.needs;
  json["teaches"] = document.teaches;
  json["uses"] = document.uses;
  json["scenes"] = Json::array();
  for (const Scene& scene : document.scenes) json["scenes"].push_back(scene_json(scene));
  return json;
}

// The written lesson as data: docs/formats/schema/lesson_document.schema.json.
Json parsed_json(const Lesson& lesson) {
  static constexpr std::array<std::string_view, 7> kKinds = {"break", "comment", "words", "note", "question", "answer", "directive"};
  const auto line_json = [](const WrittenLine& line) {
    Json json = Json::object();
    json["kind"] = kKinds[static_cast<std::size_t>(line.kind)];
    if (!line.name.empty()) json["name"] = line.name;
    if (!line.text.empty()) json["text"] = line.text;
    return json;
  };
  Json json = Json::object();
  json["version"] = 1;
  json["title"] = lesson.title;
  json["puzzle"] = lesson.puzzle;
  if (!lesson.idea.empty()) json["idea"] = lesson.idea;
  if (lesson.level > 0) json["level"] = lesson.level;
  json["needs"] = lesson.needs;
  json["teaches"] = lesson.teaches;
  json["language"] = lesson.language;
  if (lesson.minutes > 0) json["minutes"] = lesson.minutes;
  if (!lesson.source.empty()) json["source"] = lesson.source;
  if (!lesson.licence.empty()) json["licence"] = lesson.licence;
  json["comments"] = Json::array();
  for (const WrittenLine& line : lesson.comments) json["comments"].push_back(line.text);
  json["scenes"] = Json::array();
  for (const WrittenScene& scene : lesson.scenes) {
    Json each = Json::object();
    each["heading"] = scene.heading;
    each["lines"] = Json::array();
    for (const WrittenLine& line : scene.lines) each["lines"].push_back(line_json(line));
    json["scenes"].push_back(std::move(each));
  }
  return json;
}

Json gap_json(const SeriesGap& gap, const std::vector<SeriesMember>& members) {
  Json json = Json::object();
  json["lesson"] = members[gap.lesson].name;
  json["missing"] = gap.missing;
  json["used"] = gap.is_used;
  if (!gap.taught_later.empty()) json["taught_in"] = gap.taught_later;
  std::string text = members[gap.lesson].name + (gap.is_used ? " uses " : " needs ") + gap.missing + ", which ";
  text += gap.taught_later.empty() ? "no lesson of the series teaches" : gap.taught_later == members[gap.lesson].name ? "it teaches itself" : gap.taught_later + " teaches only after it";
  json["text"] = text;
  return json;
}

Json coverage_json(const SeriesPlan& plan) {
  static constexpr std::array<std::string_view, 4> kMarks = {"", "taught", "needed", "used"};
  Json rows = Json::array();
  for (const SeriesPlan::Row& row : plan.coverage) {
    Json json = Json::object();
    json["name"] = row.name;
    json["lessons"] = Json::array();
    for (const SeriesPlan::Mark mark : row.marks) json["lessons"].push_back(kMarks[static_cast<std::size_t>(mark)]);
    rows.push_back(std::move(json));
  }
  return rows;
}

// What is wrong with the text about a series; a slip in a key is told with the key that is near.
Answer refuse_about(Error error, const std::string& text) {
  if (error.code == ErrorCode::kBadName) {
    error.hint = name_hint(std::string_view(text).substr(error.where.offset, error.where.length), {kSeriesKeys.begin(), kSeriesKeys.end()}, "the keys are");
  }
  return refuse(std::move(error), "about");
}

// The first name under `assumes` that is neither in the catalogue nor an idea of some lesson: nobody could mean it.
std::optional<Answer> unknown_assumption(const SeriesAbout& about, const std::vector<SeriesMember>& members) {
  const std::vector<std::string> techniques = technique_names();
  std::set<std::string> known(techniques.begin(), techniques.end());
  for (const SeriesMember& member : members) {
    for (const auto* names : {&member.document.needs, &member.document.teaches}) known.insert(names->begin(), names->end());
  }
  for (std::size_t i = 0; i < about.assumes.size(); ++i) {
    const std::string& name = about.assumes[i];
    if (known.count(name) != 0) continue;
    const std::string hint = name_hint(name, {known.begin(), known.end()}, "a technique, a family, or what a lesson needs or teaches, such as");
    return refuse(Error{ErrorCode::kBadName, "'" + name + "' is no technique, and no lesson names it", hint, about.places[i]}, "about");
  }
  return std::nullopt;
}

// Builds each lesson; the fault of the first that does not build, with its name as the field.
std::optional<Answer> build_all(const SeriesRequest& request, const TellLesson& tell, std::vector<SeriesMember>& members) {
  for (const SeriesRequest::Member& lesson : request.lessons) {
    if (tell) tell(lesson.name, members.size() + 1);
    LessonParts parts = lesson_text_parts(lesson.text);
    if (!parts.document) {
      parts.answer.field = lesson.name;
      return std::move(parts.answer);
    }
    members.push_back({lesson.name, std::move(*parts.document)});
  }
  return std::nullopt;
}

}  // namespace

std::string_view name_of(BuildStop::Kind kind) {
  switch (kind) {
    case BuildStop::Kind::kUnfit: return "unfit";
    case BuildStop::Kind::kRefuted: return "refuted";
    case BuildStop::Kind::kOpen: return "open";
    case BuildStop::Kind::kBug: return "bug";
  }
  return "bug";
}

LessonParts lesson_text_parts(const std::string& text) {
  const auto lesson = parse_lesson(text);
  if (!lesson) return {refuse(lesson.error(), "lesson"), std::nullopt};
  BuildResult built = build_lesson(*lesson);
  if (const auto* stop = std::get_if<BuildStop>(&built)) return {stopped(*stop), std::nullopt};
  Answer answer;
  answer.json = document_json(std::get<Document>(built));
  return {std::move(answer), std::move(std::get<Document>(built)), text};
}

Answer lesson_check(const LessonTextRequest& request) {
  Answer answer = lesson_text_parts(request.lesson).answer;
  if (!answer.is_ok()) return answer;
  if (const auto lesson = parse_lesson(request.lesson)) answer.json["parsed"] = parsed_json(*lesson);
  return answer;
}

Answer lesson_build(const LessonTextRequest& request) {
  LessonParts parts = lesson_text_parts(request.lesson);
  if (!parts.document) return std::move(parts.answer);
  parts.answer.json["files"] = Json::array();
  for (TextFile& file : text_files(*parts.document, request.notes)) {
    Json json = Json::object();
    json["name"] = std::move(file.name);
    json["text"] = std::move(file.text);
    parts.answer.json["files"].push_back(std::move(json));
  }
  return std::move(parts.answer);
}

SeriesParts series_parts(const SeriesRequest& request, const TellLesson& tell) {
  const auto about = parse_series(request.about);
  if (!about) return {refuse_about(about.error(), request.about), {}, {}};
  if (request.lessons.empty()) return {refuse(Error{ErrorCode::kBadArgument, "the series has no lesson", "a series is a folder with files whose names end in .lesson", {}}, "lessons"), {}, {}};
  std::vector<SeriesMember> members;
  if (auto fault = build_all(request, tell, members)) return {std::move(*fault), {}, {}};
  if (auto fault = unknown_assumption(*about, members)) return {std::move(*fault), {}, {}};
  const SeriesPlan plan = plan_series(*about, members);
  SeriesParts parts;
  Json& json = parts.answer.json;
  json["title"] = about->title;
  json["lessons"] = Json::array();
  for (const std::size_t number : plan.order) {
    Json entry = document_json(members[number].document);
    entry.erase("scenes");
    entry["name"] = members[number].name;
    entry["level"] = members[number].document.level;
    json["lessons"].push_back(std::move(entry));
  }
  json["coverage"] = coverage_json(plan);
  json["gaps"] = Json::array();
  for (const SeriesGap& gap : plan.gaps) json["gaps"].push_back(gap_json(gap, members));
  if (!plan.gaps.empty()) parts.answer.outcome = Outcome::kRefuted;
  parts.index = series_html(*about, members, plan);
  for (const std::size_t number : plan.order) parts.lessons.push_back({members[number].name, std::move(members[number].document), request.lessons[number].text});
  return parts;
}

Answer series_check(const SeriesRequest& request) { return series_parts(request).answer; }

}  // namespace cp::api
