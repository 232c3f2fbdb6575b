// SPDX-License-Identifier: Apache-2.0
// The commands with typed requests, for shells in the same program. Each function answers one question; none reads a
// file, a clock or a global. The form of the answers is docs/formats/<command>.md.
//
// Every `puzzle` is a puzzle or a position in any form of docs/formats/position.md.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "api/answer.h"

namespace cp::api {

// Is it a puzzle, and a proper one? Refuted when it has no solution or several.
struct CheckRequest {
  std::string puzzle;
};
Answer check(const CheckRequest& request);

// The easiest steps to the solution. Open when they stop before it, refuted when they show that there is none.
struct PathRequest {
  std::string puzzle;
  std::vector<std::string> without = {};  // ids of techniques, families, "uniqueness" or "balance"
  int max_slack = 1;                      // free slack of balances, 0..2
  std::vector<std::string> only = {};     // the same names; empty: everything
};
Answer path(const PathRequest& request);

// Everything that fires now; with techniques named, every place where they sit, or how close they come.
struct SurveyRequest {
  std::string puzzle;
  std::vector<std::string> techniques = {};  // the same names; empty: the whole catalogue and the best balances
  bool after_basics = false;
  int max_slack = 1;
  int limit = 5;  // how many steps of each technique (and how many balances) to give; 0: all
};
Answer survey(const SurveyRequest& request);

// Is there a way through without these techniques?
struct NeededRequest {
  std::string puzzle;
  std::vector<std::string> techniques;    // at least one
  std::vector<std::string> without = {};  // not to be used either way
  int max_slack = 1;
};
Answer needed(const NeededRequest& request);

// What else proves this elimination?
struct AlternativesRequest {
  std::string puzzle;
  std::string eliminate;      // "r3c4=5" or "r3c4!=5": the candidate to fall; several digits: "r3c4=57"
  bool after_basics = false;
  int at_step = 0;            // 0: the position given; N: before step N of its path
  int max_slack = 1;
  int limit = 20;             // how many to give; 0: all
};
Answer alternatives(const AlternativesRequest& request);

// One balance, its houses named. Refuted when it shows that the position has no solution.
struct WeighRequest {
  std::string puzzle;
  std::string left;           // "r1,r2,3*c4"; a pan may be empty
  std::string right;
  bool after_basics = false;  // first singles, locked candidates, subsets and basic fish
  int level = 5;              // the highest level to try, 1..5
  bool why = false;           // when nothing falls: look for the single candidates whose fall would make it speak
};
Answer weigh(const WeighRequest& request);

// All balances that say something, best first.
struct FindRequest {
  std::string puzzle;
  bool after_basics = false;
  int max_slack = 1;  // free slack, 0..2
  int limit = 20;     // how many to give; 0: all
  int most_houses = 99;  // only balances of so few houses: a quick first look
};
Answer find(const FindRequest& request);

// A lesson on the key balance of the puzzle, as files. Open when no balance (or not the chosen one) says anything.
struct LessonRequest {
  std::string puzzle;
  std::string title;   // "": made from the balance
  bool notes = false;  // print the teacher's notes on the page too
  int max_slack = 1;
  std::string left = {};  // the balance of the lesson, when the teacher chooses it; both pans or neither
  std::string right = {};
  std::string idea = {};      // the id of a technique; empty or "balance": a balance
  std::string language = {};  // empty: English
  std::string source = {};    // where the puzzle comes from; empty: not known, and nothing is said of it
  // In a course: names that were taught before (techniques, families, groups), and what this lesson teaches besides its idea.
  // Nothing known: the lesson stands alone and needs families.
  std::vector<std::string> known = {};
  std::vector<std::string> teaches = {};
};
// The error of a language that drafts can not be written in; "" is English.
std::optional<Error> unspoken_language(std::string_view language);

Answer lesson(const LessonRequest& request);

// The first draft of a lesson as text (docs/formats/lesson_document.md). `notes` plays no part.
Answer lesson_draft(const LessonRequest& request);

// Builds a written lesson: every step and claim asked again. Refuted or open when one of them stops the build.
struct LessonTextRequest {
  std::string lesson;
  bool notes = false;  // print the teacher's notes on the page too
};
Answer lesson_check(const LessonTextRequest& request);
Answer lesson_build(const LessonTextRequest& request);  // the same, with the files

// A lesson that is being written: as much as can be shown, a verdict for every claim that was asked. Refuted or open when
// one of them does not hold.
struct LessonReviewRequest {
  std::string lesson;
  int only = -1;  // the number of the one claim to be asked; 0: none, -1: all
};
Answer lesson_review(const LessonReviewRequest& request);

// A series: several written lessons in an order in which each needs only what was taught before. Refuted when there is none.
struct SeriesRequest {
  struct Member {
    std::string name;  // of its file, without the ending
    std::string text;
  };
  std::string about;   // docs/formats/series.md; may be empty
  std::vector<Member> lessons;
};
Answer series_check(const SeriesRequest& request);

// Is it so? Refuted when it is false, open when the footing does not imply it.
struct ClaimRequest {
  std::string puzzle;
  std::string claim;         // docs/formats/claim.md; names may be given before it, separated by semicolons
  std::string footing = {};  // "rules", "r1,r2,ring"; empty: position and all rules
  bool after_basics = false;
  bool reveal = false;       // give the solution away
};
Answer claim(const ClaimRequest& request);

// The claims of a script, one after the other. Open or refuted when any of them is.
struct ClaimsRequest {
  std::string script;        // lines, or JSON
  std::string puzzle = {};   // empty: the script names it
  std::string footing = {};  // until the script says otherwise
  bool after_basics = false;
  bool reveal = false;
};
Answer claims(const ClaimsRequest& request);

// How many full grids a shape has.
struct CountRequest {
  std::string shape;
};
Answer count(const CountRequest& request);

// The signature: one number that changes when the behaviour of the engine changes.
struct BenchRequest {
  bool quick = false;  // every tenth position, with a signature of its own
};
Answer bench(const BenchRequest& request);

}  // namespace cp::api
