// SPDX-License-Identifier: Apache-2.0
// Replays the proof of a claim (step/certificate.h). Makes the rows of the facts and of the denied formula by itself and knows
// nothing of how the proof was found. Whether the facts are those of the footing is check_footing's business; whether the
// formula says what the sentence says is not judged here (the tests compare sentences with their meaning).
#pragma once

#include "grid/position.h"
#include "step/certificate.h"
#include "verify/step_check.h"

namespace cp {

// Do the facts refute the denied formula, as the proof says?
CheckResult check_certificate(const Shape& shape, const Certificate& certificate);

// Are the marks among the facts those of the position? The houses of the grid and balances hold anyway.
CheckResult check_marks(const Position& position, const Certificate& certificate);

}  // namespace cp
