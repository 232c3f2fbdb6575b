// SPDX-License-Identifier: Apache-2.0
// The one door: JSON in, JSON out. Pure: the same request gives the same bytes. Nothing escapes but the answer.
#pragma once

#include <string>
#include <string_view>

#include "api/commands.h"

namespace cp::api {

// Answers a request such as {"command":"weigh","puzzle":"...","left":"r1,r2","right":"c1,c2","after_basics":true}.
// The other fields are those of the requests in commands.h, by the same names; unknown fields are an error.
// Whatever the text is, the result is one line of valid JSON: an answer or {"error":{...}}.
std::string answer(std::string_view request);

// The same without the text.
Answer answer_json(const Json& request);

}  // namespace cp::api
