// SPDX-License-Identifier: Apache-2.0
// The same position in another world: digits renamed, rows and columns moved within what the rules allow, the grid
// turned over. And the end that a set of techniques reaches, in any order.
#pragma once

#include <numeric>
#include <string_view>
#include <vector>

#include "audit/audit_states.h"
#include "deduce/basics.h"
#include "oracle/definitions/plain_definition.h"

namespace cp::audit {

// A random symmetry of a shape.
class World {
 public:
  World(const Shape& shape, Rng& rng) : shape_(&shape) {
    digits_ = numbers(shape.side());
    rng.shuffle(digits_);
    rows_ = lines(shape.band_count(), shape.box_rows(), rng);
    columns_ = lines(shape.stack_count(), shape.box_columns(), rng);
    is_transposed_ = shape.box_rows() == shape.box_columns() && rng.below(2) == 1;
  }

  [[nodiscard]] Candidate map(Candidate from) const {
    int row = rows_[static_cast<std::size_t>(shape_->row_of(from.cell))];
    int column = columns_[static_cast<std::size_t>(shape_->column_of(from.cell))];
    if (is_transposed_) std::swap(row, column);
    return {shape_->cell_at(row, column), Digit(digits_[from.digit.index])};
  }

  [[nodiscard]] Position map(const Position& from) const {
    Position to(*shape_);
    for (const Cell cell : from.placed()) {
      const Candidate placed = map({cell, *from.digit_at(cell)});
      if (from.givens().has(cell)) to.place_given(placed.cell, placed.digit);
      else to.place(placed.cell, placed.digit);
    }
    for (const Cell cell : from.open()) {
      for (const Digit digit : shape_->digits() - from.candidates(cell)) to.eliminate(map({cell, digit}));
    }
    return to;
  }

  [[nodiscard]] oracle::Conclusions map(const oracle::Conclusions& from) const {
    oracle::Conclusions to;
    for (const oracle::Conclusion& each : from) {
      oracle::Conclusion mapped;
      for (const Candidate& placed : each.placed) mapped.placed.insert(map(placed));
      for (const Candidate& struck : each.struck) mapped.struck.insert(map(struck));
      to.insert(mapped);
    }
    return to;
  }

 private:
  static std::vector<int> numbers(int count) {
    std::vector<int> list(static_cast<std::size_t>(count));
    std::iota(list.begin(), list.end(), 0);
    return list;
  }
  // Chutes in random order, and lines inside each.
  static std::vector<int> lines(int chutes, int width, Rng& rng) {
    std::vector<int> order = numbers(chutes);
    rng.shuffle(order);
    std::vector<int> all;
    for (const int chute : order) {
      std::vector<int> inside = numbers(width);
      rng.shuffle(inside);
      for (const int line : inside) all.push_back(chute * width + line);
    }
    return all;
  }

  const Shape* shape_;
  std::vector<int> digits_;
  std::vector<int> rows_;
  std::vector<int> columns_;
  bool is_transposed_ = false;
};

inline bool takes_part(const Technique& technique, const BasicsGroups& groups) {
  if (technique.id == "naked-single") return true;
  if (!groups.hidden_singles) return false;
  if (technique.family == "single") return true;
  if (technique.family == "locked") return groups.locked;
  if (technique.family == "subset") return groups.subsets;
  return technique.family == "fish" && groups.fish;
}

// A random choice of techniques without gaps: both singles, and of each chain the smallest up to some size.
inline std::vector<const Technique*> choice_without_gaps(Rng& rng) {
  const std::vector<std::vector<std::string_view>> chains = {{"naked-pair", "naked-triple", "naked-quad"},
                                                             {"hidden-pair", "hidden-triple", "hidden-quad"},
                                                             {"x-wing", "swordfish", "jellyfish"},
                                                             {"pointing"},
                                                             {"claiming"}};
  std::vector<const Technique*> chosen = {*find_technique("naked-single"), *find_technique("hidden-single")};
  for (const auto& chain : chains) {
    const std::uint32_t length = rng.below(static_cast<std::uint32_t>(chain.size()) + 1);
    for (std::uint32_t i = 0; i < length; ++i) chosen.push_back(*find_technique(chain[i]));
  }
  return chosen;
}

// The techniques of the groups of run_basics.
inline std::vector<const Technique*> techniques_of(const BasicsGroups& groups) {
  std::vector<const Technique*> chosen;
  for (const Technique& technique : catalogue()) {
    if (takes_part(technique, groups)) chosen.push_back(&technique);
  }
  return chosen;
}

// Applies the techniques until none fires, each time the first one of a random order, all its steps.
// Precondition: the position has a solution.
inline Position end_in_random_order(Position position, std::vector<const Technique*> order, Rng& rng) {
  for (bool fired = true; fired;) {
    fired = false;
    rng.shuffle(order);
    for (const Technique* technique : order) {
      const std::vector<Step> steps = steps_of(*technique, position);
      for (const Step& step : steps) apply(step, position);
      fired = !steps.empty();
      if (fired) break;
    }
  }
  return position;
}

}  // namespace cp::audit
