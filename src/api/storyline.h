// SPDX-License-Identifier: Apache-2.0
// Which balance is a lesson about, and how does the path come to it?
#pragma once

#include "path/path.h"

namespace cp::api {

// A path with the step that the lesson is about. The path goes on after it, to the end or as far as it gets.
struct Storyline {
  Path path;
  std::size_t key = 0;     // that step
  bool is_needed = true;   // the plainer steps had come to an end there
};

// About the first balance that the path needs. When it needs none: the best one with houses in both pans, where singles, then
// locked candidates, then subsets end, or else at the earliest position along the path that has one. Error kLimit when none does.
Result<Storyline> storyline_of(const Position& puzzle, int most_free_slack);

// About the balance with these weights: where the path first needs a balance if it says something there, otherwise at the first of
// those ends, or else at the earliest position, where it does. Error kLimit when it says nothing anywhere along the path.
Result<Storyline> storyline_on(const Position& puzzle, const std::vector<Weight>& weights, int most_free_slack);

// About a technique of the catalogue: singles, locked candidates, subsets and what else it takes until it fires, then its easiest instance, then the easiest way on. Error kLimit
// when it never does.
Result<Storyline> storyline_with(const Position& puzzle, std::string_view technique, int most_free_slack);

}  // namespace cp::api
