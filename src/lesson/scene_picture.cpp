// SPDX-License-Identifier: Apache-2.0
#include "lesson/scene_picture.h"

#include <algorithm>
#include <numeric>

#include "balance/infer.h"
#include "speak/scales.h"

namespace cp {

namespace {

CellSet cells_of(const Shape& shape, const std::vector<House>& houses) {
  CellSet cells;
  for (const House house : houses) cells |= shape.cells(house);
  return cells;
}

// The balance at a position: as a step used it, or as far as it can be told without one.
struct Weighed {
  Position position;
  BalanceReason reason;
  std::vector<Candidate> eliminations;
};

Weighed weighed(const ShownBalance& shown, const SceneContent& content, const std::map<std::string, UsedBalance>& used) {
  const Position& now = content.before_steps ? *content.before_steps : content.end;
  for (std::size_t i = 0; i < content.steps.size(); ++i) {
    if (content.by[i] != shown.balance.name) continue;
    const ProvenStep& at = content.steps[i];
    return {at.before, *std::get_if<BalanceReason>(&at.step.reason), at.step.eliminations};
  }
  if (const auto earlier = used.find(shown.balance.name); earlier != used.end() && shown.view == BalanceView::kFalls) {
    return {earlier->second.before, *std::get_if<BalanceReason>(&earlier->second.step.reason), earlier->second.step.eliminations};
  }
  Weighed result{now, {}, {}};
  const Inference inference = infer(now, weigh(now, shown.balance.weights), 4, true);
  if (!inference.levels.empty()) result.reason = inference.levels.front().reason;
  result.reason.weights = shown.balance.weights;
  return result;
}

// Copies that are shared for certain or by supposition, as far as the view tells.
DigitCounts shares_of(const ShownBalance& shown, const Weighed& at) {
  if (shown.view == BalanceView::kFalls && at.reason.cases.size() == 1) return at.reason.cases.front().shares;
  if (shown.view != BalanceView::kShares && shown.view != BalanceView::kFalls && shown.view != BalanceView::kCases) return {};
  const Weighing weighing = weigh(at.position, shown.balance.weights);
  DigitCounts shares = infer(at.position, weighing, 1).forced.least;
  if (std::accumulate(shares.begin(), shares.end(), 0) + std::accumulate(shown.supposed.begin(), shown.supposed.end(), 0) > weighing.slack) return shares;
  for (std::size_t i = 0; i < shares.size(); ++i) shares[i] += shown.supposed[i];
  return shares;
}

ScenePictures balance_pictures(const ShownBalance& shown, const Weighed& at, const std::string& language) {
  using View = BalanceView;
  const Shape& shape = at.position.shape();
  const Scales scales = lay_out(at.reason, at.position);
  ScenePictures pictures;
  Figure board(at.position);
  board.left_houses = scales.left.houses;
  board.right_houses = scales.right.houses;
  if (shown.view == View::kHouses) {
    board.left = cells_of(shape, scales.left.houses);
    board.right = cells_of(shape, scales.right.houses);
    pictures.board = std::move(board);
    return pictures;
  }
  board.left = scales.left.cells;
  board.right = scales.right.cells;
  board.cancelled = scales.cancelled;
  board.counted_again = scales.left.repeated | scales.right.repeated;
  if (shown.view != View::kRemainders && shown.view != View::kKnown && shown.view != View::kTally) board.candidates = scales.left.open | scales.right.open;
  if (shown.view == View::kFalls) {
    board.struck = at.eliminations;
    for (const Candidate& gone : at.eliminations) board.candidates.add(gone.cell);
  }
  pictures.board = std::move(board);
  if (shown.view != View::kRemainders && shown.view != View::kTally) {
    pictures.pans = balance_pans(at.reason, at.position, shown.view != View::kKnown, shares_of(shown, at));
    pictures.pans->language = language;
    pictures.pans->title.clear();
    describe(*pictures.pans);
  }
  if (shown.view == View::kTally || shown.view == View::kFalls) {
    pictures.table = tally_table(at.reason, at.position);
    pictures.table->language = language;
  }
  return pictures;
}

// The board of steps: what their reasons speak of is framed, what they conclude is struck or ringed.
Figure steps_board(const SceneContent& content) {
  Figure board(*content.before_steps);
  board.candidates = board.position.open();
  for (const ProvenStep& at : content.steps) {
    board.struck.insert(board.struck.end(), at.step.eliminations.begin(), at.step.eliminations.end());
    board.placed.insert(board.placed.end(), at.step.placements.begin(), at.step.placements.end());
    if (at.is_by_search || std::holds_alternative<BalanceReason>(at.step.reason)) continue;
    const Figure alone = step_figure(at.step, at.before, "");
    board.told.insert(board.told.end(), alone.told.begin(), alone.told.end());
    board.focus |= alone.focus;
  }
  for (std::vector<Candidate>* list : {&board.told, &board.struck, &board.placed}) {
    std::sort(list->begin(), list->end());
    list->erase(std::unique(list->begin(), list->end()), list->end());
  }
  std::erase_if(board.told, [&board](const Candidate& each) {
    return std::find(board.struck.begin(), board.struck.end(), each) != board.struck.end() || std::find(board.placed.begin(), board.placed.end(), each) != board.placed.end();
  });
  return board;
}

Figure plain_board(const SceneContent& content, const Position& position) {
  Figure board(position);
  if (content.shows_candidates || !content.run.empty()) board.candidates = position.open();
  if (!content.before_steps || content.wish.is_after) {
    for (const std::vector<ProvenStep>* list : {&content.run, &content.steps}) {
      for (const ProvenStep& at : *list) {
        for (const Candidate& placed : at.step.placements) board.fresh.add(placed.cell);
      }
    }
  }
  return board;
}

void add_wishes(Figure& board, const BoardWish& wish) {
  if (wish.candidates) board.candidates = *wish.candidates;
  board.lens = wish.lens;
  if (!wish.lens.is_empty() && !wish.candidates) board.candidates = board.position.open();
  board.focus |= wish.focus;
  for (const Candidate& each : wish.framed) {
    board.told.push_back(each);
    board.candidates.add(each.cell);
  }
  for (const Candidate& each : wish.struck) {
    if (std::find(board.struck.begin(), board.struck.end(), each) == board.struck.end()) board.struck.push_back(each);
    board.candidates.add(each.cell);
  }
}

void finish(ScenePictures& pictures, const SceneContent& content, const std::string& title, const std::string& language) {
  add_wishes(*pictures.board, content.wish);
  pictures.board->title = title;
  pictures.board->language = language;
  describe(*pictures.board);
}

}  // namespace

ScenePictures scene_pictures(const SceneContent& content, const std::map<std::string, UsedBalance>& used, const std::string& title, const std::string& language) {
  ScenePictures pictures;
  if (content.wish.is_hidden) return pictures;
  const Position& before = content.before_steps ? *content.before_steps : content.end;
  if (content.has_question) {
    if (content.asked) pictures = balance_pictures({content.asked->balance, content.asked->view, content.asked->supposed}, {before, BalanceReason{content.asked->balance.weights, 0, 0, {}, 0, {}, {}}, {}}, language);
    else pictures.board = plain_board(content, before);
  } else if (content.shown) {
    pictures = balance_pictures(*content.shown, weighed(*content.shown, content, used), language);
  } else if (content.before_steps && !content.wish.is_after) {
    pictures.board = steps_board(content);
  } else {
    pictures.board = plain_board(content, content.end);
  }
  finish(pictures, content, title, language);
  return pictures;
}

ScenePictures answer_pictures(const SceneContent& content, const std::map<std::string, UsedBalance>& used, const std::string& title, const std::string& language) {
  ScenePictures pictures;
  if (!content.has_question || content.wish.is_hidden || !content.before_steps) return pictures;
  const auto by = std::find_if(content.by.begin(), content.by.end(), [](const std::string& name) { return !name.empty(); });
  if (by != content.by.end() && content.shown) {
    const ShownBalance shown{content.shown->balance, BalanceView::kFalls, {}};
    pictures = balance_pictures(shown, weighed(shown, content, used), language);
  } else {
    pictures.board = steps_board(content);
  }
  finish(pictures, content, title, language);
  return pictures;
}

}  // namespace cp
