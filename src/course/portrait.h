// SPDX-License-Identifier: Apache-2.0
// A collection at one glance: how its puzzles are spread over the measure, the techniques and the balances.
#pragma once

#include <map>

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
  // "1000 puzzles, 990 of them proper; 2 lines that are none."
  [[nodiscard]] std::string words() const;

 private:
  int puzzles_ = 0;
  int proper_ = 0;
  int faults_ = 0;
  // How many puzzles have each value; charts() puts values together.
  std::map<int, int> givens_;
  std::map<int, int> hardest_;
  std::map<int, int> effort_;
  std::map<std::string, int> ends_;
  std::map<std::string, int> techniques_;
  std::map<std::string, int> kinds_;
};

// One file, no script, nothing from outside; it reads well in light and dark and on paper.
std::string portrait_html(const std::string& title, const Portrait& portrait);

// The map of a course over these candidates.
CourseMap map_of(const Course& course, const std::vector<CourseCandidate>& candidates, const std::string& title);

}  // namespace cp
