// SPDX-License-Identifier: Apache-2.0
#include "lesson/build.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/sha256.h"
#include "base/small_letters.h"
#include "base/text.h"
#include "deduce/technique.h"
#include "grid/notation.h"
#include "lesson/directive.h"
#include "lesson/scene_picture.h"
#include "lesson/step_proof.h"
#include "speak/naming.h"
#include "speak/speaker.h"

namespace cp {

namespace {

using Kind = BuildStop::Kind;

// Letters and digits of a heading with '-' between them: "The ring" -> "the-ring".
std::string slug(const std::string& text) {
  std::string result;
  for (const char c : text) {
    const char small = small_letter(c);
    if ((small >= 'a' && small <= 'z') || (small >= '0' && small <= '9')) result += small;
    else if (!result.empty() && result.back() != '-') result += '-';
  }
  while (!result.empty() && result.back() == '-') result.pop_back();
  return result;
}

// The words of a paragraph without the asterisks; the first marked word is its term.
Paragraph paragraph_from(const std::string& text) {
  Paragraph paragraph;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const std::size_t end = text[at] == '*' ? text.find('*', at + 1) : std::string::npos;
    const bool is_mark = end != std::string::npos && end > at + 1 && text[at + 1] != ' ' && text[end - 1] != ' ';
    if (!is_mark) {
      paragraph.text += text[at];
      continue;
    }
    const std::string term = text.substr(at + 1, end - at - 1);
    if (paragraph.term.empty()) paragraph.term = term;
    paragraph.text += term;
    at = end;
  }
  return paragraph;
}

// A puzzle with what has been applied to it, and what has been named and claimed there.
struct World {
  explicit World(Board known) : board(std::move(known)) {}
  Board board;
  Vocabulary names;
  std::map<std::string, UsedBalance> used;
  std::vector<EarlierClaim> claims;
  bool is_begun = false;  // something has been applied
  std::string named;      // everything that gave names, as written
  std::string claimed;    // all claims, as written
};

class LessonBuilder {
 public:
  explicit LessonBuilder(const Lesson& lesson) : lesson_(lesson), speaker_(lesson.language) {}
  // A review: it goes on past claims that do not hold. `only`: as review_lesson() has it.
  LessonBuilder(const Lesson& lesson, std::optional<int> only) : lesson_(lesson), speaker_(lesson.language), is_review_(true), only_(only) {}

  // What stops the build, if anything does. document() then holds the scenes before it (and in a review what there is of
  // its own).
  std::optional<BuildStop> build() {
    fill_front();
    auto board = judge_board(puzzle_of(lesson_));
    if (!board) return stop_at(0, Kind::kUnfit, board.error().message, board.error().hint);
    if (!board->truth) return stop_at(0, Kind::kUnfit, "the puzzle has more than one solution", "a lesson needs a puzzle with exactly one solution");
    main_.emplace(std::move(*board));
    for (const WrittenScene& scene : lesson_.scenes) {
      if (auto fault = build_scene(scene)) {
        fault->scene = scene.heading;
        return fault;
      }
    }
    return std::nullopt;
  }

  Document& document() { return out_; }

 private:
  using Fault = std::optional<BuildStop>;

  static BuildStop stop_at(int line, Kind kind, std::string message, std::string hint) {
    return {kind, Error{ErrorCode::kBadArgument, std::move(message), std::move(hint), {0, 0, line, 1}}, {}};
  }
  static BuildStop stop_on(const WrittenLine& line, Kind kind, std::string message, std::string hint) {
    Error error{kind == Kind::kBug ? ErrorCode::kBug : ErrorCode::kBadArgument, std::move(message), std::move(hint), {0, line.text.size(), 1, 1}};
    return {kind, at_line(line, std::move(error)), {}};
  }

  void fill_front() {
    out_.id = slug(lesson_.title);
    if (out_.id.empty()) out_.id = "lesson";
    out_.title = lesson_.title;
    out_.puzzle = lesson_.puzzle;
    out_.language = lesson_.language;
    out_.is_right_to_left = is_right_to_left(lesson_.language);
    out_.idea = lesson_.idea;
    out_.level = lesson_.level;
    out_.minutes = lesson_.minutes;
    out_.needs = lesson_.needs;
    out_.teaches = lesson_.teaches;
    out_.source = lesson_.source;
    out_.licence = lesson_.licence;
  }

  std::string fresh_id(const std::string& heading) {
    std::string stem = slug(heading);
    if (stem.empty()) stem = "scene";
    const int count = ++ids_[stem];
    return count == 1 ? stem : stem + "-" + to_text(count);
  }

  // ---- a scene -------------------------------------------------------------------------------------------------------

  Fault build_scene(const WrittenScene& written) {
    std::optional<World> aside;
    if (auto fault = open_aside(written, aside)) return fault;
    World& world = aside ? *aside : *main_;
    scene_ = {};
    scene_.id = fresh_id(written.heading);
    scene_.heading = written.heading;
    scene_.line = written.line;
    SceneContent content(world.board.position);
    content.shows_candidates = world.is_begun;
    words_.clear();
    Fault fault = read_lines(written, world, content);
    if (fault && !is_review_) return fault;
    end_paragraph();
    content.end = world.board.position;
    finish_scene(world, content);
    return fault;
  }

  Fault read_lines(const WrittenScene& written, World& world, SceneContent& content) {
    last_ = WrittenLine::Kind::kBreak;
    for (const WrittenLine& line : written.lines) {
      if (line.kind == WrittenLine::Kind::kComment) continue;
      if (line.kind != WrittenLine::Kind::kWords) end_paragraph();
      if (line.kind == WrittenLine::Kind::kDirective) {
        if (auto fault = carry_out(line, world, content)) return fault;
      } else {
        take_words(line, content);
      }
      last_ = line.kind;
    }
    return std::nullopt;
  }

  Fault open_aside(const WrittenScene& written, std::optional<World>& aside) {
    for (const WrittenLine& line : written.lines) {
      if (line.kind != WrittenLine::Kind::kDirective || line.name != "aside") continue;
      auto position = parse_position(line.text);
      if (!position) return BuildStop{Kind::kUnfit, at_line(line, position.error()), {}};
      auto board = judge_board(*position);
      if (!board) return stop_on(line, Kind::kUnfit, board.error().message, board.error().hint);
      aside.emplace(std::move(*board));
      return std::nullopt;
    }
    return std::nullopt;
  }

  void end_paragraph() {
    if (!words_.empty()) scene_.paragraphs.push_back(paragraph_from(words_));
    words_.clear();
  }

  static void append(std::string& text, const std::string& more, bool goes_on) {
    if (!text.empty()) text += goes_on && !text.ends_with("\n") ? " " : text.ends_with("\n") ? "" : "\n";
    text += more;
  }

  void take_words(const WrittenLine& line, SceneContent& content) {
    using L = WrittenLine::Kind;
    if (line.kind == L::kWords) append(words_, line.text, true);
    if (line.kind == L::kNote) append(scene_.note, line.text, last_ == L::kNote);
    if (line.kind == L::kQuestion) {
      if (last_ != L::kQuestion) scene_.exercises.emplace_back();
      append(scene_.exercises.back().question, line.text, true);
      if (!content.has_question) content.asked = content.shown;
      content.has_question = true;
    }
    if (line.kind == L::kAnswer && !scene_.exercises.empty()) {
      std::string& answer = scene_.exercises.back().answer;
      if (line.text.empty()) answer += answer.empty() ? "" : "\n\n";
      else append(answer, line.text, true);
    }
  }

  void finish_scene(World& world, SceneContent& content) {
    ScenePictures pictures = scene_pictures(content, world.used, scene_.heading, lesson_.language);
    scene_.board = std::move(pictures.board);
    scene_.pans = std::move(pictures.pans);
    scene_.table = std::move(pictures.table);
    ScenePictures answer = answer_pictures(content, world.used, speaker_.words().say("page.answer"), lesson_.language);
    if (!scene_.exercises.empty() && answer.board) {
      scene_.exercises.back().answer_board = std::move(answer.board);
      scene_.exercises.back().answer_pans = std::move(answer.pans);
    }
    if (!scene_.is_time_given) scene_.seconds = speaking_seconds(word_count(scene_));
    out_.scenes.push_back(std::move(scene_));
  }

  // ---- directives ----------------------------------------------------------------------------------------------------

  Fault carry_out(const WrittenLine& line, World& world, SceneContent& content) {
    using D = Directive::Kind;
    auto read = read_directive({world.board.position, world.names, claims_}, line);
    if (!read) return BuildStop{Kind::kUnfit, read.error(), {}};
    Directive& directive = read.value();
    switch (directive.kind) {
      case D::kApply: return carry_out_run(line, directive, world, content);
      case D::kStep: return carry_out_step(line, directive, world, content);
      case D::kClaim: return ask(line, directive, world);
      case D::kGrid: return set_grid(line, *directive.grid, world);
      case D::kSolution: return show_solution(line, world);
      case D::kBalance:
      case D::kLet:
        if (auto fault = enter_name(world.board.position.shape(), directive, world.names)) return stop_on(line, Kind::kUnfit, fault->message, fault->hint);
        world.named += to_candidate_text(world.board.position) + "\n" + line.name + " " + line.text + "\n";
        if (directive.kind == D::kBalance) content.shown = ShownBalance{{directive.name, directive.weights}, BalanceView::kHouses};
        return std::nullopt;
      case D::kShow: content.shown = ShownBalance{*world.names.balance(directive.name), directive.view, directive.supposed}; return std::nullopt;
      case D::kBoard: merge(content.wish, directive.board); return std::nullopt;
      case D::kTime:
        scene_.seconds = directive.seconds;
        scene_.is_time_given = true;
        return std::nullopt;
      case D::kAside: return std::nullopt;
    }
    return std::nullopt;
  }

  static void merge(BoardWish& wish, const BoardWish& more) {
    if (more.candidates) wish.candidates = more.candidates;
    wish.lens = wish.lens | more.lens;
    wish.focus |= more.focus;
    wish.framed.insert(wish.framed.end(), more.framed.begin(), more.framed.end());
    wish.struck.insert(wish.struck.end(), more.struck.begin(), more.struck.end());
    wish.is_hidden = wish.is_hidden || more.is_hidden;
    wish.is_after = wish.is_after || more.is_after;
  }

  // Carries the steps out; their words go into the list of single steps.
  void take_steps(std::vector<ProvenStep>& steps, World& world, bool has_words) {
    for (const ProvenStep& at : steps) {
      apply(at.step, world.board.position);
      const auto technique = find_technique(at.step.technique);
      const std::string name = technique ? std::string((*technique)->name) : std::string(at.step.technique);
      if (has_words) scene_.steps.push_back(at.is_by_search ? search_words(at) : speaker_.step(at.step, at.before, name));
      const std::string id(at.step.technique);
      if (std::find(out_.uses.begin(), out_.uses.end(), id) == out_.uses.end()) out_.uses.push_back(id);
    }
    world.is_begun = world.is_begun || !steps.empty();
  }
  std::string search_words(const ProvenStep& at) const {
    if (speaker_.words().is_english()) return at.text;
    const Shape& shape = at.before.shape();
    return capitalised(at.step.placements.empty() ? speaker_.falls(shape, at.step.eliminations) : speaker_.values(shape, at.step.placements)) + ".";
  }

  static Fault placed(const WrittenLine& line, BuildStop stop) { return stop_on(line, stop.kind, std::move(stop.error.message), std::move(stop.error.hint)); }

  Fault carry_out_run(const WrittenLine& line, const Directive& directive, World& world, SceneContent& content) {
    StepProof proof = prove_run(world.board, directive.techniques);
    if (auto* fault = std::get_if<BuildStop>(&proof)) return placed(line, std::move(*fault));
    auto& steps = std::get<std::vector<ProvenStep>>(proof);
    take_steps(steps, world, true);
    content.run.insert(content.run.end(), steps.begin(), steps.end());
    return std::nullopt;
  }

  Fault carry_out_step(const WrittenLine& line, const Directive& directive, World& world, SceneContent& content) {
    StepProof proof = prove_step(world.board, directive, world.names);
    if (auto* fault = std::get_if<BuildStop>(&proof)) return placed(line, std::move(*fault));
    auto& steps = std::get<std::vector<ProvenStep>>(proof);
    if (!content.before_steps) content.before_steps = world.board.position;
    const bool is_balance = std::any_of(steps.begin(), steps.end(), [](const ProvenStep& at) { return std::holds_alternative<BalanceReason>(at.step.reason); });
    take_steps(steps, world, !is_balance && !content.has_question);
    for (ProvenStep& at : steps) {
      const std::string by = std::holds_alternative<BalanceReason>(at.step.reason) ? balance_of(at, directive, world) : std::string();
      if (!by.empty()) world.used.insert_or_assign(by, UsedBalance{at.before, at.step});
      content.by.push_back(by);
      content.steps.push_back(std::move(at));
    }
    return std::nullopt;
  }
  // Which balance of the lesson the step was taken by.
  static std::string balance_of(const ProvenStep& at, const Directive& directive, const World& world) {
    if (world.names.balance(directive.name) != nullptr) return directive.name;
    for (const NamedBalance& balance : world.names.balances) {
      if (balance.weights == std::get<BalanceReason>(at.step.reason).weights) return balance.name;
    }
    return {};
  }

  Fault show_solution(const WrittenLine& line, const World& world) {
    if (!world.board.truth) return stop_on(line, Kind::kUnfit, "the grid of this scene has more than one solution", "leave @solution out");
    Figure answer(world.board.position);
    Position solved = Position(answer.position.shape());
    for (const Cell cell : answer.position.givens()) solved.place_given(cell, *answer.position.digit_at(cell));
    for (const Cell cell : solved.open()) solved.place(cell, world.board.truth->at(cell));
    answer.position = std::move(solved);
    answer.title = speaker_.words().say("page.solution");
    answer.language = lesson_.language;
    describe(answer);
    scene_.answer = std::move(answer);
    return std::nullopt;
  }

  // Takes a grid of the teacher's over: it must belong to the puzzle and leave the solution open.
  Fault set_grid(const WrittenLine& line, const Position& grid, World& world) {
    const Position& now = world.board.position;
    Position taken(now.shape());
    for (const Cell cell : now.givens()) {
      if (grid.digit_at(cell) != now.digit_at(cell)) return stop_on(line, Kind::kUnfit, "the grid has another digit in " + now.shape().name_of(cell) + " than the puzzle", "use @aside for a grid of its own");
      taken.place_given(cell, *now.digit_at(cell));
    }
    for (const Cell cell : taken.open()) {
      if (const auto digit = grid.digit_at(cell)) taken.place(cell, *digit);
    }
    for (const Cell cell : now.shape().all_cells()) {
      if (!grid.candidates(cell).has(world.board.truth->at(cell))) {
        return stop_on(line, Kind::kRefuted, "the grid leaves out the true digit of " + now.shape().name_of(cell), "put it back");
      }
      for (const Digit digit : taken.candidates(cell) - grid.candidates(cell)) taken.eliminate({cell, digit});
    }
    world.board.position = std::move(taken);
    world.is_begun = true;
    return std::nullopt;
  }

  // ---- claims --------------------------------------------------------------------------------------------------------

  Fault ask(const WrittenLine& line, const Directive& directive, World& world) {
    ++claims_;
    AskedClaim asked{directive.claim_text, directive.footing_text, Verdict::kProved, {}, line.line, claims_, !only_ || *only_ == claims_, {}};
    world.claimed += to_text(claims_) + " " + to_candidate_text(world.board.position) + "\n" + line.text + "\n";
    Fault fault = asked.is_asked ? judge(line, directive, world, asked) : std::nullopt;
    const bool is_flaw = fault && (fault->kind == Kind::kRefuted || fault->kind == Kind::kOpen);
    if (fault && (!is_review_ || !is_flaw)) return fault;
    if (is_review_) asked.key = key_of(line, directive, world);
    if (is_flaw) {
      asked.verdict = fault->kind == Kind::kRefuted ? Verdict::kRefuted : Verdict::kOpen;
      asked.reason = fault->error.hint;
      flaws_.insert(claims_);
    } else {
      world.claims.push_back({claims_, directive.claim});
    }
    scene_.claims.push_back(std::move(asked));
    return std::nullopt;
  }

  // Everything the verdict depends on, candidates too: earlier claims only where the claim rests on them.
  std::string key_of(const WrittenLine& line, const Directive& directive, const World& world) const {
    const bool rests_on_claims = directive.footing.has_earlier || !directive.footing.claims.empty();
    return sha256_base64(lesson_.language + "\n" + to_candidate_text(world.board.position) + "\n" + world.named + (rests_on_claims ? world.claimed : line.text));
  }

  // Proved: its reason goes into `asked`.
  Fault judge(const WrittenLine& line, const Directive& directive, const World& world, AskedClaim& asked) const {
    Ground ground;
    Spare spare;
    if (auto fault = resolve(line, directive.footing, world, ground, spare)) return fault;
    const auto answer = judge_claim(world.board, directive.claim, ground, spare);
    if (!answer) return stop_on(line, Kind::kOpen, answer.error().message, answer.error().hint);
    const Shape& shape = world.board.position.shape();
    if (answer->verdict == Verdict::kRefuted) return stop_on(line, Kind::kRefuted, "this claim is false: " + directive.claim_text, counter_words(shape, *answer, "these digits would fit the footing and break it"));
    if (answer->verdict == Verdict::kOpen) {
      return stop_on(line, Kind::kOpen, "this claim does not follow from its footing: " + directive.claim_text, counter_words(shape, *answer, "these digits fit the footing and break it"));
    }
    asked.reason = reason_words(shape, *answer);
    return std::nullopt;
  }

  Fault resolve(const WrittenLine& line, const Footing& footing, const World& world, Ground& ground, Spare& spare) const {
    ground.has_marks = footing.has_marks;
    ground.houses = footing.houses;
    for (std::size_t i = 0; i < world.names.balances.size(); ++i) {
      const bool is_in = std::find(footing.balances.begin(), footing.balances.end(), static_cast<int>(i)) != footing.balances.end();
      (is_in ? ground.balances : spare.balances).push_back(world.names.balances[i]);
    }
    for (const EarlierClaim& claim : world.claims) {
      const bool is_in = footing.has_earlier || std::find(footing.claims.begin(), footing.claims.end(), claim.number) != footing.claims.end();
      (is_in ? ground.claims : spare.claims).push_back(claim);
    }
    for (const int number : footing.claims) {
      const bool is_here = std::any_of(world.claims.begin(), world.claims.end(), [number](const EarlierClaim& claim) { return claim.number == number; });
      if (is_here) continue;
      // Only a review comes past a claim that does not hold.
      if (flaws_.contains(number)) return stop_on(line, Kind::kOpen, "claim " + to_text(number) + " does not hold", "it rests on claim " + to_text(number) + ", which does not hold; mend that one first");
      return stop_on(line, Kind::kUnfit, "claim " + to_text(number) + " is about another grid", "claims of an aside count for that aside only");
    }
    return std::nullopt;
  }

  static std::string counter_words(const Shape& shape, const ClaimAnswer& answer, const std::string& what) {
    std::vector<std::string> parts;
    if (!answer.counter.empty()) parts.push_back(what + ": " + conclusions_text(shape, answer.counter, {}));
    if (!answer.additions.empty()) {
      const Addition& first = answer.additions.front();
      parts.push_back("it would follow with " + (first.elimination ? conclusions_text(shape, {}, {*first.elimination}) : facts_of(shape, first)) + " as well");
    }
    if (!parts.empty()) return joined(parts, "; ");
    return answer.verdict == Verdict::kRefuted ? "the solution itself breaks it; check the cells and the digits" : "check the cells and the digits";
  }
  static std::string facts_of(const Shape& shape, const Addition& addition) { return Speaker("en").facts(shape, addition.facts); }

  std::string reason_words(const Shape& shape, const ClaimAnswer& answer) const {
    if (!answer.certificate || answer.certificate->facts.empty()) return speaker_.words().say("claim.follows.alone");
    return speaker_.words().say("claim.follows", {{"facts", speaker_.facts(shape, answer.certificate->facts)}});
  }

  const Lesson& lesson_;
  Speaker speaker_;
  bool is_review_ = false;
  std::optional<int> only_;
  std::optional<World> main_;
  Document out_;
  Scene scene_;
  std::string words_;
  WrittenLine::Kind last_ = WrittenLine::Kind::kBreak;
  std::map<std::string, int> ids_;
  int claims_ = 0;
  std::set<int> flaws_;  // numbers of the claims that do not hold
};

}  // namespace

BuildResult build_lesson(const Lesson& lesson) {
  LessonBuilder builder(lesson);
  if (auto stop = builder.build()) return std::move(*stop);
  return std::move(builder.document());
}

LessonReview review_lesson(const Lesson& lesson, std::optional<int> only) {
  LessonBuilder builder(lesson, only);
  std::optional<BuildStop> stop = builder.build();
  return {std::move(builder.document()), std::move(stop)};
}

}  // namespace cp
