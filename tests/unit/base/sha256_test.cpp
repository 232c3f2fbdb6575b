// SPDX-License-Identifier: Apache-2.0
#include "base/sha256.h"

#include <gtest/gtest.h>

namespace cp {
namespace {

// The examples that NIST publishes for SHA-256 ("abc", and the message of 448 bits), the empty message and a million times
// "a" (FIPS 180-2, appendix B), as base64.
TEST(Sha256, AgreesWithThePublishedExamples) {
  EXPECT_EQ(sha256_base64("abc"), "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
  EXPECT_EQ(sha256_base64(""), "47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
  EXPECT_EQ(sha256_base64("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"), "JI1qYdIGOLjlwCaTDD5gOaM85Flk/yFn9uzt1BnbBsE=");
  EXPECT_EQ(sha256_base64(std::string(1'000'000, 'a')), "zcduXJkU+5KBocfihNc+Z/GAmkiklyAOBG05zMcRLNA=");
}

}  // namespace
}  // namespace cp
