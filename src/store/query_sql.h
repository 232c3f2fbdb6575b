// SPDX-License-Identifier: Apache-2.0
// A query as SQL. Every value is bound; the text is made of words of this program only.
//
// The rarest part of the query that has a list or an index leads: its puzzles are walked through, everything else is looked
// up for each of them. Without such a part (`proper`, say, which nearly all are) the puzzles are walked in the order
// wanted until enough are found.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "store/database.h"
#include "store/query.h"

namespace cp {

// Counting by an index stops here: a range with more puzzles does not lead.
inline constexpr std::int64_t kMostCounted = 20'000;

// In which order puzzles are given; ties by number.
enum class FindOrder { kNumber, kGivens, kSteps, kHardest, kEffort };

using BoundValue = std::variant<std::int64_t, std::string>;

struct CompiledQuery {
  std::string sql;                  // gives the numbers of puzzles; the last two values are limit and offset
  std::vector<BoundValue> values;   // without limit and offset
  std::string leader;               // what leads, in words: "uses x-wing (318 puzzles)"
};

CompiledQuery compile_query(Database& database, const QueryTerm& query, FindOrder order);

// Binds the values of a compiled query.
Rows start_query(Database& database, const CompiledQuery& query, std::int64_t limit, std::int64_t offset);

}  // namespace cp
