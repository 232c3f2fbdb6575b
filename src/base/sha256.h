// SPDX-License-Identifier: Apache-2.0
// SHA-256 (FIPS 180-4), for the content policy of pages: which scripts may run is told by their hash.
#pragma once

#include <string>
#include <string_view>

namespace cp {

// The hash as base64 (RFC 4648, section 4), the form of content policies.
std::string sha256_base64(std::string_view text);

}  // namespace cp
