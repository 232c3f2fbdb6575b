// SPDX-License-Identifier: Apache-2.0
// Drafts cases for a technique (docs/formats/case.md): positions found at random in which it fires, with everything
// put back that it does not need, so that what is left shows the pattern and nothing else.
#pragma once

#include <cstdio>
#include <string>
#include <vector>

#include "audit/audit_states.h"
#include "base/text.h"

namespace cp::audit {

// A grid with nothing placed, as the candidates that are struck out.
class Sketch {
 public:
  // The candidates of a position, its placed digits taken off again.
  explicit Sketch(const Position& position) : position_(position.shape()) {
    for (const Cell cell : position.shape().all_cells()) {
      for (const Digit digit : position.shape().digits() - position.candidates(cell)) position_.eliminate({cell, digit});
    }
  }
  [[nodiscard]] const Position& position() const { return position_; }
  [[nodiscard]] std::vector<Candidate> struck() const {
    std::vector<Candidate> all;
    for (const Cell cell : position_.open()) {
      for (const Digit digit : position_.shape().digits() - position_.candidates(cell)) all.push_back({cell, digit});
    }
    return all;
  }
  // With these candidates put back.
  [[nodiscard]] Sketch with(const std::vector<Candidate>& back) const {
    Sketch sketch = *this;
    sketch.position_ = Position(position_.shape());
    for (const Candidate& each : struck()) {
      if (std::find(back.begin(), back.end(), each) == back.end()) sketch.position_.eliminate(each);
    }
    return sketch;
  }

 private:
  Position position_;
};

inline bool fires_little(const Technique& technique, const Position& position) {
  const std::size_t count = some_steps_of(technique, position, 4).size();
  return count >= 1 && count <= 2;
}

// Puts back what the technique does not need: whole cells, whole houses of a digit, then single candidates.
inline Sketch without_trimmings(const Technique& technique, Sketch sketch, Rng& rng) {
  const Shape& shape = sketch.position().shape();
  const auto try_back = [&](const std::vector<Candidate>& back) {
    if (back.empty()) return;
    const Sketch other = sketch.with(back);
    if (fires_little(technique, other.position())) sketch = other;
  };
  const auto struck_where = [&](auto wanted) {
    std::vector<Candidate> some;
    for (const Candidate& each : sketch.struck()) {
      if (wanted(each)) some.push_back(each);
    }
    return some;
  };
  for (const Cell cell : shuffled(shape.all_cells(), rng)) try_back(struck_where([&](const Candidate& each) { return each.cell == cell; }));
  for (const Digit digit : shape.digits()) {
    try_back(struck_where([&](const Candidate& each) { return each.digit == digit; }));
    for (int i = 0; i < shape.house_count(); ++i) {
      try_back(struck_where([&](const Candidate& each) { return each.digit == digit && shape.cells(House(i)).has(each.cell); }));
    }
  }
  for (const Cell cell : shuffled(shape.all_cells(), rng)) {
    for (const Candidate& each : struck_where([&](const Candidate& one) { return one.cell == cell; })) try_back({each});
  }
  return sketch;
}

inline std::string digits_as_word(DigitSet digits) {
  std::string word;
  for (const Digit digit : digits) word += Shape::name_of(digit);
  return word;
}

// The lines `only`, `keep` and `strike` that make the sketch from an empty grid.
inline std::string sketch_as_lines(const Sketch& sketch) {
  const Shape& shape = sketch.position().shape();
  const Position& position = sketch.position();
  Position so_far(shape);
  std::string text;
  for (const Digit digit : shape.digits()) {
    for (int i = 0; i < shape.house_count(); ++i) {
      const CellSet places = position.places(House(i), digit);
      if (places.size() > 4 || (so_far.places(House(i), digit) - places).size() < 3) continue;
      text += "only   " + digits_as_word(DigitSet::of(digit)) + " in " + shape.name_of(House(i)) + ":";
      for (const Cell cell : places) text += " " + shape.name_of(cell);
      text += "\n";
      for (const Cell cell : shape.cells(House(i)) - places) so_far.eliminate({cell, digit});
    }
  }
  for (const Cell cell : shape.all_cells()) {
    const DigitSet missing = so_far.candidates(cell) - position.candidates(cell);
    if (missing.is_empty()) continue;
    const bool keeps = missing.size() > 2;
    text += (keeps ? "keep   " : "strike ") + shape.name_of(cell) + " " + digits_as_word(keeps ? position.candidates(cell) : missing) + "\n";
  }
  return text;
}

inline std::string expected_as_line(const Shape& shape, const Step& step) {
  std::vector<std::string> parts;
  for (const Candidate& each : step.placements) parts.push_back(shape.name_of(each.cell) + " = " + digits_as_word(DigitSet::of(each.digit)));
  for (std::size_t i = 0; i < step.eliminations.size();) {
    const Cell cell = step.eliminations[i].cell;
    DigitSet digits;
    for (; i < step.eliminations.size() && step.eliminations[i].cell == cell; ++i) digits.add(step.eliminations[i].digit);
    parts.push_back(shape.name_of(cell) + " != " + digits_as_word(digits));
  }
  return "expect " + joined(parts, ", ") + "\n";
}

// One case that fires and one near miss of it.
inline void print_drafts(const Technique& technique, const Sketch& sketch, int number, Rng& rng) {
  const Shape& shape = sketch.position().shape();
  const std::string name = std::string(technique.id) + "-on-" + std::string(shape.name()) + "-" + to_text(number);
  const std::string grid = "show   TO BE WRITTEN\ngrid   empty " + std::string(shape.name()) + "\n";
  std::string text = "case " + name + "\n" + grid + sketch_as_lines(sketch);
  for (const Step& step : steps_of(technique, sketch.position())) text += expected_as_line(shape, step);
  std::vector<Candidate> struck = sketch.struck();
  rng.shuffle(struck);
  for (const Candidate& back : struck) {
    const Sketch near_miss = sketch.with({back});
    if (!some_steps_of(technique, near_miss.position(), 1).empty()) continue;
    text += "\ncase " + name + "-not-with-" + shape.name_of(back.cell) + "-" + Shape::name_of(back.digit) + "\n" + grid + sketch_as_lines(near_miss) + "expect nothing\n";
    break;
  }
  std::printf("%s\n", text.c_str());
}

// Prints drafts from random states of a shape, the shortest sketches of those found.
inline void print_case_drafts(const Technique& technique, std::string_view shape, std::uint64_t seed, int wanted) {
  Rng rng(seed);
  std::vector<std::pair<std::size_t, Sketch>> found;
  visit_states({shape, 60, 4}, seed, [&](const AuditState& state) {
    if (!some_steps_of(technique, state.position, 1).empty() && fires_little(technique, Sketch(state.position).position())) {
      const Sketch sketch = without_trimmings(technique, Sketch(state.position), rng);
      found.emplace_back(sketch_as_lines(sketch).size(), sketch);
    }
    return static_cast<int>(found.size()) < 4 * wanted;
  });
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  for (int i = 0; i < wanted && i < static_cast<int>(found.size()); ++i) print_drafts(technique, found[static_cast<std::size_t>(i)].second, i + 1, rng);
  if (found.empty()) std::printf("# %s: no state of %s found in which it fires once or twice\n", std::string(technique.id).c_str(), std::string(shape).c_str());
}

}  // namespace cp::audit
