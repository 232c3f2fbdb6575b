// SPDX-License-Identifier: Apache-2.0
// Sums of houses: a statement about many places of a digit may be a sum of house equations, which no chain of single
// steps shows ("these cells hold the same digits as those, plus one of each").
#pragma once

#include "step/certificate.h"

namespace cp {

struct HouseSum {
  std::vector<RowUse> uses;  // the row of the denial, and rows of houses and balances (by number of the fact), with multipliers
  Row row;                   // what they add up to
};

// For each row of the denial that speaks about one digit in at least three places: the multipliers with which houses and
// balances among the facts add up to its factors, on all cells but those whose digit the facts know, and the row with them
// taken away. Rows without such multipliers give none.
std::vector<HouseSum> house_sums(const Shape& shape, const std::vector<CertificateFact>& facts, const std::vector<Row>& rows);

}  // namespace cp
