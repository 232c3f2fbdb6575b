// SPDX-License-Identifier: Apache-2.0
// The commands of the door `answer` (api.h), and those among them that write lessons.
#pragma once

#include <span>
#include <string_view>

#include "api/answer.h"
#include "api/fields.h"

namespace cp::api {

struct Door {
  std::string_view name;
  Answer (*ask)(Fields& fields);  // reads the fields of the request, refuses what is left over, answers
};

// lesson, lesson_draft, lesson_check, lesson_review, lesson_build, series_check.
std::span<const Door> lesson_doors();

}  // namespace cp::api
