// SPDX-License-Identifier: Apache-2.0
// What a scene shows, gathered line by line and drawn up at its end.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "lesson/directive.h"
#include "lesson/document.h"
#include "lesson/step_proof.h"

namespace cp {

// A balance as it was when a step was taken by it.
struct UsedBalance {
  Position before;
  Step step;
};

struct ShownBalance {
  NamedBalance balance;
  BalanceView view = BalanceView::kHouses;
  DigitCounts supposed{};  // kCases: supposed to be shared, besides what is shared for certain
};

// Gathered while the lines of a scene are carried out.
struct SceneContent {
  explicit SceneContent(Position start) : end(std::move(start)) {}

  Position end;                         // the position after all lines
  std::optional<Position> before_steps; // before the first @step
  std::vector<ProvenStep> run;          // by @apply and its kin
  std::vector<ProvenStep> steps;        // by @step
  std::vector<std::string> by;          // for each of `steps`: the balance it was taken by, or empty
  std::optional<ShownBalance> shown;
  std::optional<ShownBalance> asked;    // what was shown before the first question
  bool has_question = false;
  bool shows_candidates = false;        // something has been worked out before
  BoardWish wish;
};

struct ScenePictures {
  std::optional<Figure> board;
  std::optional<PanPicture> pans;
  std::optional<TallyTable> table;
};

// The pictures of the scene; of its question when it has one (then without what its steps prove).
ScenePictures scene_pictures(const SceneContent& content, const std::map<std::string, UsedBalance>& used, const std::string& title, const std::string& language);
// The pictures of the answer.
ScenePictures answer_pictures(const SceneContent& content, const std::map<std::string, UsedBalance>& used, const std::string& title, const std::string& language);

}  // namespace cp
