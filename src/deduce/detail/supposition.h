// SPDX-License-Identifier: Apache-2.0
// What follows when a candidate is supposed true: singles, and if wanted locked candidates and pairs, until nothing more
// follows or a fact has no candidate left. Which candidates fall does not depend on the order, because each rule goes on
// holding while others fall. Every line is remembered, so that only the ones needed are told.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "deduce/detail/arguments.h"
#include "grid/position.h"

namespace cp::deduce {

// The exactly-one facts of a position that are still open, with their candidates. Candidates go by number (cell * side +
// digit).
class FactTable {
 public:
  struct Fact {
    Constraint constraint;
    std::vector<std::int16_t> candidates;
  };

  explicit FactTable(const Position& position);

  [[nodiscard]] const Position& position() const { return *position_; }
  [[nodiscard]] const std::vector<Fact>& facts() const { return facts_; }
  // The facts a candidate is in: its cell, row, column and box.
  [[nodiscard]] const std::array<std::int16_t, 4>& facts_of(int candidate) const { return facts_of_[static_cast<std::size_t>(candidate)]; }
  [[nodiscard]] int candidate_numbers() const { return static_cast<int>(facts_of_.size()); }
  [[nodiscard]] Candidate candidate(int number) const { return {Cell(number / side_), Digit(number % side_)}; }
  [[nodiscard]] int number(Candidate candidate) const { return candidate.cell.index * side_ + candidate.digit.index; }
  [[nodiscard]] const std::vector<std::int16_t>& all_candidates() const { return all_; }

 private:
  int add(Constraint constraint);

  const Position* position_;
  int side_;
  std::vector<Fact> facts_;
  std::vector<std::array<std::int16_t, 4>> facts_of_;
  std::vector<std::int16_t> all_;
};

enum class Following { kSingles, kSinglesAndSmallSets };

class Supposition {
 public:
  Supposition(const FactTable& table, Following following);

  // Starts again with this candidate true; kNothing: with nothing supposed.
  static constexpr int kNothing = -1;
  void suppose(int candidate);

  [[nodiscard]] bool is_impossible() const { return empty_fact_ >= 0; }
  [[nodiscard]] bool is_struck(int candidate) const { return struck_by_[static_cast<std::size_t>(candidate)] >= 0; }
  // One bit for each candidate number.
  [[nodiscard]] std::vector<std::uint64_t> struck() const;
  // The lines that show the impossibility, or that strike out a candidate; no more than needed.
  [[nodiscard]] std::vector<Line> lines_to_end() const;
  [[nodiscard]] std::vector<Line> lines_striking(int candidate) const;

 private:
  // A line: facts as bases and covers; a single base alone places its candidate.
  struct Entry {
    std::array<std::int16_t, 2> bases;
    std::array<std::int16_t, 2> covers;  // -1: none
    std::int16_t placed;                 // -1: none
  };
  using Marks = std::vector<bool>;
  // The candidates that a fact has left.
  struct Left {
    std::array<std::int16_t, kMaxSide> items;
    std::size_t count = 0;
    [[nodiscard]] const std::int16_t* begin() const { return items.data(); }
    [[nodiscard]] const std::int16_t* end() const { return items.data() + count; }
    [[nodiscard]] int operator[](std::size_t i) const { return items[i]; }
  };

  void strike(int candidate, int entry);
  void place(int candidate, int entry);
  void follow_singles();
  bool follow_small_sets();
  void follow_locked(int fact);
  void follow_naked_pairs();
  void follow_hidden_pairs();
  void pair_up(std::array<std::int16_t, 2> bases, std::array<std::int16_t, 2> covers);
  [[nodiscard]] Left left_in(int fact) const;
  [[nodiscard]] bool is_in(int candidate, int fact) const;
  void mark_needs(int fact, const Entry* line, int before, Marks& needed) const;
  [[nodiscard]] std::vector<Line> told(Marks needed) const;

  const FactTable& table_;
  Following following_;
  std::vector<std::int8_t> full_counts_;
  std::vector<std::int8_t> counts_;
  std::vector<std::int16_t> struck_by_;  // the entry that did it, -1: it is left
  std::vector<Entry> entries_;           // 0: the supposition
  std::vector<std::int16_t> queue_;      // facts with one candidate left
  int empty_fact_ = -1;
};

}  // namespace cp::deduce
