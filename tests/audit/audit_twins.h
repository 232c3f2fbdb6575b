// SPDX-License-Identifier: Apache-2.0
// Compares each technique with its slow twin (tests/oracle/definitions): the same instances, counted by what they
// conclude. The list of twins is the catalogue itself: a technique without a twin does not link.
#pragma once

#include <array>
#include <string>

#include "audit/audit_states.h"
#include "base/text.h"
#include "grid/notation.h"
#include "oracle/definitions/plain_definition.h"

namespace cp::oracle {
#define CP_TECHNIQUE(id, name, family, cost, assumptions, function) Conclusions function##_twin(const Position& position);
#include "deduce/catalogue.def"
#undef CP_TECHNIQUE
}  // namespace cp::oracle

namespace cp::audit {

using Twin = oracle::Conclusions (*)(const Position&);

// In the order of the catalogue.
inline constexpr std::array kTwins = {
#define CP_TECHNIQUE(id, name, family, cost, assumptions, function) Twin{&oracle::function##_twin},
#include "deduce/catalogue.def"
#undef CP_TECHNIQUE
};

inline oracle::Conclusions conclusions_of(const std::vector<Step>& steps) {
  oracle::Conclusions found;
  for (const Step& step : steps) {
    found.insert({{step.placements.begin(), step.placements.end()}, {step.eliminations.begin(), step.eliminations.end()}});
  }
  return found;
}

// Runs fast and slow versions side by side and counts.
class TwinComparison {
 public:
  TwinComparison() : instances_(catalogue().size()), states_with_any_(catalogue().size()) {}

  // False when a technique and its twin disagree on this position; `faults` says which. Techniques beyond the basics have their turn
  // at every `every`-th state, and no more once `enough` instances of theirs were compared.
  bool look_at(const Position& position, int every, long long enough) {
    return look_at(position, [&](const Technique& technique) {
      if (is_basic(technique)) return true;
      return is_its_turn(technique, position, states_, every) && instances_[static_cast<std::size_t>(&technique - catalogue().data())] < enough;
    });
  }
  // The same for the techniques that the predicate wants. Sparsely: where the fast version finds nothing, the slow one is
  // asked at every twelfth state only.
  template <typename Wanted>
  bool look_at(const Position& position, Wanted wants, bool sparsely = false) {
    ++states_;
    const std::size_t before = faults_.size();
    for (std::size_t i = 0; i < catalogue().size(); ++i) {
      if (!wants(catalogue()[i])) continue;
      const oracle::Conclusions fast = conclusions_of(steps_of(catalogue()[i], position));
      if (sparsely && fast.empty() && states_ % 12 != 0) continue;
      const oracle::Conclusions slow = kTwins[i](position);
      instances_[i] += static_cast<long long>(slow.size());
      states_with_any_[i] += slow.empty() ? 0 : 1;
      if (fast == slow) continue;
      faults_.push_back(std::string(catalogue()[i].id) + " finds " + to_text(static_cast<long long>(fast.size())) + " instances, its definition " +
                        to_text(static_cast<long long>(slow.size())) + " (or they conclude otherwise)\n" + to_candidate_text(position));
    }
    return faults_.size() == before;
  }

  [[nodiscard]] long long states() const { return states_; }
  [[nodiscard]] long long instances(std::size_t technique) const { return instances_[technique]; }
  [[nodiscard]] long long states_with_any(std::size_t technique) const { return states_with_any_[technique]; }
  [[nodiscard]] const std::vector<std::string>& faults() const { return faults_; }

 private:
  long long states_ = 0;
  std::vector<long long> instances_;
  std::vector<long long> states_with_any_;
  std::vector<std::string> faults_;
};

// A position with every candidate kept by chance, so that anything can be anywhere; mostly without a solution, which
// does not matter to a definition.
inline Position noise(const Shape& shape, Rng& rng) {
  const std::uint32_t kept = 20 + rng.below(60);
  Position position(shape);
  for (const Cell cell : shape.all_cells()) {
    for (const Digit digit : shape.digits()) {
      if (rng.below(100) >= kept) position.eliminate({cell, digit});
    }
  }
  for (std::uint32_t placements = rng.below(static_cast<std::uint32_t>(shape.side())); placements > 0; --placements) {
    const Cell cell(static_cast<int>(rng.below(static_cast<std::uint32_t>(shape.cell_count()))));
    if (!position.is_placed(cell) && !position.candidates(cell).is_empty()) position.place(cell, position.candidates(cell).lowest());
  }
  return position;
}

}  // namespace cp::audit
