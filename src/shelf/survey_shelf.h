// SPDX-License-Identifier: Apache-2.0
// Surveys of the puzzles on the shelf: made on all cores, kept in blocks; what was done is not done again, so the same
// call goes on where it was stopped or killed.
#pragma once

#include <functional>

#include "scan/survey_record.h"
#include "store/shelf.h"

namespace cp {

struct ShelfSurveyWish {
  SurveyDepth depth = SurveyDepth::kBalances;  // kBasics or more
  bool ask_needed = false;
  std::optional<QueryTerm> query = {};  // only puzzles that fit; proper ones in any case
  std::int64_t most = 0;                // so many surveys, then stop; 0: all
  int threads = 1;
};

// Told after every block how many are done; gives false to stop there.
using ShelfSurveyProgress = std::function<bool(std::int64_t done)>;

// Gives how many puzzles were surveyed. A puzzle that was surveyed as deep before is passed over.
Result<std::int64_t> survey_shelf(Shelf& shelf, const ShelfSurveyWish& wish, const ShelfSurveyProgress& progress);

// What the shelf keeps of a record. Facets: every technique of the path with its family and, where it counts on exactly one
// solution, "uniqueness"; what is needed; how the path ends, and whether only singles follow its hardest step; for each
// choice of kinds of houses the least slack of a balance over no others. Precondition: the record has a path.
SurveyRow survey_row(std::int64_t puzzle, const SurveyRecord& record);

}  // namespace cp
