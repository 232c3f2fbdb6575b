// SPDX-License-Identifier: Apache-2.0
// Cells, houses, digits and steps in the language of a lesson, named as a person would: "the two cells in box 4".
#pragma once

#include <string>
#include <vector>

#include "speak/balance_story.h"
#include "speak/words.h"
#include "step/certificate.h"
#include "step/step.h"

namespace cp {

class Speaker {
 public:
  explicit Speaker(std::string_view language) : words_(language) {}

  [[nodiscard]] const Words& words() const { return words_; }

  // "rows 3 and 7 with boxes 4 and 6".
  [[nodiscard]] std::string houses(const Shape& shape, const std::vector<House>& houses) const;
  // "r3c7"; "the two open cells of box 4 (r4c1 and r5c2)"; "four cells in box 1 and two in box 3"; "11 cells".
  // `open`: the open cells of the position.
  [[nodiscard]] std::string cells(const Shape& shape, const CellSet& cells, const CellSet& open) const;
  // Every cell by name.
  [[nodiscard]] std::string cell_list(const Shape& shape, const CellSet& cells) const;
  // "one 5 and two 8s"; empty when every count is 0.
  [[nodiscard]] std::string copies(const Shape& shape, const DigitCounts& counts) const;
  // "1, 5, 5 and 8".
  [[nodiscard]] std::string digits(const Shape& shape, const DigitCounts& counts) const;
  [[nodiscard]] std::string digits(DigitSet digits) const;
  // "5 leaves r1c2 and r1c4; 7 leaves r4c1". Precondition: not empty.
  [[nodiscard]] std::string falls(const Shape& shape, const std::vector<Candidate>& eliminations) const;
  [[nodiscard]] std::string values(const Shape& shape, const std::vector<Candidate>& placements) const;
  // "hidden pair" by its id; `catalogue_name` where the language has none of its own.
  [[nodiscard]] std::string technique(std::string_view id, std::string_view catalogue_name) const;

  // A step in a sentence or two.
  [[nodiscard]] std::string step(const Step& step, const Position& before, std::string_view catalogue_name) const;
  // An argument link by link; not for English, which has argument_text().
  [[nodiscard]] std::string argument(const ArgumentReason& reason, const std::vector<Candidate>& struck, const Position& before) const;
  // Where a weighed sum looks: its bases, "r1c2 and r1c5" or "rows 3 and 7".
  [[nodiscard]] std::string bases(const Shape& shape, const std::vector<LinearTerm>& terms) const;
  // The facts that a proof rests on. More than a handful of known digits are told by where they stand.
  [[nodiscard]] std::string facts(const Shape& shape, const std::vector<CertificateFact>& facts) const;

  // balance_story() in this language.
  [[nodiscard]] std::vector<StoryPart> story(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations) const;

 private:
  [[nodiscard]] std::string facts_by_name(const Shape& shape, const std::vector<CertificateFact>& facts) const;
  // "the digits known in its remainders". `known`: the cells whose digits are among the facts.
  [[nodiscard]] std::string known_digits(const Shape& shape, const CellSet& known, const std::vector<CertificateFact>& facts) const;
  [[nodiscard]] std::string houses_of_kind(const Shape& shape, const std::vector<House>& houses, HouseKind kind) const;

  Words words_;
};

}  // namespace cp
