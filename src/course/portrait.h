// SPDX-License-Identifier: Apache-2.0
// A collection at one glance: how its puzzles are spread over the measure, the techniques and the balances.
#pragma once

#include "course/chart.h"
#include "course/course.h"

namespace cp {

// Counts up what is said of each puzzle; records come one after the other and are not kept.
class Portrait {
 public:
  void add(const SurveyRecord& record);
  void add_fault() { ++faults_; }

  [[nodiscard]] int puzzles() const { return puzzles_; }
  // Givens, how the path ends, hardest step, effort, techniques used, best balances; those without a bar are left out.
  [[nodiscard]] std::vector<Chart> charts() const;
  // "1 000 puzzles, 990 of them proper, ...".
  [[nodiscard]] std::string words() const;

 private:
  using Counts = std::vector<std::pair<int, int>>;  // value, count; sorted
  static void count(Counts& counts, int value);

  int puzzles_ = 0;
  int proper_ = 0;
  int faults_ = 0;
  Counts givens_;
  Counts hardest_;  // by twenties
  Counts effort_;   // by hundreds
  std::vector<std::pair<std::string, int>> ends_;
  std::vector<std::pair<std::string, int>> techniques_;
  std::vector<std::pair<std::string, int>> kinds_;
};

// One file, no script, nothing from outside; it reads well in light and dark and on paper.
std::string portrait_html(const std::string& title, const Portrait& portrait);

// The map of a course over these candidates.
CourseMap map_of(const Course& course, const std::vector<CourseCandidate>& candidates, const std::string& title);

}  // namespace cp
