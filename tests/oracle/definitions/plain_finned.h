// SPDX-License-Identifier: Apache-2.0
// Fish of lines with fins in one box, by their definition; shared by six twins.
#pragma once

#include "oracle/definitions/plain_one_digit.h"

namespace cp::oracle {

// `size` parallel lines with two places or more each, `size` crossing lines; the places of the former outside the
// latter are some, all in one box. What the crossing lines have in that box, outside the former, falls. Whole: without
// the fins each of all these lines keeps two places or more; otherwise each keeps one at least, and some only one.
Conclusions plain_finned(const Position& position, std::size_t size, bool is_whole);

}  // namespace cp::oracle
