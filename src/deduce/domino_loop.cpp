// SPDX-License-Identifier: Apache-2.0
// Domino loop: two rows and two columns whose four crossings lie in four boxes, two bands by two stacks. In each of the boxes
// the row and the column, without their crossing, give two dominoes: eight dominoes in a ring, neighbours linked by their
// row, their box, their column, their box and so on. Each digit needs some of the eight links, so that every domino that can
// hold it has one of its links; it fits into the ring as often as the fewest such links, at most. When these numbers for
// all digits together are as many as the open cells (sixteen on a 9x9 grid with all open), each digit fits exactly so often: it
// falls in the rest of every link that may serve it. Reason: one sum, the cells against the links.
// Each domino has an open cell and more digits than open cells (or it is a naked subset by itself). On shapes up to 9x9.
// Cost: all choices of two rows and two columns, 729 on 9x9. Equal conclusions once. Very rare.
#include <algorithm>
#include <array>
#include <bit>
#include <numeric>
#include <utility>
#include <vector>

#include "deduce/detail/almost_locked_sets.h"
#include "deduce/detail/arguments.h"
#include "deduce/detail/guard.h"
#include "deduce/technique.h"

namespace cp::techniques {

namespace {

constexpr std::string_view kId = "domino-loop";
constexpr int kLargestSide = 9;
constexpr std::size_t kDominoes = 8;
constexpr unsigned kAllLinks = (1U << kDominoes) - 1U;

// Link i joins dominoes i and i+1. Per set of dominoes: the choices of fewest links that touch them all.
using LinkChoices = std::array<std::vector<unsigned>, kAllLinks + 1>;

// Per domino, how many of the links touch it: bit i of `once` and of `twice`.
unsigned touched(unsigned links) { return (links | (links << 1) | (links >> (kDominoes - 1))) & kAllLinks; }
unsigned touched_twice(unsigned links) { return links & ((links << 1) | (links >> (kDominoes - 1))) & kAllLinks; }

const LinkChoices& link_choices() {
  static const LinkChoices kChoices = [] {
    LinkChoices choices;
    for (unsigned dominoes = 0; dominoes <= kAllLinks; ++dominoes) {
      for (unsigned links = 0; links <= kAllLinks; ++links) {
        std::vector<unsigned>& best = choices[dominoes];
        if ((dominoes & ~touched(links)) != 0 || (!best.empty() && std::popcount(links) > std::popcount(best[0]))) continue;
        if (!best.empty() && std::popcount(links) < std::popcount(best[0])) best.clear();
        best.push_back(links);
      }
    }
    return choices;
  }();
  return kChoices;
}

struct Ring {
  std::array<CellSet, kDominoes> dominoes;
  std::array<House, kDominoes> links;  // link i has dominoes i and i+1
  CellSet cells;
};

class RingSearch {
 public:
  RingSearch(const Position& position, StepSink& sink) : position_(position), shape_(position.shape()), sink_(sink) {}

  bool look_at(int row, int other_row, int column, int other_column) {
    const Ring ring = ring_of({row, other_row}, {column, other_column});
    if (!deduce::is_weakened(kId, deduce::Guard::kTrueSize) && !is_true(ring)) return true;
    int room = ring.cells.size();
    for (const Digit digit : shape_.digits()) room -= std::popcount(link_choices()[dominoes_with(ring, digit)][0]);
    const bool is_full = room == 0 || (room < 0 && deduce::is_weakened(kId, deduce::Guard::kSound));
    return !is_full || report(ring);
  }

 private:
  // Around the ring: in each of four boxes the row part and the column part, joined by the box.
  [[nodiscard]] Ring ring_of(std::array<int, 2> rows, std::array<int, 2> columns) const {
    Ring ring;
    constexpr std::array<std::pair<std::size_t, std::size_t>, 4> kCorners = {{{0, 0}, {0, 1}, {1, 1}, {1, 0}}};
    for (std::size_t corner = 0; corner < 4; ++corner) {
      const House row = shape_.row(rows[kCorners[corner].first]);
      const House column = shape_.column(columns[kCorners[corner].second]);
      const Cell crossing = shape_.cell_at(rows[kCorners[corner].first], columns[kCorners[corner].second]);
      const House box = shape_.box(shape_.box_of(crossing));
      const bool row_last = corner % 2 == 0;  // the row leads on from the first and third corner
      const std::array<House, 2> lines = row_last ? std::array{column, row} : std::array{row, column};
      for (std::size_t i = 0; i < 2; ++i) {
        CellSet domino = shape_.cells(lines[i]) & shape_.cells(box) & position_.open();
        domino.remove(crossing);
        ring.dominoes[2 * corner + i] = domino;
        ring.cells |= domino;
      }
      ring.links[2 * corner] = box;
      ring.links[2 * corner + 1] = lines[1];
    }
    return ring;
  }

  [[nodiscard]] bool is_true(const Ring& ring) const {
    for (const CellSet& domino : ring.dominoes) {
      DigitSet digits;
      for (const Cell cell : domino) digits |= position_.candidates(cell);
      if (domino.is_empty() || digits.size() <= domino.size()) return false;
    }
    return true;
  }

  [[nodiscard]] unsigned dominoes_with(const Ring& ring, Digit digit) const {
    unsigned with = 0;
    for (std::size_t i = 0; i < kDominoes; ++i) {
      if (position_.places(digit).meets(ring.dominoes[i])) with |= 1U << i;
    }
    return with;
  }

  // What the digit loses to these links: their houses outside the ring, and dominoes that two of them touch.
  [[nodiscard]] CellSet struck_by(const Ring& ring, Digit digit, unsigned links) const {
    CellSet struck;
    for (std::size_t i = 0; i < kDominoes; ++i) {
      if (((links >> i) & 1U) != 0) struck |= position_.places(ring.links[i], digit) - ring.cells;
      if (((touched_twice(links) >> i) & 1U) != 0) struck |= position_.places(digit) & ring.dominoes[i];
    }
    return struck;
  }

  bool report(const Ring& ring) {
    std::vector<Candidate> struck;
    std::vector<std::pair<Digit, std::vector<unsigned>>> served;
    int scale = 1;  // where several choices of links each strike something out, they take equal shares
    for (const Digit digit : shape_.digits()) {
      CellSet all;
      std::vector<unsigned> chosen;
      for (const unsigned links : link_choices()[dominoes_with(ring, digit)]) {
        const CellSet more = struck_by(ring, digit, links);
        if (more.is_subset_of(all)) continue;
        all |= more;
        chosen.push_back(links);
      }
      if (chosen.empty()) chosen.push_back(link_choices()[dominoes_with(ring, digit)][0]);
      for (const Cell cell : all) struck.push_back({cell, digit});
      scale = std::lcm(scale, static_cast<int>(chosen.size()));
      served.emplace_back(digit, std::move(chosen));
    }
    deduce::tidy(struck);
    if (struck.empty() || !reported_.is_new(struck)) return true;
    deduce::SumOfSets sum;
    for (const Cell cell : ring.cells) sum.add_base(Constraint::of(cell), scale);
    for (const auto& [digit, choices] : served) {
      for (const unsigned links : choices) {
        for (std::size_t i = 0; i < kDominoes; ++i) {
          if (((links >> i) & 1U) != 0) sum.add_cover(ring.links[i], digit, scale / static_cast<int>(choices.size()));
        }
      }
    }
    return sink_.take({kId, {}, std::move(struck), LinearReason{sum.terms()}});
  }

  const Position& position_;
  const Shape& shape_;
  StepSink& sink_;
  deduce::Reported reported_;
};

}  // namespace

void domino_loop(const Position& position, StepSink& sink) {
  const Shape& shape = position.shape();
  if (shape.side() > kLargestSide) return;
  RingSearch search(position, sink);
  for (int row = 0; row < shape.side(); ++row) {
    for (int other_row = row + 1; other_row < shape.side(); ++other_row) {
      if (row / shape.box_rows() == other_row / shape.box_rows()) continue;
      for (int column = 0; column < shape.side(); ++column) {
        for (int other_column = column + 1; other_column < shape.side(); ++other_column) {
          if (column / shape.box_columns() == other_column / shape.box_columns()) continue;
          if (!search.look_at(row, other_row, column, other_column)) return;
        }
      }
    }
  }
}

}  // namespace cp::techniques
