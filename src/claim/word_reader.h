// SPDX-License-Identifier: Apache-2.0
// Goes through the words of a claim. The first fault is kept; what is read after it means nothing.
#pragma once

#include <optional>

#include "claim/claim_parser.h"
#include "claim/claim_words.h"

namespace cp {

class WordReader {
 public:
  WordReader(const Position& position, const Vocabulary& vocabulary, std::vector<ClaimWord> words)
      : position_(position), shape_(position.shape()), vocabulary_(vocabulary), words_(std::move(words)) {}

  [[nodiscard]] const ClaimWord& word(std::size_t ahead = 0) const { return words_[std::min(at_ + ahead, words_.size() - 1)]; }
  [[nodiscard]] bool is(std::string_view text) const { return word().is(text); }
  [[nodiscard]] bool is_at_end() const { return word().kind == ClaimWord::Kind::kEnd; }
  ClaimWord next();
  // Passes over the word if it is this one.
  bool take(std::string_view text);
  void expect(std::string_view text, std::string_view hint);

  void complain(const ClaimWord& at, std::string message, std::string hint, ErrorCode code = ErrorCode::kBadArgument);
  [[nodiscard]] bool has_fault() const { return fault_.has_value(); }
  [[nodiscard]] const Error& fault() const { return *fault_; }
  // Complains unless everything was read.
  void finish();

  // Cells: "r3c4 r5c6", "r12c45", "b5", "{ring r1c1}", "open r3", "b1 & r2", "r3 without r3c4", "ring.left".
  CellGroup read_group();
  [[nodiscard]] bool is_group_ahead() const;
  // Digits: "5", "5,6", "56", "1..9", "2,2" (counted).
  DigitCounts read_digits();
  [[nodiscard]] bool is_digit_ahead() const { return is_digit_word(word()); }
  [[nodiscard]] bool is_digit_word(const ClaimWord& word) const;
  // "3" or "three".
  std::optional<int> read_number();

  [[nodiscard]] const Shape& shape() const { return shape_; }
  [[nodiscard]] const Vocabulary& vocabulary() const { return vocabulary_; }
  // Brackets within brackets are bounded; false (with a fault) beyond.
  bool enter();
  void leave() { --depth_; }

 private:
  CellGroup read_item();
  CellGroup read_base();
  CellGroup read_named(const ClaimWord& name);
  // "r12c45": all rows times all columns; empty when the word is none.
  CellGroup cross(const std::string& name) const;
  void add_digits(const ClaimWord& word, DigitCounts& counts);
  std::optional<Digit> one_digit(const ClaimWord& word);

  const Position& position_;
  const Shape& shape_;
  const Vocabulary& vocabulary_;
  std::vector<ClaimWord> words_;
  std::size_t at_ = 0;
  int depth_ = 0;
  std::optional<Error> fault_;
};

}  // namespace cp
