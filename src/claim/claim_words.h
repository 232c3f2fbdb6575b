// SPDX-License-Identifier: Apache-2.0
// Claims as they are typed, cut into words. The grammar is docs/formats/claim.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace cp {

struct ClaimWord {
  enum class Kind { kName, kNumber, kSign, kEnd };

  Kind kind = Kind::kEnd;
  std::string text;  // names in small letters; signs in one form: "!=" also for <> and the single character
  TextSpan where;

  [[nodiscard]] bool is(std::string_view word) const { return text == word && kind != Kind::kEnd; }
};

// The words, an end mark last. Error kBadArgument for a character that means nothing.
Result<std::vector<ClaimWord>> claim_words(std::string_view text);

// A place in a text of one line: `length` bytes from `offset`; the column counts characters.
TextSpan span_in(std::string_view text, std::size_t offset, std::size_t length);

}  // namespace cp
