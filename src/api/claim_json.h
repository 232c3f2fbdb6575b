// SPDX-License-Identifier: Apache-2.0
// A verdict as JSON.
#pragma once

#include "api/answer.h"
#include "claim/script.h"

namespace cp::api {

// One claim of a script with its answer. `number` counts from 1; `unproved`: earlier claims it rests on that were not proved.
Json claim_json(const Board& board, const ScriptClaim& claim, const ClaimAnswer& answer, int number, const std::vector<int>& unproved);

// "proved", "refuted", "open".
std::string_view name_of(Verdict verdict);

}  // namespace cp::api
