// SPDX-License-Identifier: Apache-2.0
// The reason of a claim as a person would say it: from what is known, over what follows, to the claim. Two lengths.
#pragma once

#include <string>
#include <vector>

#include "grid/shape.h"
#include "step/certificate.h"

namespace cp {

struct ClaimWords {
  std::string spoken;                // one or two sentences
  std::vector<std::string> written;  // one sentence or two a line, in order; every step of the proof that places or ends something
};

// `is_denial`: the certificate refutes the denial, so the claim holds; otherwise it refutes the claim itself.
ClaimWords certificate_words(const Shape& shape, const Certificate& certificate, bool is_denial);

// "row 3", "the marks of r3c4 (5 or 6)", "the 5 in r3c4", "balance ring", "claim 2".
std::string fact_in_words(const Shape& shape, const CertificateFact& fact);
// All of them, each kind together: "rows 3 and 4, the 5 in r3c4, the marks of r1c1 and r1c2".
std::string facts_in_words(const Shape& shape, const std::vector<CertificateFact>& facts);

}  // namespace cp
