// SPDX-License-Identifier: Apache-2.0
#include "api/lesson_doors.h"

#include <array>

#include "api/commands.h"
#include "base/text.h"

namespace cp::api {

namespace {

Answer ask_lesson(Fields& fields) {
  const LessonRequest request{fields.text("puzzle"), fields.text("title", ""), fields.flag("notes", false), fields.number("max_slack", 1), fields.text("left", ""), fields.text("right", ""), fields.text("idea", ""), fields.text("language", "")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return lesson(request);
}

Answer ask_lesson_draft(Fields& fields) {
  const LessonRequest request{fields.text("puzzle"), fields.text("title", ""), false, fields.number("max_slack", 1), fields.text("left", ""), fields.text("right", ""), fields.text("idea", ""), fields.text("language", "")};
  if (auto fault = fields.finish()) return std::move(*fault);
  return lesson_draft(request);
}

Answer ask_lesson_check(Fields& fields) {
  const LessonTextRequest request{fields.text("lesson"), false};
  if (auto fault = fields.finish()) return std::move(*fault);
  return lesson_check(request);
}

Answer ask_lesson_review(Fields& fields) {
  const LessonReviewRequest request{fields.text("lesson"), fields.number("only", -1)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return lesson_review(request);
}

Answer ask_lesson_build(Fields& fields) {
  const LessonTextRequest request{fields.text("lesson"), fields.flag("notes", false)};
  if (auto fault = fields.finish()) return std::move(*fault);
  return lesson_build(request);
}

// The lessons as texts; they are numbered where no names go with them.
Answer ask_series_check(Fields& fields) {
  SeriesRequest request;
  request.about = fields.text("about", "");
  const std::vector<std::string> names = fields.texts("names");
  for (const std::string& text : fields.texts("lessons")) {
    const std::size_t number = request.lessons.size();
    request.lessons.push_back({number < names.size() ? names[number] : "lesson-" + to_text(static_cast<long long>(number) + 1), text});
  }
  if (auto fault = fields.finish()) return std::move(*fault);
  return series_check(request);
}

constexpr std::array<Door, 6> kDoors = {{{"lesson", ask_lesson},
                                         {"lesson_draft", ask_lesson_draft},
                                         {"lesson_check", ask_lesson_check},
                                         {"lesson_review", ask_lesson_review},
                                         {"lesson_build", ask_lesson_build},
                                         {"series_check", ask_series_check}}};

}  // namespace

std::span<const Door> lesson_doors() { return kDoors; }

}  // namespace cp::api
