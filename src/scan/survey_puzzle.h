// SPDX-License-Identifier: Apache-2.0
// Makes the record of one puzzle. Pure: same puzzle, same record, on every machine and from any number of threads.
#pragma once

#include "grid/position.h"
#include "scan/survey_record.h"
#include "step/balance_reason.h"

namespace cp {

struct SurveyWish {
  SurveyDepth depth = SurveyDepth::kBalances;
  bool ask_needed = false;        // at kFull also which techniques are needed: several times as long
};

SurveyRecord survey_puzzle(const Position& puzzle, const SurveyWish& wish = {});

// "rows against columns" and the like; see BalanceNote.
std::string kind_of(const Shape& shape, const std::vector<Weight>& weights);

}  // namespace cp
