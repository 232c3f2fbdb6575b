// SPDX-License-Identifier: Apache-2.0
#include "exact/backbone.h"

#include "exact/detail/search.h"

namespace cp {

namespace {

// Solutions looked at before asking candidate by candidate. Enough to settle nearly finished puzzles in one search.
constexpr std::size_t kFirstSolutions = 24;

class BackboneSearch {
 public:
  BackboneSearch(const Position& position, std::uint64_t node_limit) : base_(position), node_limit_(node_limit) {
    for (const Cell cell : base_.shape().all_cells()) backbone_.unknown[cell.index] = base_.candidates(cell);
  }

  Backbone run() {
    if (ask(base_, kFirstSolutions) == SearchEnd::kComplete) {
      settle_the_rest();
      return backbone_;
    }
    for (const Cell cell : base_.shape().all_cells()) {
      for (const Digit digit : backbone_.unknown[cell.index]) {
        if (backbone_.unknown[cell.index].has(digit) && backbone_.is_complete) ask_for({cell, digit});
      }
    }
    return backbone_;
  }

 private:
  // Runs one search and marks the candidates of what it found.
  SearchEnd ask(const Position& position, std::size_t limit) {
    std::vector<FullGrid> grids;
    const auto found = detail::search(position, {limit, node_limit_ - backbone_.nodes}, &grids);
    backbone_.nodes += found.nodes;
    for (const FullGrid& grid : grids) {
      backbone_.has_solution = true;
      for (const Cell cell : base_.shape().all_cells()) {
        backbone_.possible[cell.index].add(grid.at(cell));
        backbone_.unknown[cell.index].remove(grid.at(cell));
      }
    }
    return found.end;
  }

  void ask_for(Candidate candidate) {
    Position trial = base_;
    keep_only(trial, candidate);
    const SearchEnd end = ask(trial, 1);
    if (!backbone_.unknown[candidate.cell.index].has(candidate.digit)) return;
    if (end == SearchEnd::kNodeLimit) {
      backbone_.is_complete = false;
      return;
    }
    backbone_.unknown[candidate.cell.index].remove(candidate.digit);
    backbone_.never[candidate.cell.index].add(candidate.digit);
    base_.eliminate(candidate);
  }

  // All solutions are known: what none of them has is never true.
  void settle_the_rest() {
    for (const Cell cell : base_.shape().all_cells()) {
      backbone_.never[cell.index] = backbone_.unknown[cell.index];
      backbone_.unknown[cell.index] = DigitSet();
    }
  }

  Position base_;
  std::uint64_t node_limit_;
  Backbone backbone_;
};

}  // namespace

Backbone find_backbone(const Position& position, std::uint64_t node_limit) { return BackboneSearch(position, node_limit).run(); }

}  // namespace cp
