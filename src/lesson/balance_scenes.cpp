// SPDX-License-Identifier: Apache-2.0
#include "lesson/balance_scenes.h"

#include <cstdlib>
#include <utility>

#include "speak/balance_story.h"
#include "speak/scales.h"

namespace cp {

namespace {

CellSet cells_of(const Shape& shape, const std::vector<House>& houses) {
  CellSet cells;
  for (const House house : houses) cells |= shape.cells(house);
  return cells;
}

std::string note_for(StoryPart::Kind kind, int slack) {
  switch (kind) {
    case StoryPart::Kind::kHouses:
      return "Likely question: why these houses? Answer: count how many open cells are left over on both sides; few are good. Likely slip: a row is not "
             "more than a box here, each counts as one house.";
    case StoryPart::Kind::kCancel:
      return "Let the audience find the cells that cancel before you show them. Likely slip: to forget that a cancelled cell stays unknown; it only "
             "plays no part.";
    case StoryPart::Kind::kKnown:
      return "Likely slip: counting digits of cancelled cells.";
    case StoryPart::Kind::kTally:
      return "Go digit by digit and let somebody else keep the account. Likely slip: to write the difference on the wrong side.";
    case StoryPart::Kind::kSlack:
      if (slack == 0) return "Likely slip: to read the list of digits as places. We know which digits the open cells hold, not yet which cell holds which.";
      return "Likely slip: to think that a digit outside the tally cannot occur at all. With slack it can, but then it stands on both sides.";
    case StoryPart::Kind::kForced:
      return "Likely slip: to look at the house as a whole. What counts is that every place for the digit in that house lies on one side.";
    case StoryPart::Kind::kCase:
      return "Say the supposition again before each sentence. What falls here falls in this case only.";
    case StoryPart::Kind::kFalls:
      return "Compare with the board: cross the candidates out together.";
  }
  return {};
}

Figure board_for(const StoryPart& part, const Scales& scales, const Position& before) {
  using Kind = StoryPart::Kind;
  const Shape& shape = before.shape();
  Figure board(before);
  board.title = part.heading;
  board.left_houses = scales.left.houses;
  board.right_houses = scales.right.houses;
  if (part.kind == Kind::kHouses) {
    board.left = cells_of(shape, scales.left.houses);
    board.right = cells_of(shape, scales.right.houses);
    return board;
  }
  board.left = scales.left.cells;
  board.right = scales.right.cells;
  board.cancelled = scales.cancelled;
  board.counted_again = scales.left.repeated | scales.right.repeated;
  if (part.kind == Kind::kCancel || part.kind == Kind::kKnown || part.kind == Kind::kTally) return board;
  board.candidates = scales.left.open | scales.right.open;
  if (part.kind == Kind::kForced) {
    board.focus = part.focus;
    return board;
  }
  board.struck = part.removed;
  for (const Candidate& gone : part.removed) board.candidates.add(gone.cell);
  if (part.kind == Kind::kCase) board.focus = part.focus;
  return board;
}

}  // namespace

BalanceSides balance_sides(const BalanceReason& reason) {
  BalanceSides sides;
  for (const Weight& weight : reason.weights) {
    std::vector<House>& pan = weight.weight > 0 ? sides.left : sides.right;
    pan.insert(pan.end(), static_cast<std::size_t>(std::abs(weight.weight)), weight.house);
  }
  return sides;
}

std::vector<Scene> balance_scenes(const Step& step, const Position& before) {
  using Kind = StoryPart::Kind;
  std::vector<Scene> scenes;
  const auto* reason = std::get_if<BalanceReason>(&step.reason);
  if (reason == nullptr) return scenes;
  const Scales scales = lay_out(*reason, before);
  for (StoryPart& part : balance_story(*reason, before, step.eliminations)) {
    Scene scene;
    scene.heading = part.heading;
    Figure board = board_for(part, scales, before);
    describe(board);
    scene.board = std::move(board);
    // Several cases on one screen leave no room for pans, and no single load to show.
    const bool is_crowded = part.kind == Kind::kCase && reason->cases.size() > 1 && !part.shares_are_supposed;
    const bool has_pans = part.kind != Kind::kHouses && part.kind != Kind::kCancel && part.kind != Kind::kTally && !is_crowded;
    if (has_pans) scene.pans = balance_pans(*reason, before, part.kind != Kind::kKnown, part.shares);
    if (part.kind == Kind::kTally || part.kind == Kind::kFalls) scene.table = tally_table(*reason, before);
    scene.note = note_for(part.kind, scales.slack);
    scene.paragraphs = std::move(part.paragraphs);
    scenes.push_back(std::move(scene));
  }
  return scenes;
}

}  // namespace cp
