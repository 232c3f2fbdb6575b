// SPDX-License-Identifier: Apache-2.0
#include "api/commands.h"
#include "api/parts.h"
#include "base/text.h"
#include "exact/minimal.h"
#include "grid/notation.h"

namespace cp::api {

namespace {

using Solutions = Properness::Solutions;

std::string text_of(const Position& position, Solutions solutions, bool is_minimal_puzzle) {
  if (position.has_clash()) return "No puzzle: " + clash_in_words(position) + ".";
  if (solutions == Solutions::kNone) return "There is no solution.";
  if (solutions == Solutions::kMany) return "There is more than one solution.";
  return std::string("Proper: there is exactly one solution. ") +
         (is_minimal_puzzle ? "Minimal: no given can be taken away." : "Not minimal: some given can be taken away.");
}

}  // namespace

Answer check(const CheckRequest& request) {
  const auto position = parse_position(request.puzzle);
  if (!position) return refuse(position.error(), "puzzle");
  const Properness found = properness_of(*position);
  if (found.solutions == Solutions::kUnknown) {
    return refuse(Error{ErrorCode::kLimit, "the search for a second solution was given up", "add givens: this grid leaves too much open", {}}, "puzzle");
  }
  const bool is_one = found.solutions == Solutions::kOne;
  const bool minimal = is_one && is_minimal(*position);
  Answer answer;
  answer.json["shape"] = position->shape().name();
  answer.json["givens"] = position->givens().size();
  answer.json["solutions"] = name_of(found.solutions);
  if (is_one) answer.json["solution"] = found.grids.front().to_line();
  answer.json["minimal"] = minimal;
  answer.json["text"] = text_of(*position, found.solutions, minimal);
  answer.outcome = is_one ? Outcome::kDone : Outcome::kRefuted;
  return answer;
}

}  // namespace cp::api
