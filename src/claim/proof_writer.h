// SPDX-License-Identifier: Apache-2.0
// Writes down why facts and a denial cannot go together: unit steps, case splits while they are few, lemmas otherwise.
#pragma once

#include <optional>

#include "claim/house_sums.h"
#include "grid/position.h"
#include "step/certificate.h"

namespace cp {

struct ProofLimits {
  int split_depth = 3;                // cases within cases
  int split_nodes = 1'500;            // positions looked at for a proof by cases
  std::uint64_t failures = 60'000;    // for a proof by lemmas
};

// The certificate that these facts refute the denied formula. `sums`: as for named_rows. Empty when the limits were reached, or when they do not.
std::optional<Certificate> write_certificate(const Shape& shape, std::vector<CertificateFact> facts, Formula denial, std::vector<HouseSum> sums = {}, const ProofLimits& limits = {});

}  // namespace cp
