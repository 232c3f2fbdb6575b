// SPDX-License-Identifier: Apache-2.0
// What the answer of weigh says besides the balance when the houses are named: the remainders, an account digit by
// digit, and what is missing when nothing falls. The keys are explained in docs/formats/weigh.md.
#pragma once

#include "api/json.h"
#include "balance/missing_falls.h"

namespace cp::api {

// Adds "remainder_left", "remainder_right", "cancelled" and "digits".
void add_account(Json& answer, const Position& position, const Weighing& weighing, const Inference& inference);

// Why nothing fell. With `look_for_changes` the single candidates whose fall would make it speak are looked for.
// Precondition: the balance proves nothing and is not impossible.
Json missing_json(const Position& position, const Weighing& weighing, const Inference& inference, bool look_for_changes);

}  // namespace cp::api
