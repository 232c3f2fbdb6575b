// SPDX-License-Identifier: Apache-2.0
#include "compose/ground.h"

#include <algorithm>

#include "base/text.h"
#include "grid/notation.h"

namespace cp {

namespace {

Cell image(Cell cell, Symmetry symmetry) {
  const Shape& shape = plan_shape();
  const int last = shape.side() - 1;
  const int row = shape.row_of(cell);
  const int column = shape.column_of(cell);
  switch (symmetry) {
    case Symmetry::kHalfTurn: return shape.cell_at(last - row, last - column);
    case Symmetry::kQuarterTurn: return shape.cell_at(column, last - row);
    case Symmetry::kLeftRight: return shape.cell_at(row, last - column);
    case Symmetry::kTopBottom: return shape.cell_at(last - row, column);
    case Symmetry::kDiagonal: return shape.cell_at(column, row);
    case Symmetry::kAntidiagonal: return shape.cell_at(last - column, last - row);
  }
  return cell;
}

CellSet orbit(Cell start, const std::vector<Symmetry>& symmetries) {
  CellSet seen = CellSet::of(start);
  std::vector<Cell> waiting = {start};
  while (!waiting.empty()) {
    const Cell cell = waiting.back();
    waiting.pop_back();
    for (const Symmetry symmetry : symmetries) {
      const Cell next = image(cell, symmetry);
      if (seen.has(next)) continue;
      seen.add(next);
      waiting.push_back(next);
    }
  }
  return seen;
}

Error impossible(std::string message, std::string hint) { return Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {}}; }

// The symmetry widens what must hold a given and narrows what may.
std::optional<Error> apply_symmetry(const Plan& plan, PlanGround& ground) {
  const Shape& shape = plan_shape();
  CellSet may = ground.may;
  for (const Cell cell : shape.all_cells()) {
    ground.orbit_of.push_back(orbit(cell, plan.symmetries));
    if (!ground.orbit_of.back().is_subset_of(ground.may)) may -= ground.orbit_of.back();
  }
  for (const Cell cell : ground.must) {
    const CellSet& cells = ground.orbit_of[cell.index];
    const CellSet lost = cells - ground.may;
    if (!lost.is_empty()) {
      return impossible(shape.name_of(cell) + " must hold a given, and " + shape.name_of(lost.first()) + ", where the symmetry puts it, must not", "change the pattern in one of the two cells, or the symmetry");
    }
  }
  for (const Cell cell : CellSet(ground.must)) ground.must |= ground.orbit_of[cell.index];
  ground.may = may;
  return std::nullopt;
}

std::optional<Error> check_fixed(const PlanGround& ground) {
  Position position(plan_shape());
  for (const Candidate& each : ground.fixed) position.place_given(each.cell, each.digit);
  if (!position.has_clash()) return std::nullopt;
  return impossible("the digits drawn in the pattern contradict each other", "no digit may stand twice in a row, column or box");
}

bool needs_houses(const Look& look) { return look.region != Look::Region::kHouses; }

Error impossible_look(const Look& look, const std::string& why, std::string hint) {
  return Error{ErrorCode::kBadArgument, "'look: " + look_text(look) + "' cannot be met: " + why, std::move(hint), look.where};
}

// One look by itself, with the pattern.
std::optional<Error> check_look(const Look& look, const GivenBounds& bounds, const PlanGround& ground) {
  const int size = bounds.cells.size();
  const int may = (bounds.cells & ground.may).size();
  const int must = (bounds.cells & ground.must).size();
  if (bounds.most < 0) return impossible_look(look, "there are only " + counted(size, "cell") + " there, and more shall be empty", "write a smaller number after 'all but'");
  if (bounds.least > may) return impossible_look(look, "of these " + counted(size, "cell") + " only " + to_text(may) + " may hold a given", "ask for fewer givens there, or allow more in the pattern");
  if (bounds.most < must) return impossible_look(look, "the pattern puts " + counted(must, "given") + " there", "allow more givens there, or fewer in the pattern");
  return std::nullopt;
}

// Two looks: the givens of one region are those of the other, but for the cells that the other has not.
std::optional<Error> check_pair(const Plan& plan, const std::vector<GivenBounds>& bounds, std::size_t low, std::size_t high, const PlanGround& ground) {
  const int outside = ((bounds[low].cells - bounds[high].cells) & ground.may).size();
  if (bounds[low].least <= bounds[high].most + outside) return std::nullopt;
  return impossible_look(plan.looks[std::max(low, high)], "it contradicts 'look: " + look_text(plan.looks[std::min(low, high)]) + "'", "change one of the two lines, or take it out");
}

// The other way: where the looks leave room, there has to be enough of it.
std::optional<Error> check_room(const Plan& plan, const std::vector<GivenBounds>& bounds, const PlanGround& ground) {
  CellSet seen;
  int room = ground.may.size();
  for (std::size_t i = 0; i < bounds.size(); ++i) {
    const int lost = (bounds[i].cells & ground.may).size() - bounds[i].most;
    if (lost <= 0 || bounds[i].cells.meets(seen)) continue;
    seen |= bounds[i].cells;
    room -= lost;
    if (room < plan.least_givens) {
      return impossible_look(plan.looks[i], "the looks and the pattern leave room for " + counted(room, "given") + ", and there shall be at least " + to_text(plan.least_givens), "allow more givens there, or ask for fewer in 'givens'");
    }
  }
  return std::nullopt;
}

// All looks against the number of givens: looks at cells apart add up.
std::optional<Error> check_sum(const Plan& plan, const std::vector<GivenBounds>& bounds, const PlanGround& ground) {
  std::vector<std::size_t> order(bounds.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return bounds[a].least > bounds[b].least; });
  CellSet seen;
  int least = 0;
  for (const std::size_t i : order) {
    if (bounds[i].least <= 0 || bounds[i].cells.meets(seen)) continue;
    seen |= bounds[i].cells;
    least += bounds[i].least;
    if (least + (ground.must - seen).size() > plan.most_givens) {
      return impossible_look(plan.looks[i], "the looks and the pattern ask for " + counted(least + (ground.must - seen).size(), "given") + ", and there shall be at most " + to_text(plan.most_givens), "ask for fewer givens there, or allow more in 'givens'");
    }
  }
  return check_room(plan, bounds, ground);
}

// Do the looks go together when these houses are in the pans?
std::optional<Error> check_bounds(const Plan& plan, const std::vector<Weight>& weights, const PlanGround& ground) {
  const auto bounds = bounds_of(plan, weights);
  for (std::size_t i = 0; i < bounds.size(); ++i) {
    if (auto fault = check_look(plan.looks[i], bounds[i], ground)) return fault;
    for (std::size_t other = 0; other < i; ++other) {
      if (auto fault = check_pair(plan, bounds, other, i, ground)) return fault;
      if (auto fault = check_pair(plan, bounds, i, other, ground)) return fault;
    }
  }
  return check_sum(plan, bounds, ground);
}

// Houses of a kind: which cells are meant differs from try to try, so the looks must go together for some choice.
std::optional<Error> check_kind(const Plan& plan, const PlanGround& ground) {
  Rng rng(0);
  const auto picked = pick_houses(plan.idea, rng);
  if (!picked) return impossible("there are no such houses that do not overlap: " + idea_text(plan.idea), "take fewer houses into a pan");
  auto fault = check_bounds(plan, *picked, ground);
  if (!fault) return std::nullopt;
  const auto all = all_houses(plan.idea);
  if (std::any_of(all.begin(), all.end(), [&](const std::vector<Weight>& weights) { return !check_bounds(plan, weights, ground); })) return std::nullopt;
  return fault;
}

std::optional<Error> check_looks(const Plan& plan, const PlanGround& ground) {
  const bool has_houses = plan.idea.kind == PlannedIdea::Kind::kHouses || plan.idea.kind == PlannedIdea::Kind::kOfAKind;
  for (const Look& look : plan.looks) {
    if (needs_houses(look) && !has_houses) {
      return Error{ErrorCode::kBadArgument, "'look: " + look_text(look) + "' needs a balance whose houses the plan names", "name the houses or how many of each kind, or look at houses such as r1,r2", look.where};
    }
  }
  return plan.idea.kind == PlannedIdea::Kind::kOfAKind ? check_kind(plan, ground) : check_bounds(plan, plan.idea.weights, ground);
}

}  // namespace

Result<PlanGround> ground_of(const Plan& plan) {
  const Shape& shape = plan_shape();
  PlanGround ground;
  for (const Cell cell : shape.all_cells()) {
    const char drawn = plan.pattern.empty() ? kMayHold : plan.pattern[cell.index];
    if (drawn == kStaysEmpty) continue;
    ground.may.add(cell);
    if (drawn == kMayHold) continue;
    ground.must.add(cell);
    if (const auto digit = digit_from(drawn, shape)) ground.fixed.push_back({cell, *digit});
  }
  if (auto fault = apply_symmetry(plan, ground)) return *fault;
  if (auto fault = check_fixed(ground)) return *fault;
  if (auto fault = check_looks(plan, ground)) return *fault;
  if (ground.must.size() > plan.most_givens) {
    return impossible("the pattern asks for " + to_text(ground.must.size()) + " givens, and there shall be at most " + to_text(plan.most_givens), "allow more givens, or draw fewer");
  }
  if (ground.may.size() < plan.least_givens) {
    return impossible("only " + to_text(ground.may.size()) + " cells may hold a given, and there shall be at least " + to_text(plan.least_givens), "ask for fewer givens, or allow more cells in the pattern");
  }
  return ground;
}

std::vector<GivenBounds> bounds_of(const Plan& plan, const std::vector<Weight>& weights) {
  const Shape& shape = plan_shape();
  const Weighing weighing = weigh(Position(shape), weights);
  std::vector<GivenBounds> bounds;
  for (const Look& look : plan.looks) {
    if (needs_houses(look) && weights.empty()) continue;
    GivenBounds each;
    switch (look.region) {
      case Look::Region::kLeft: each.cells = weighing.left; break;
      case Look::Region::kRight: each.cells = weighing.right; break;
      case Look::Region::kCancelled: each.cells = weighing.cancelled; break;
      case Look::Region::kOutside: each.cells = shape.all_cells() - weighing.left - weighing.right - weighing.cancelled; break;
      case Look::Region::kHouses:
        for (const House house : look.houses) each.cells |= shape.cells(house);
        break;
    }
    const int size = each.cells.size();
    each.least = look.counts_empty ? size - look.most : look.least;
    each.most = std::min(size, look.counts_empty ? size - look.least : look.most);
    bounds.push_back(each);
  }
  return bounds;
}

namespace {

// Pans with so many houses of each kind, none overlapping; from house `from` on.
void extend_pans(std::array<int, 3> left, House from, const CellSet& taken, std::vector<House>& pan, std::vector<std::vector<House>>& pans) {
  const Shape& shape = plan_shape();
  if (left == std::array<int, 3>{}) {
    pans.push_back(pan);
    return;
  }
  for (int i = from.index; i < shape.house_count(); ++i) {
    const House house(i);
    const auto kind = static_cast<std::size_t>(shape.kind(house));
    if (left[kind] == 0 || taken.meets(shape.cells(house))) continue;
    std::array<int, 3> rest = left;
    --rest[kind];
    pan.push_back(house);
    extend_pans(rest, House(i + 1), taken | shape.cells(house), pan, pans);
    pan.pop_back();
  }
}

std::vector<Weight> weights_of(const std::vector<House>& left, const std::vector<House>& right) {
  std::vector<Weight> weights;
  for (const House house : left) weights.push_back({house, 1});
  for (const House house : right) weights.push_back({house, -1});
  std::sort(weights.begin(), weights.end());
  return weights;
}

bool have_common_house(const std::vector<House>& left, const std::vector<House>& right) {
  return std::any_of(left.begin(), left.end(), [&](House house) { return std::find(right.begin(), right.end(), house) != right.end(); });
}

std::vector<std::vector<House>> pans_of(const std::array<int, 3>& counts) {
  std::vector<House> pan;
  std::vector<std::vector<House>> pans;
  extend_pans(counts, House(0), {}, pan, pans);
  return pans;
}

// For kinds that hardly ever go together: of all left pans a random one that has right pans, and one of these.
std::optional<std::vector<Weight>> pick_from_all(const PlannedIdea& idea, Rng& rng) {
  std::vector<std::vector<House>> lefts = pans_of(idea.left);
  std::vector<std::vector<House>> rights = pans_of(idea.right);
  rng.shuffle(lefts);
  rng.shuffle(rights);
  for (const auto& left : lefts) {
    const auto right = std::find_if(rights.begin(), rights.end(), [&](const std::vector<House>& pan) { return !have_common_house(left, pan); });
    if (right != rights.end()) return weights_of(left, *right);
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::vector<Weight>> all_houses(const PlannedIdea& idea) {
  const std::vector<std::vector<House>> rights = pans_of(idea.right);
  std::vector<std::vector<Weight>> all;
  for (const auto& left : pans_of(idea.left)) {
    for (const auto& right : rights) {
      if (!have_common_house(left, right)) all.push_back(weights_of(left, right));
    }
  }
  return all;
}

std::optional<std::vector<Weight>> pick_houses(const PlannedIdea& idea, Rng& rng) {
  constexpr int kMostPicks = 200;
  if (idea.kind == PlannedIdea::Kind::kHouses) return idea.weights;
  if (idea.kind != PlannedIdea::Kind::kOfAKind) return std::nullopt;
  const Shape& shape = plan_shape();
  // Houses of one pan; an empty list when two of them overlap.
  const auto pan = [&](const std::array<int, 3>& counts) {
    std::vector<House> houses;
    CellSet cells;
    for (std::size_t kind = 0; kind < 3; ++kind) {
      std::vector<int> numbers;
      for (int number = 0; number < shape.side(); ++number) numbers.push_back(number);
      rng.shuffle(numbers);
      for (int i = 0; i < counts[kind]; ++i) {
        const House house(static_cast<int>(kind) * shape.side() + numbers[static_cast<std::size_t>(i)]);
        if (cells.meets(shape.cells(house))) return std::vector<House>();
        cells |= shape.cells(house);
        houses.push_back(house);
      }
    }
    return houses;
  };
  for (int picks = 0; picks < kMostPicks; ++picks) {
    const std::vector<House> left = pan(idea.left);
    const std::vector<House> right = pan(idea.right);
    if (!left.empty() && !right.empty() && !have_common_house(left, right)) return weights_of(left, right);
  }
  return pick_from_all(idea, rng);
}

bool has_symmetry(const CellSet& cells, const std::vector<Symmetry>& symmetries) {
  return std::all_of(symmetries.begin(), symmetries.end(), [&](Symmetry symmetry) {
    CellSet moved;
    for (const Cell cell : cells) moved.add(image(cell, symmetry));
    return moved == cells;
  });
}

}  // namespace cp
