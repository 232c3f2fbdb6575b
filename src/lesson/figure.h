// SPDX-License-Identifier: Apache-2.0
// What a picture shows, as plain data. Nothing here knows how it is drawn.
#pragma once

#include <string>
#include <vector>

#include "grid/position.h"
#include "step/step.h"

namespace cp {

// A board. `left` and `right` may share cells: before anything cancels a cell can lie in both pans.
struct Figure {
  explicit Figure(Position shown) : position(std::move(shown)) {}

  Position position;
  std::string language = "en";      // of the words that belong to the picture
  std::string title;                // a few words
  std::string description;          // the whole content in words; filled by describe()
  CellSet candidates;               // open cells whose candidates are written in
  DigitSet lens;                    // only candidates of these digits are written in; empty: of all digits
  std::vector<House> left_houses;   // houses of the left pan, marked at the edge
  std::vector<House> right_houses;
  CellSet left;                     // cells drawn as left pan or left remainder
  CellSet right;
  CellSet cancelled;                // cells that have cancelled
  CellSet counted_again;            // cells of a remainder that count more than once
  CellSet focus;                    // outlined cells
  CellSet fresh;                    // placed cells to be shown as new
  std::vector<Candidate> told;      // candidates framed: the argument speaks of them
  std::vector<Candidate> struck;    // candidates crossed out
  std::vector<Candidate> placed;    // candidates ringed: this digit goes in here
};

// One pan: digits that are there, open cells, and what is known about them.
struct PanLoad {
  DigitCounts known{};   // digits standing in the remainder
  DigitCounts owed{};    // digits that its open cells must hold (tally and known shares)
  int open = 0;          // open cells
};

// Two pans on a beam.
struct PanPicture {
  std::string language = "en";
  std::string title;
  std::string description;
  int side = 9;           // number of digits
  int surplus = 0;        // extra full sets of digits that the right pan needs to weigh the same
  PanLoad left;
  PanLoad right;
  bool is_tallied = false;     // false: everything as it lies there; true: equal digits taken off, open cells labelled
};

// The tally as a table: one column a digit.
struct TallyTable {
  std::string language = "en";
  int side = 9;
  int surplus = 0;
  DigitCounts known_left{};
  DigitCounts known_right{};
  DigitCounts tally{};
};

// Writes the title (if empty) and the description of a figure from its content.
void describe(Figure& figure);
void describe(PanPicture& picture);

// Ready-made pictures of a balance: the board with both remainders and what falls, and the pans.
Figure balance_figure(const BalanceReason& reason, const Position& position, const std::vector<Candidate>& eliminations);
// The board for a step of the catalogue: the candidates that its reason speaks of are framed, what falls is crossed out.
Figure step_figure(const Step& step, const Position& before, std::string title);
// `shares`: copies known (or supposed) to be shared; they fill open cells on both sides.
PanPicture balance_pans(const BalanceReason& reason, const Position& position, bool is_tallied, const DigitCounts& shares = {});
TallyTable tally_table(const BalanceReason& reason, const Position& position);

}  // namespace cp
