// SPDX-License-Identifier: Apache-2.0
// A claim, or its denial, as sums over candidates: what the search and the certificate work with.
#pragma once

#include <vector>

#include "claim/claim.h"
#include "step/certificate.h"

namespace cp {

// The number of a candidate among the variables.
inline int variable_of(const Shape& shape, Candidate candidate) { return candidate.cell.index * shape.side() + candidate.digit.index; }
inline int candidate_variables(const Shape& shape) { return shape.cell_count() * shape.side(); }

// A formula that can be met (together with the rule that each cell holds exactly one digit) in exactly those grids in which
// the claim holds; with `holds` false, in which it does not.
Formula formula_of(const Shape& shape, const Claim& claim, bool holds);

// Flattens a formula (step/certificate.h says how); options are numbered from `next_option` on, which moves along.
std::vector<Row> flattened(const Formula& formula, int& next_option);

// The rows of a fact, the same way.
std::vector<Row> rows_of(const Shape& shape, const CertificateFact& fact, int& next_option);

// A cell holds exactly one digit.
Row cell_row(const Shape& shape, Cell cell);

// Weighed sums over houses for a digit: the row of a balance.
Row weighed_row(const Shape& shape, const std::vector<Weight>& weights, Digit digit);

}  // namespace cp
