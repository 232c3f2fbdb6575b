// SPDX-License-Identifier: Apache-2.0
#include "deduce/detail/chain_graph.h"

#include <algorithm>
#include <array>
#include <bit>

#include "deduce/detail/guard.h"
#include "deduce/detail/struck_once.h"
#include "deduce/detail/tables.h"

namespace cp::deduce {

namespace {

std::array<std::uint64_t, CellSet::kWords> words_of(const CellSet& cells) {
  return {cells.word(0), cells.word(1), cells.word(2), cells.word(3)};
}

}  // namespace

int ChainGraph::node(Digit digit, const CellSet& cells) {
  const auto [place, is_new] = numbers_.try_emplace({digit.index, words_of(cells)}, size());
  if (is_new) {
    nodes_.push_back({digit, cells, position_.places(digit) & position_.shape().common_peers(cells)});
    links_.emplace_back();
    of_digit_[digit.index].push_back(place->second);
    if (cells.size() == 1) single_in_[cells.first().index].push_back(place->second);
  }
  return place->second;
}

int ChainGraph::find(Digit digit, const CellSet& cells) const {
  const auto place = numbers_.find({digit.index, words_of(cells)});
  return place == numbers_.end() ? -1 : place->second;
}

int ChainGraph::source(Facts bases, Facts covers) {
  sources_.push_back({std::move(bases), std::move(covers)});
  return static_cast<int>(sources_.size()) - 1;
}

void ChainGraph::link(int one, int other, int source) {
  links_[static_cast<std::size_t>(one)].push_back({other, source});
  links_[static_cast<std::size_t>(other)].push_back({one, source});
}

// Two nodes see each other within a digit, and two single places within a cell.
void ChainGraph::note_sight() {
  const auto note = [&](int one, int other) {
    row(sight_, one)[other >> 6] |= Word{1} << (other & 63);
    row(sight_, other)[one >> 6] |= Word{1} << (one & 63);
  };
  for (const std::vector<int>& same : of_digit_) {
    for (std::size_t i = 0; i < same.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        if (at(same[k]).cells.is_subset_of(at(same[i]).seen)) note(same[i], same[k]);
      }
    }
  }
  for (const std::vector<int>& same : single_in_) {
    for (std::size_t i = 0; i < same.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) note(same[i], same[k]);
    }
  }
}

void ChainGraph::settle() {
  words_ = (nodes_.size() + 63) / 64;
  linked_.assign(nodes_.size() * words_, 0);
  sight_ = onward_ = linked_;
  for (int one = 0; one < size(); ++one) {
    for (const ChainLink& link : links_[static_cast<std::size_t>(one)]) row(linked_, one)[link.to >> 6] |= Word{1} << (link.to & 63);
  }
  note_sight();
  for (int one = 0; one < size(); ++one) {
    for (std::size_t word = 0; word < words_; ++word) {
      for (Word left = row(sight_, one)[word]; left != 0; left &= left - 1) {
        const Word* linked = row(linked_, static_cast<int>(word) * 64 + std::countr_zero(left));
        for (std::size_t i = 0; i < words_; ++i) row(onward_, one)[i] |= linked[i];
      }
    }
  }
}

std::vector<int> ChainGraph::links_from(const std::vector<int>& off) const {
  std::vector<int> links(nodes_.size(), 0);
  std::vector<Word> known(words_, 0);
  std::vector<Word> next(words_, 0);
  for (const int start : off) {
    for (std::size_t i = 0; i < words_; ++i) next[i] |= row(linked_, start)[i];
  }
  std::vector<int> newest;
  for (int count = 1;; ++count) {
    newest.clear();
    for (std::size_t i = 0; i < words_; ++i) {
      for (Word left = next[i] & ~known[i]; left != 0; left &= left - 1) newest.push_back(static_cast<int>(i) * 64 + std::countr_zero(left));
      known[i] |= next[i];
      next[i] = 0;
    }
    if (newest.empty()) return links;
    for (const int node : newest) {
      links[static_cast<std::size_t>(node)] = count;
      for (std::size_t i = 0; i < words_; ++i) next[i] |= row(onward_, node)[i];
    }
  }
}

// What the place or places of `on` have in common with those of `off`: a house of the digit, or the cell.
Constraint ChainGraph::joint(const ChainNode& on, const ChainNode& off) const {
  if (on.digit != off.digit) return Constraint::of(on.cells.first());
  const CellSet both = on.cells | off.cells;
  for (const House house : houses_in_order(position_.shape())) {
    if (both.is_subset_of(position_.shape().cells(house))) return Constraint::of(house, on.digit);
  }
  return Constraint::of(on.cells.first());  // not reached: places that see each other share a house
}

// The line that turns on the node the link leads to, `off` being off, so that `next_off` falls. -1: nothing is left, the end.
Line ChainGraph::line_over(const ChainLink& link, int off, int next_off) const {
  const LinkSource& source = sources_[static_cast<std::size_t>(link.source)];
  if (source.bases.size() == 1 && (next_off < 0 || at(link.to).is_single())) return lone(source.bases[0]);
  Facts covers = source.covers;  // of a set of cells: one for each digit; the two in question are not covered
  std::erase_if(covers, [&](const Constraint& cover) { return cover.digit == at(link.to).digit || cover.digit == at(off).digit; });
  if (next_off >= 0) covers.push_back(joint(at(link.to), at(next_off)));
  return sum_of(source.bases, covers);
}

// Works back from the end: a node that is off and linked to what is on; then one that is on a link earlier and sees it.
std::vector<Line> ChainGraph::lines(const std::vector<int>& off, int end, const std::vector<int>& links) const {
  std::vector<Line> reversed;
  int on = end;
  int next_off = -1;
  for (int count = links[static_cast<std::size_t>(end)]; count > 0; --count) {
    int before = -1;
    const ChainLink* used = nullptr;
    for (const ChainLink& back : links_[static_cast<std::size_t>(on)]) {
      if (count == 1 && std::find(off.begin(), off.end(), back.to) != off.end()) used = &back;
      for (int node = 0; node < size() && count > 1 && used == nullptr; ++node) {
        if (links[static_cast<std::size_t>(node)] == count - 1 && sees(node, back.to)) before = node, used = &back;
      }
      if (used != nullptr) break;
    }
    if (used == nullptr) break;  // not reached: `links` counts along the same links
    const int source_off = used->to;
    reversed.push_back(line_over({on, used->source}, source_off, next_off));
    next_off = source_off;
    on = before;
  }
  std::reverse(reversed.begin(), reversed.end());
  return reversed;
}

std::vector<Candidate> ChainGraph::seen_by_both(int one, int other) const {
  const ChainNode& a = at(one);
  const ChainNode& b = at(other);
  std::vector<Candidate> found;
  if (a.digit == b.digit) {
    found = candidates_of(a.seen & b.seen, a.digit);
    if (one == other && a.is_single()) {
      for (const Digit digit : position_.candidates(a.cells.first()) - DigitSet::of(a.digit)) found.push_back({a.cells.first(), digit});
    }
  } else if (a.is_single() && a.cells == b.cells) {
    for (const Digit digit : position_.candidates(a.cells.first()) - DigitSet::of(a.digit) - DigitSet::of(b.digit)) found.push_back({a.cells.first(), digit});
  } else {
    if (b.is_single() && a.seen.has(b.cells.first())) found.push_back({b.cells.first(), a.digit});
    if (a.is_single() && b.seen.has(a.cells.first())) found.push_back({a.cells.first(), b.digit});
  }
  tidy(found);
  return found;
}

std::vector<int> ChainGraph::nodes_seen_from(Candidate candidate) const {
  std::vector<int> seen;
  for (const int node : of_digit_[candidate.digit.index]) {
    if (at(node).seen.has(candidate.cell)) seen.push_back(node);
  }
  for (const int node : single_in_[candidate.cell.index]) {
    if (at(node).digit != candidate.digit) seen.push_back(node);
  }
  std::sort(seen.begin(), seen.end());
  return seen;
}

void link_cells(ChainGraph& graph, const Position& position, std::string_view technique) {
  const int most = is_weakened(technique, Guard::kSound) ? 3 : 2;
  for (const Cell cell : position.open()) {
    const DigitSet digits = position.candidates(cell);
    if (digits.size() < 2 || digits.size() > most) continue;
    const DigitSet rest = digits - DigitSet::of(digits.lowest());
    graph.link(graph.node(digits.lowest(), CellSet::of(cell)), graph.node(rest.lowest(), CellSet::of(cell)), graph.source({Constraint::of(cell)}));
  }
}

void link_houses(ChainGraph& graph, const Position& position, std::string_view technique) {
  const int most = is_weakened(technique, Guard::kSound) ? 3 : 2;
  for (const House house : houses_in_order(position.shape())) {
    for (const Digit digit : position.shape().digits()) {
      CellSet places = position.places(house, digit);
      if (places.size() < 2 || places.size() > most) continue;
      const Cell first = places.first();
      places.remove(first);
      graph.link(graph.node(digit, CellSet::of(first)), graph.node(digit, CellSet::of(places.first())), graph.source({Constraint::of(house, digit)}));
    }
  }
}

void link_overlaps(ChainGraph& graph, const Position& position, std::string_view technique) {
  const Shape& shape = position.shape();
  const std::size_t most = is_weakened(technique, Guard::kSound) ? 3 : 2;
  for (const House house : houses_in_order(shape)) {
    const bool is_box = shape.kind(house) == HouseKind::kBox;
    for (const HouseKind kind : {HouseKind::kRow, HouseKind::kColumn, HouseKind::kBox}) {
      if (is_box == (kind == HouseKind::kBox)) continue;
      for (const Digit digit : shape.digits()) {
        const CellSet places = position.places(house, digit);
        if (places.size() < 3) continue;
        std::vector<CellSet> parts;
        for (int number = 0; number < shape.side() && parts.size() <= most; ++number) {
          const CellSet part = places & shape.cells(House(static_cast<int>(kind) * shape.side() + number));
          if (!part.is_empty()) parts.push_back(part);
        }
        if (parts.size() < 2 || parts.size() > most) continue;
        graph.link(graph.node(digit, parts[0]), graph.node(digit, parts[1]), graph.source({Constraint::of(house, digit)}));
      }
    }
  }
}

void report_chains(std::string_view technique, const ChainGraph& graph, std::vector<FoundChain> chains, StepSink& sink) {
  StruckOnce once;
  for (FoundChain& chain : chains) {
    if (!once.is_new(chain.struck)) continue;
    std::vector<Line> lines = graph.lines({chain.start}, chain.end, graph.links_from({chain.start}));
    if (!sink.take(by_supposing(technique, std::move(chain.struck), std::move(lines)))) return;
  }
}

}  // namespace cp::deduce
