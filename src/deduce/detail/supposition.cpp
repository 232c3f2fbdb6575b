// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/supposition.h"

#include <algorithm>

#include "deduce/detail/tables.h"

namespace cp::deduce {

FactTable::FactTable(const Position& position)
    : position_(&position), side_(position.shape().side()), facts_of_(static_cast<std::size_t>(position.shape().cell_count() * side_), {-1, -1, -1, -1}) {
  const Shape& shape = position.shape();
  for (const Cell cell : position.open()) {
    for (const Digit digit : position.candidates(cell)) all_.push_back(static_cast<std::int16_t>(number({cell, digit})));
  }
  const auto join = [&](int fact, std::size_t place, Candidate candidate) {
    facts_of_[static_cast<std::size_t>(number(candidate))][place] = static_cast<std::int16_t>(fact);
    facts_[static_cast<std::size_t>(fact)].candidates.push_back(static_cast<std::int16_t>(number(candidate)));
  };
  for (const Cell cell : position.open()) {
    const int fact = add(Constraint::of(cell));
    for (const Digit digit : position.candidates(cell)) join(fact, 0, {cell, digit});
  }
  for (const House house : houses_in_order(shape)) {
    const auto place = 1 + static_cast<std::size_t>(shape.kind(house));
    for (const Digit digit : shape.digits()) {
      if (position.is_placed_in(house, digit)) continue;
      const int fact = add(Constraint::of(house, digit));
      for (const Cell cell : position.places(house, digit)) join(fact, place, {cell, digit});
    }
  }
}

int FactTable::add(Constraint constraint) {
  facts_.push_back({constraint, {}});
  return static_cast<int>(facts_.size()) - 1;
}

Supposition::Supposition(const FactTable& table, Following following) : table_(table), following_(following) {
  for (const FactTable::Fact& fact : table.facts()) full_counts_.push_back(static_cast<std::int8_t>(fact.candidates.size()));
}

void Supposition::suppose(int candidate) {
  counts_ = full_counts_;
  struck_by_.assign(static_cast<std::size_t>(table_.candidate_numbers()), -1);
  entries_.assign(1, {{-1, -1}, {-1, -1}, static_cast<std::int16_t>(candidate)});
  queue_.clear();
  empty_fact_ = -1;
  if (candidate != kNothing) place(candidate, 0);
  for (std::size_t fact = 0; fact < counts_.size(); ++fact) {
    if (full_counts_[fact] == 0 && empty_fact_ < 0) empty_fact_ = static_cast<int>(fact);
    if (full_counts_[fact] == 1) queue_.push_back(static_cast<std::int16_t>(fact));
  }
  follow_singles();
  while (following_ == Following::kSinglesAndSmallSets && !is_impossible() && follow_small_sets()) follow_singles();
}

void Supposition::strike(int candidate, int entry) {
  std::int16_t& by = struck_by_[static_cast<std::size_t>(candidate)];
  if (by >= 0) return;
  by = static_cast<std::int16_t>(entry);
  for (const std::int16_t fact : table_.facts_of(candidate)) {
    if (fact < 0) continue;
    const int left = --counts_[static_cast<std::size_t>(fact)];
    if (left == 1) queue_.push_back(fact);
    if (left == 0 && empty_fact_ < 0) empty_fact_ = fact;
  }
}

void Supposition::place(int candidate, int entry) {
  for (const std::int16_t fact : table_.facts_of(candidate)) {
    if (fact < 0 || counts_[static_cast<std::size_t>(fact)] <= 1) continue;
    for (const std::int16_t other : table_.facts()[static_cast<std::size_t>(fact)].candidates) {
      if (other != candidate) strike(other, entry);
    }
  }
}

void Supposition::follow_singles() {
  for (std::size_t i = 0; i < queue_.size() && !is_impossible(); ++i) {
    const std::int16_t fact = queue_[i];
    const Left left = left_in(fact);
    if (left.count != 1) continue;
    const auto& facts = table_.facts_of(left[0]);
    if (std::all_of(facts.begin(), facts.end(), [&](int each) { return each < 0 || counts_[static_cast<std::size_t>(each)] <= 1; })) continue;
    entries_.push_back({{fact, -1}, {-1, -1}, left.items[0]});
    place(left[0], static_cast<int>(entries_.size()) - 1);
  }
  queue_.clear();
}

Supposition::Left Supposition::left_in(int fact) const {
  Left left;
  for (const std::int16_t candidate : table_.facts()[static_cast<std::size_t>(fact)].candidates) {
    if (!is_struck(candidate)) left.items[left.count++] = candidate;
  }
  return left;
}

bool Supposition::is_in(int candidate, int fact) const {
  const auto& facts = table_.facts_of(candidate);
  return std::find(facts.begin(), facts.end(), fact) != facts.end();
}

// True when something fell.
bool Supposition::follow_small_sets() {
  const std::size_t before = entries_.size();
  for (std::size_t fact = 0; fact < counts_.size() && !is_impossible(); ++fact) {
    if (table_.facts()[fact].constraint.kind == Constraint::Kind::kHouse && counts_[fact] > 1) follow_locked(static_cast<int>(fact));
  }
  if (!is_impossible()) follow_naked_pairs();
  if (!is_impossible()) follow_hidden_pairs();
  return entries_.size() > before;
}

// All places of a digit in a house lie in another house too: it leaves the rest of that one.
void Supposition::follow_locked(int fact) {
  const Left left = left_in(fact);
  for (std::size_t place = 1; place < 4 && left.count > 0; ++place) {
    const std::int16_t cover = table_.facts_of(left[0])[place];
    if (cover < 0 || cover == fact || counts_[static_cast<std::size_t>(cover)] == static_cast<int>(left.count)) continue;
    if (!std::all_of(left.begin(), left.end(), [&](int each) { return table_.facts_of(each)[place] == cover; })) continue;
    entries_.push_back({{static_cast<std::int16_t>(fact), -1}, {cover, -1}, -1});
    for (const std::int16_t other : left_in(cover)) {
      if (!is_in(other, fact)) strike(other, static_cast<int>(entries_.size()) - 1);
    }
  }
}

// Two bases with the same two covers: nothing else is left in the covers.
void Supposition::pair_up(std::array<std::int16_t, 2> bases, std::array<std::int16_t, 2> covers) {
  const int entry = static_cast<int>(entries_.size());
  bool is_new = false;
  for (const std::int16_t cover : covers) {
    for (const std::int16_t other : left_in(cover)) {
      if (is_in(other, bases[0]) || is_in(other, bases[1])) continue;
      if (!is_new) entries_.push_back({bases, covers, -1});
      is_new = true;
      strike(other, entry);
    }
  }
}

// Two cells of a house with the same two candidates.
void Supposition::follow_naked_pairs() {
  struct TwoLeft {
    std::int16_t fact;
    std::array<std::int16_t, 2> left;
  };
  std::vector<TwoLeft> cells;
  for (std::size_t fact = 0; fact < counts_.size() && table_.facts()[fact].constraint.kind == Constraint::Kind::kCell; ++fact) {
    if (counts_[fact] != 2) continue;
    const Left left = left_in(static_cast<int>(fact));
    cells.push_back({static_cast<std::int16_t>(fact), {left.items[0], left.items[1]}});
  }
  for (std::size_t i = 0; i < cells.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      for (std::size_t place = 1; place < 4; ++place) {
        const std::int16_t low = table_.facts_of(cells[i].left[0])[place];
        const std::int16_t high = table_.facts_of(cells[i].left[1])[place];
        if (low < 0 || high < 0 || low != table_.facts_of(cells[k].left[0])[place] || high != table_.facts_of(cells[k].left[1])[place]) continue;
        if (is_struck(cells[i].left[0]) || is_struck(cells[i].left[1]) || is_struck(cells[k].left[0]) || is_struck(cells[k].left[1])) continue;
        pair_up({cells[k].fact, cells[i].fact}, {low, high});
      }
    }
  }
}

// Two digits of a house with the same two places.
void Supposition::follow_hidden_pairs() {
  const auto& facts = table_.facts();
  for (std::size_t one = 0; one < facts.size(); ++one) {
    if (facts[one].constraint.kind != Constraint::Kind::kHouse || counts_[one] != 2) continue;
    for (std::size_t other = one + 1; other < facts.size() && facts[other].constraint.place == facts[one].constraint.place; ++other) {
      if (counts_[other] != 2 || counts_[one] != 2) continue;
      const Left left = left_in(static_cast<int>(one));
      const Left right = left_in(static_cast<int>(other));
      const std::int16_t low = table_.facts_of(left[0])[0];
      const std::int16_t high = table_.facts_of(left[1])[0];
      if (low != table_.facts_of(right[0])[0] || high != table_.facts_of(right[1])[0]) continue;
      pair_up({static_cast<std::int16_t>(one), static_cast<std::int16_t>(other)}, {low, high});
    }
  }
}

std::vector<std::uint64_t> Supposition::struck() const {
  std::vector<std::uint64_t> bits((struck_by_.size() + 63) / 64, 0);
  for (const std::int16_t candidate : table_.all_candidates()) {
    if (is_struck(candidate)) bits[static_cast<std::size_t>(candidate) >> 6] |= std::uint64_t{1} << (candidate & 63);
  }
  return bits;
}

// What must have fallen before for a base to say what it says: its candidates outside the covers that an earlier line took.
void Supposition::mark_needs(int fact, const Entry* line, int before, Marks& needed) const {
  for (const std::int16_t candidate : table_.facts()[static_cast<std::size_t>(fact)].candidates) {
    const int by = struck_by_[static_cast<std::size_t>(candidate)];
    if (by < 0 || by >= before) continue;
    const bool is_covered = line != nullptr && line->placed < 0 && std::any_of(line->covers.begin(), line->covers.end(), [&](int cover) { return cover >= 0 && is_in(candidate, cover); });
    if (!is_covered) needed[static_cast<std::size_t>(by)] = true;
  }
}

std::vector<Line> Supposition::told(Marks needed) const {
  for (std::size_t i = entries_.size(); i-- > 1;) {
    if (!needed[i]) continue;
    for (const std::int16_t base : entries_[i].bases) {
      if (base >= 0) mark_needs(base, &entries_[i], static_cast<int>(i), needed);
    }
  }
  std::vector<Line> lines;
  for (std::size_t i = 1; i < entries_.size(); ++i) {
    if (!needed[i]) continue;
    Facts bases;
    Facts covers;
    for (const std::int16_t base : entries_[i].bases) if (base >= 0) bases.push_back(table_.facts()[static_cast<std::size_t>(base)].constraint);
    for (const std::int16_t cover : entries_[i].covers) if (cover >= 0) covers.push_back(table_.facts()[static_cast<std::size_t>(cover)].constraint);
    lines.push_back(sum_of(bases, covers));
  }
  return lines;
}

std::vector<Line> Supposition::lines_to_end() const {
  if (!is_impossible()) return {};
  Marks needed(entries_.size(), false);
  mark_needs(empty_fact_, nullptr, static_cast<int>(entries_.size()), needed);
  std::vector<Line> lines = told(std::move(needed));
  lines.push_back(lone(table_.facts()[static_cast<std::size_t>(empty_fact_)].constraint));
  return lines;
}

std::vector<Line> Supposition::lines_striking(int candidate) const {
  Marks needed(entries_.size(), false);
  if (is_struck(candidate)) needed[static_cast<std::size_t>(struck_by_[static_cast<std::size_t>(candidate)])] = true;
  return told(std::move(needed));
}

}  // namespace cp::deduce
