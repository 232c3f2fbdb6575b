// SPDX-License-Identifier: Apache-2.0
#include "lesson/draft_idea.h"

#include <algorithm>

#include "balance/weighing.h"
#include "base/text.h"
#include "deduce/technique.h"
#include "grid/notation.h"
#include "lesson/draft_page.h"
#include "lesson/figure.h"
#include "lesson/similar_grid.h"
#include "lesson/step_proof.h"
#include "speak/case_words.h"
#include "speak/naming.h"

namespace cp {

namespace {

constexpr std::size_t kBreath = 260;  // bytes of a paragraph that is read in one go

std::string cell_words(const Shape& shape, const CellSet& cells) {
  std::vector<std::string> names;
  for (const Cell cell : cells) names.push_back(shape.name_of(cell));
  return joined(names, " ");
}

std::string technique_name(const Speaker& speaker, const Step& step) {
  const auto technique = find_technique(step.technique);
  return speaker.technique(step.technique, technique ? (*technique)->name : step.technique);
}

// ---- a balance, part by part -----------------------------------------------------------------------------------------

class BalanceScenes {
 public:
  explicit BalanceScenes(const IdeaInput& input)
      : speaker_(input.speaker), words_(speaker_.words()), key_(input.key), shape_(key_.before.shape()), reason_(*std::get_if<BalanceReason>(&key_.step.reason)),
        scales_(lay_out(reason_, key_.before)) {}

  std::vector<WrittenScene> tell() {
    for (const StoryPart& part : speaker_.story(reason_, key_.before, key_.step.eliminations)) {
      DraftScene scene(part.heading);
      for (const Paragraph& paragraph : part.paragraphs) scene.say(paragraph);
      add_rest(part, scene);
      scenes_.push_back(scene.finish());
    }
    return std::move(scenes_);
  }

 private:
  using Kind = StoryPart::Kind;

  std::string names(const CellSet& cells) const { return speaker_.cells(shape_, cells, key_.before.open()); }

  void show(DraftScene& scene, std::string_view view) { scene.direct("show", std::string(kKeyName) + " " + std::string(view)); }

  void add_rest(const StoryPart& part, DraftScene& scene) {
    switch (part.kind) {
      case Kind::kHouses:
        scene.direct("balance", balance_line(shape_, reason_.weights, std::string(kKeyName)));
        scene.ask(words_.say("draft.question.cancel"));
        scene.answer(scales_.cancelled.is_empty() ? words_.say("draft.answer.cancel.none") : words_.say("draft.answer.cancel", {{"cells", names(scales_.cancelled)}}));
        return scene.note(words_.say("draft.note.houses"));
      case Kind::kCancel:
        if (scales_.right.cells.is_empty()) scene.say(words_.say("draft.where.one", {{"left", names(scales_.left.cells)}}));
        else scene.say(words_.say("draft.where", {{"left", names(scales_.left.cells)}, {"right", names(scales_.right.cells)}}));
        show(scene, "remainders");
        add_house_claim(scene);
        return scene.note(words_.say("draft.note.cancel"));
      case Kind::kKnown:
        show(scene, "known");
        return scene.note(words_.say("draft.note.known"));
      case Kind::kTally:
        show(scene, "tally");
        return scene.note(words_.say("draft.note.tally"));
      case Kind::kSlack:
        show(scene, "fit");
        add_fit_claims(scene);
        return scene.note(words_.say(scales_.slack == 0 ? "draft.note.slack.0" : "draft.note.slack"));
      case Kind::kForced:
        show(scene, "shares");
        add_marks(scene, part);
        return scene.note(words_.say("draft.note.forced"));
      case Kind::kCase:
        show(scene, reason_.cases.size() > 1 ? "cases" + supposed_digits(part) : "shares");
        add_marks(scene, part);
        return scene.note(words_.say(reason_.cases.size() > 1 ? "draft.note.case" : "draft.note.follow"));
      case Kind::kFalls:
        show(scene, "falls");
        scene.direct("step", conclusions_text(shape_, {}, key_.step.eliminations) + " by " + std::string(kKeyName));
        return scene.note(words_.say("draft.note.falls"));
    }
  }

  // " 2" for a case of its own that supposes a 2 to be shared.
  std::string supposed_digits(const StoryPart& part) const {
    if (!part.shares_are_supposed) return {};
    const DigitCounts forced = shares_known_beforehand(reason_, scales_, key_.before);
    std::string text;
    for (const Digit digit : shape_.digits()) {
      for (int i = forced[digit.index]; i < part.shares[digit.index]; ++i) text += (text.empty() ? " " : ",") + digit_name(digit);
    }
    return text;
  }

  // What the houses say: the left remainder holds what the right one holds, and the surplus.
  void add_house_claim(DraftScene& scene) {
    if (scales_.right.cells.is_empty() || scales_.left.cells.is_empty()) return;
    std::string claim = "{" + std::string(kKeyName) + ".left} = {" + std::string(kKeyName) + ".right}";
    if (scales_.surplus != 0) {
      const int copies = scales_.surplus < 0 ? -scales_.surplus : scales_.surplus;
      claim += std::string(scales_.surplus < 0 ? " - " : " + ") + (copies > 1 ? to_text(copies) + "*" : "") + "1.." + digit_name(Digit(shape_.side() - 1));
    }
    scene.direct("claim", claim + " footing " + std::string(kKeyName));
  }

  // With nothing left over the open cells hold just what the tally names.
  void add_fit_claims(DraftScene& scene) {
    if (scales_.slack != 0) return;
    for (const Pan pan : {Pan::kLeft, Pan::kRight}) {
      const ScalesSide& side = pan == Pan::kLeft ? scales_.left : scales_.right;
      if (side.open.is_empty() || side.open_count != side.open.size()) continue;
      std::vector<std::string> digits;
      for (const Digit digit : shape_.digits()) digits.insert(digits.end(), static_cast<std::size_t>(scales_.need(pan, digit, 0)), digit_name(digit));
      scene.direct("claim", cell_words(shape_, side.open) + " hold " + joined(digits, ",") + " footing " + std::string(kKeyName));
    }
  }

  void add_marks(DraftScene& scene, const StoryPart& part) {
    std::vector<std::string> wishes;
    if (!part.focus.is_empty()) wishes.push_back("focus " + cell_words(shape_, part.focus));
    if (!part.removed.empty()) wishes.push_back("strike " + conclusions_text(shape_, {}, part.removed));
    if (!wishes.empty()) scene.direct("board", joined(wishes, "; "));
  }

  const Speaker& speaker_;
  const Words& words_;
  const PathStep& key_;
  const Shape& shape_;
  const BalanceReason& reason_;
  Scales scales_;
  std::vector<WrittenScene> scenes_;
};

// ---- a pattern of the catalogue --------------------------------------------------------------------------------------

// A fish-like sum: as many lines as covers for one digit, nothing to spare.
struct FishCount {
  std::vector<House> bases;
  std::vector<House> covers;
  Digit digit;
};
std::optional<FishCount> fish_count(const Step& step) {
  const auto* linear = std::get_if<LinearReason>(&step.reason);
  if (linear == nullptr) return std::nullopt;
  FishCount count;
  std::optional<Digit> digit;
  for (const LinearTerm& term : linear->terms) {
    if (term.constraint.kind != Constraint::Kind::kHouse || (digit && *digit != term.constraint.digit) || (term.multiplier != 1 && term.multiplier != -1)) return std::nullopt;
    digit = term.constraint.digit;
    (term.multiplier < 0 ? count.bases : count.covers).push_back(term.constraint.house());
  }
  if (!digit || count.bases.size() != count.covers.size()) return std::nullopt;
  count.digit = *digit;
  return count;
}

std::string framed_text(const Shape& shape, const std::vector<Candidate>& told) {
  std::vector<std::string> items;
  for (const Candidate& each : told) items.push_back(shape.name_of(each.cell) + " = " + digit_name(each.digit));
  return "frame " + joined(items, ", ");
}

// The digit of all these candidates, when it is one.
std::optional<Digit> one_digit(const std::vector<Candidate>& candidates) {
  for (const Candidate& each : candidates) {
    if (each.digit != candidates.front().digit) return std::nullopt;
  }
  if (candidates.empty()) return std::nullopt;
  return candidates.front().digit;
}

std::vector<WrittenScene> pattern_scenes(const IdeaInput& input) {
  const Speaker& speaker = input.speaker;
  const Words& words = speaker.words();
  const Step& step = input.key.step;
  const Position& before = input.key.before;
  const Shape& shape = before.shape();
  const std::string name = technique_name(speaker, step);
  const Figure figure = step_figure(step, before, name);
  std::vector<Candidate> all = figure.told;
  all.insert(all.end(), step.eliminations.begin(), step.eliminations.end());
  all.insert(all.end(), step.placements.begin(), step.placements.end());
  const auto digit = one_digit(all);
  const std::string falls = step.eliminations.empty() ? speaker.values(shape, step.placements) : speaker.falls(shape, step.eliminations);
  std::string marks = figure.told.empty() ? std::string() : framed_text(shape, figure.told);
  if (digit) marks = "digits " + digit_name(*digit) + (marks.empty() ? "" : "; " + marks);

  DraftScene where(words.say("draft.idea.where"));
  if (digit) where.say(words.vary("draft.idea.where.digit", input.seed / 19, {{"d", digit_name(*digit)}}));
  if (!figure.focus.is_empty()) where.say(words.say("draft.idea.where.cells", {{"cells", speaker.cells(shape, figure.focus, before.open())}}));
  if (!marks.empty()) where.direct("board", marks);
  where.ask(words.say("draft.idea.question"));
  where.answer(capitalised(falls) + ".");
  where.note(words.say("draft.note.where"));

  DraftScene why(words.say("draft.idea.why"));
  if (const auto fish = fish_count(step)) {
    why.say(words.say("draft.idea.count", {{"bases", speaker.houses(shape, fish->bases)},
                                           {"covers", speaker.houses(shape, fish->covers)},
                                           {"nb", static_cast<int>(fish->bases.size())},
                                           {"nc", static_cast<int>(fish->covers.size())},
                                           {"n", static_cast<int>(fish->bases.size())},
                                           {"d", digit_name(fish->digit)}}));
  } else {
    for (const std::string& paragraph : in_breaths(speaker.step(step, before, name))) why.say(paragraph);
  }
  if (!marks.empty()) why.direct("board", marks);
  why.note(words.say("draft.note.why"));

  DraftScene result(words.say("draft.idea.falls"));
  result.say(words.say("draft.exercise.answer.falls", {{"falls", falls}}));
  result.direct("step", conclusions_text(shape, step.placements, step.eliminations) + " by " + std::string(step.technique));
  if (digit) result.direct("board", "digits " + digit_name(*digit));
  result.note(words.say("draft.note.falls"));
  return {where.finish(), why.finish(), result.finish()};
}

// ---- exercises -------------------------------------------------------------------------------------------------------

constexpr std::uint64_t kMostTries = 4;

class ExerciseScenes {
 public:
  explicit ExerciseScenes(const IdeaInput& input) : input_(input), speaker_(input.speaker), words_(speaker_.words()), shape_(input.key.before.shape()) {}

  std::vector<WrittenScene> make() {
    std::vector<WrittenScene> scenes;
    for (std::uint64_t attempt = 0; attempt < kMostTries && scenes.size() < 2; ++attempt) {
      if (auto scene = exercise(static_cast<int>(scenes.size()) + 1, input_.seed + 1000 * (attempt + 1))) scenes.push_back(std::move(*scene));
    }
    return scenes;
  }

 private:
  std::optional<WrittenScene> exercise(int number, std::uint64_t seed) {
    const Similarity similar(shape_, seed);
    const Position board = similar.image(input_.prefix.end);
    Directive wanted;
    wanted.kind = Directive::Kind::kStep;
    wanted.placements = similar.image(input_.key.step.placements);
    wanted.eliminations = similar.image(input_.key.step.eliminations);
    Vocabulary names;
    const auto* balance = std::get_if<BalanceReason>(&input_.key.step.reason);
    const std::vector<Weight> weights = balance == nullptr ? std::vector<Weight>() : similar.image(balance->weights);
    if (balance != nullptr) names.balances.push_back({std::string(kKeyName), weights});
    wanted.name = balance != nullptr ? std::string(kKeyName) : std::string(input_.key.step.technique);
    StepProof proof = prove_step({board, {}, std::nullopt}, wanted, names);
    auto* steps = std::get_if<std::vector<ProvenStep>>(&proof);
    if (steps == nullptr || steps->size() != 1) return std::nullopt;

    DraftScene scene(words_.say("draft.exercise", {{"n", number}}));
    scene.direct("aside", input_.prefix.is_short ? givens_line(similar.image(input_.prefix.puzzle)) : one_line(to_candidate_text(board)));
    if (input_.prefix.is_short && !input_.prefix.name.empty()) scene.direct(input_.prefix.name, input_.prefix.text);
    scene.say(words_.say("draft.exercise.intro." + to_text(number)));
    if (balance != nullptr) ask_balance(scene, number, weights, steps->front(), wanted);
    else ask_pattern(scene, number, steps->front(), wanted);
    scene.note(words_.say("draft.note.exercise"));
    return scene.finish();
  }

  static std::string one_line(const std::string& text) {
    std::string line;
    for (const char c : text) {
      const bool is_blank = c == ' ' || c == '\n';
      if (!is_blank) line += c;
      else if (!line.empty() && line.back() != ' ') line += ' ';
    }
    return std::string(trimmed(line));
  }

  void ask_balance(DraftScene& scene, int number, const std::vector<Weight>& weights, const ProvenStep& found, const Directive& wanted) {
    const auto& reason = *std::get_if<BalanceReason>(&found.step.reason);
    const Scales scales = lay_out(reason, found.before);
    const Candidate& first = wanted.eliminations.front();
    const std::string left = speaker_.houses(shape_, scales.left.houses);
    const std::string right = speaker_.houses(shape_, scales.right.houses);
    const bool tells_all = number == 1 || scales.right.houses.empty();
    if (tells_all) scene.direct("balance", balance_line(shape_, weights, std::string(kKeyName)));
    scene.ask(words_.say(tells_all ? "draft.exercise.balance.1" : "draft.exercise.balance.2",
                         {{"left", left}, {"right", right}, {"cell", shape_.name_of(first.cell)}, {"n", static_cast<int>(scales.right.houses.size())}}));
    std::string text = tells_all ? std::string() : words_.say("draft.exercise.answer.right", {{"right", right}}) + " ";
    text += words_.is_english() ? without_first_sentence(balance_in_short(reason, found.before, wanted.eliminations)) : fit_words(reason, found, wanted);
    scene.answer(text);
    if (!tells_all) scene.direct("balance", balance_line(shape_, weights, std::string(kKeyName)));
    scene.direct("step", conclusions_text(shape_, {}, wanted.eliminations) + " by " + std::string(kKeyName));
  }

  // The question has named the houses already.
  static std::string without_first_sentence(const std::string& text) {
    const auto end = text.find(". ");
    return end == std::string::npos ? text : text.substr(end + 2);
  }

  std::string fit_words(const BalanceReason& reason, const ProvenStep& found, const Directive& wanted) const {
    std::string text;
    for (const StoryPart& part : speaker_.story(reason, found.before, wanted.eliminations)) {
      if (part.kind == StoryPart::Kind::kSlack) text = part.paragraphs.back().text;
    }
    return text + " " + words_.say("draft.exercise.answer.falls", {{"falls", speaker_.falls(shape_, wanted.eliminations)}});
  }

  void ask_pattern(DraftScene& scene, int number, const ProvenStep& found, const Directive& wanted) {
    const std::string name = technique_name(speaker_, found.step);
    const Candidate& first = wanted.eliminations.empty() ? wanted.placements.front() : wanted.eliminations.front();
    scene.ask(words_.say(number == 1 || wanted.eliminations.empty() ? "draft.exercise.technique.1" : "draft.exercise.technique.2", {{"name", name_in_sentence(speaker_, found.step)}, {"cell", shape_.name_of(first.cell)}}));
    const std::string falls = wanted.eliminations.empty() ? speaker_.values(shape_, wanted.placements) : speaker_.falls(shape_, wanted.eliminations);
    const std::string told = speaker_.step(found.step, found.before, name);
    scene.answer(told.empty() ? words_.say("draft.exercise.answer.falls", {{"falls", falls}}) : told);
    scene.direct("step", conclusions_text(shape_, wanted.placements, wanted.eliminations) + " by " + std::string(found.step.technique));
  }

  const IdeaInput& input_;
  const Speaker& speaker_;
  const Words& words_;
  const Shape& shape_;
};

}  // namespace

std::vector<WrittenScene> idea_scenes(const IdeaInput& input) {
  if (std::holds_alternative<BalanceReason>(input.key.step.reason)) return BalanceScenes(input).tell();
  return pattern_scenes(input);
}

std::vector<WrittenScene> exercise_scenes(const IdeaInput& input) { return ExerciseScenes(input).make(); }

std::string balance_line(const Shape& shape, const std::vector<Weight>& weights, const std::string& name) {
  const auto pan = [&](bool is_left) {
    std::string text = pan_text(shape, weights, is_left);
    return text.empty() ? std::string(kEmptyPan) : text;
  };
  return "left " + pan(true) + " right " + pan(false) + " name " + name;
}

std::string name_in_sentence(const Speaker& speaker, const Step& step) {
  const std::string name = technique_name(speaker, step);
  const auto technique = find_technique(step.technique);
  if (!speaker.words().is_english() || !technique) return name;
  const std::string_view family = (*technique)->family;
  if (family == "leftovers") return "the " + name;
  // Names of a kind of reasoning, and plurals, go without an article.
  const bool is_bare = family == "locked" || family == "colouring" || family == "exclusion" || step.technique == "nishio" || step.technique == "remote-pairs" ||
                       step.technique == "multi-sector-locked-sets";
  if (is_bare) return name;
  static constexpr std::string_view kVowels = "aeioAEIOX";  // "an X-wing", but "a unique rectangle"
  return (kVowels.find(name.front()) != std::string_view::npos ? "an " : "a ") + name;
}

std::vector<std::string> in_breaths(const std::string& text) {
  std::vector<std::string> paragraphs;
  std::string current;
  std::size_t start = 0;
  while (start < text.size()) {
    std::size_t end = text.find(". ", start);
    end = end == std::string::npos ? text.size() : end + 1;
    const std::string sentence(trimmed(text.substr(start, end - start)));
    if (!current.empty() && current.size() + sentence.size() > kBreath) {
      paragraphs.push_back(current);
      current.clear();
    }
    current += (current.empty() ? "" : " ") + sentence;
    start = end;
  }
  if (!current.empty()) paragraphs.push_back(current);
  return paragraphs;
}

}  // namespace cp
