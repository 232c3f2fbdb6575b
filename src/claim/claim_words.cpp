// SPDX-License-Identifier: Apache-2.0
#include "claim/claim_words.h"

#include <array>

#include "base/small_letters.h"

namespace cp {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

struct Sign {
  std::string_view written;
  std::string_view meaning;
};
// Longest first.
constexpr std::array<Sign, 25> kSigns = {{{"\xE2\x89\xA0", "!="}, {"\xE2\x88\x88", "in"}, {"\xE2\x88\x89", "!in"}, {"\xE2\x87\x92", "=>"}, {"!=", "!="}, {"<>", "!="}, {"=>", "=>"},
                                          {"->", "=>"},  {"==", "="},  {"..", ".."}, {"=", "="},  {",", ","},   {"{", "{"},
                                          {"}", "}"},    {"(", "("},   {")", ")"},   {"+", "+"},  {"-", "-"},   {"*", "*"},
                                          {".", "."},    {":", ":"},   {"&", "&"},   {"?", "?"},  {"#", "#"},   {"|", "|"}}};

}  // namespace

TextSpan span_in(std::string_view text, std::size_t offset, std::size_t length) {
  TextSpan span{offset, length, 1, 1};
  for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
    if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) ++span.column;
  }
  return span;
}

Result<std::vector<ClaimWord>> claim_words(std::string_view text) {
  std::vector<ClaimWord> words;
  std::size_t at = 0;
  while (at < text.size()) {
    const char c = text[at];
    if (c == ' ' || c == '\t' || c == '\r' || c == '\n') {
      ++at;
      continue;
    }
    ClaimWord word;
    std::size_t length = 0;
    if (is_digit(c)) {
      while (at + length < text.size() && is_digit(text[at + length])) word.text += text[at + length++];
      word.kind = ClaimWord::Kind::kNumber;
    } else if (is_letter(c)) {
      while (at + length < text.size() && (is_letter(text[at + length]) || is_digit(text[at + length]))) word.text += small_letter(text[at + length++]);
      word.kind = ClaimWord::Kind::kName;
    } else {
      for (const Sign& sign : kSigns) {
        if (text.substr(at).substr(0, sign.written.size()) != sign.written) continue;
        word.text = sign.meaning;
        word.kind = ClaimWord::Kind::kSign;
        length = sign.written.size();
        break;
      }
    }
    if (length == 0) {
      return Error{ErrorCode::kBadArgument, "this character means nothing in a claim", "write cells as r3c4, and = != in hold and or not if then", span_in(text, at, 1)};
    }
    word.where = span_in(text, at, length);
    words.push_back(std::move(word));
    at += length;
  }
  words.push_back({ClaimWord::Kind::kEnd, "", span_in(text, text.size(), 0)});
  return words;
}

}  // namespace cp
