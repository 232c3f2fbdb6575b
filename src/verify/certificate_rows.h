// SPDX-License-Identifier: Apache-2.0
// The rows that facts and formulas stand for, made from their description alone.
#pragma once

#include <vector>

#include "grid/shape.h"
#include "step/certificate.h"

namespace cp::replay {

// Options are numbered from `next_option` on, which moves along. Empty when a fact is not in the grid or its numbers
// are too large to be added safely; `is_ok` says which.
std::vector<Row> rows_of_formula(const Formula& formula, int& next_option, bool& is_ok);
std::vector<Row> rows_of_fact(const Shape& shape, const CertificateFact& fact, int& next_option, bool& is_ok);

}  // namespace cp::replay
