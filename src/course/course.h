// SPDX-License-Identifier: Apache-2.0
// Which puzzles, in which order, teach a list of ideas? Chosen from surveyed puzzles so that each lesson needs exactly one
// new idea, the load rises smoothly, and the boards do not look alike. Every choice says why.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "scan/survey_record.h"

namespace cp {

// A puzzle one may choose, with where it came from (the number of its line).
struct CourseCandidate {
  SurveyRecord record;
  std::uint64_t line = 0;
};

struct CourseWish {
  std::vector<std::string> ideas;    // techniques, families, "uniqueness", "balance", in the order of teaching; empty: all
                                     // techniques that some puzzle needs as its only new one, the cheapest first
  std::vector<std::string> assumes;  // what pupils bring along; empty: "single"
  std::size_t most_lessons = 12;     // when no ideas are named
};

struct CourseLesson {
  std::string idea;
  std::size_t candidate = 0;              // index
  std::vector<std::string> new_techniques;  // on its path, all of this idea
  std::vector<std::string> known = {};    // what was assumed or taught before it
  int alternatives = 0;                   // other puzzles with exactly this new idea
  // What spoke for it and against it, in points; 0 is best. The course has the least sum that the search finds.
  int own_points = 0;
  int rise_points = 0;
  int look_points = 0;
  std::string why;                        // the same in sentences
};

// An idea for which there is no puzzle.
struct CourseGap {
  std::string idea;
  int with_others = 0;             // solved puzzles that use it, together with something else that is new
  std::vector<std::string> others;  // what most often
  std::string why;
};

struct Course {
  std::vector<CourseLesson> lessons;
  std::vector<CourseGap> gaps;
  int usable = 0;   // proper puzzles with a path to the solution
};

// Only proper puzzles whose path is solved take part. Same candidates in the same order, same course.
// Error kBadName when a name means nothing.
Result<Course> choose_course(const std::vector<CourseCandidate>& candidates, const CourseWish& wish);

// The text of about.series for it (docs/formats/series.md).
std::string about_course(const Course& course, const CourseWish& wish, const std::string& title, const std::string& language);

}  // namespace cp
