// SPDX-License-Identifier: Apache-2.0
// The reason of a claim as a person would say it: from what is known, over what follows, to the claim. Two lengths.
#pragma once

#include <string>
#include <vector>

#include "speak/certificate_terms.h"

namespace cp {

struct ClaimWords {
  std::string spoken;                // at most four sentences
  // One sentence or two a line, in order. A short proof: every step that places or ends something. A long one: what it goes through and
  // what is settled on the way, with the side arguments counted.
  std::vector<std::string> written;
};

// `is_denial`: the certificate refutes the denial, so the claim holds; otherwise it refutes the claim itself.
ClaimWords certificate_words(const Shape& shape, const Certificate& certificate, bool is_denial);

}  // namespace cp
