// SPDX-License-Identifier: Apache-2.0
// One balance as JSON: the same object from every command. Its keys are explained in docs/formats/weigh.md.
#pragma once

#include "api/json.h"
#include "balance/finder.h"

namespace cp::api {

// A balance that proves something: `result` is what one level proves.
Json balance_json(const Position& position, const Weighing& weighing, int free_slack, const LevelResult& result);

// A balance with the outcome of all levels tried (up to `highest`); says what is missing when nothing falls.
Json balance_json(const Position& position, const Weighing& weighing, const Inference& inference, int highest);

// The balance of a step, worked out again from its reason.
Json balance_json(const Position& before, const std::vector<Candidate>& eliminations, const BalanceReason& reason);

}  // namespace cp::api
