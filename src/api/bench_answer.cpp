// SPDX-License-Identifier: Apache-2.0
// The signature takes in, for every position: the nodes and the number of solutions of the exact search, every step of
// the path with its conclusions, and the weights of every balance. The lines per technique tell which room moved.
#include <map>

#include "api/bench_positions.h"
#include "api/commands.h"
#include "api/parts.h"
#include "api/signature.h"
#include "base/text.h"
#include "deduce/basics.h"
#include "grid/notation.h"
#include "path/path.h"

namespace cp::api {

namespace {

constexpr std::uint64_t kMostSolutions = 200;
constexpr std::uint64_t kMostNodes = 100'000;
constexpr std::size_t kQuickStride = 10;  // the quick bench takes every tenth position

struct Tally {
  std::int64_t fired = 0;
  std::int64_t conclusions = 0;
};

// By technique id, so in a defined order.
using Tallies = std::map<std::string, Tally, std::less<>>;

void add_candidates(Signature& signature, const std::vector<Candidate>& candidates) {
  signature.add(static_cast<std::int64_t>(candidates.size()));
  for (const Candidate& candidate : candidates) {
    signature.add(candidate.cell.index);
    signature.add(candidate.digit.index);
  }
}

void add_step(Signature& signature, const Step& step, Tallies& tallies) {
  signature.add(step.technique);
  add_candidates(signature, step.placements);
  add_candidates(signature, step.eliminations);
  if (const auto* reason = std::get_if<BalanceReason>(&step.reason)) {
    signature.add(reason->level);
    for (const auto& [house, weight] : reason->weights) {
      signature.add(house.index);
      signature.add(weight);
    }
  }
  Tally& tally = tallies[std::string(step.technique)];
  ++tally.fired;
  tally.conclusions += static_cast<std::int64_t>(step.placements.size() + step.eliminations.size());
}

// One position: its own signature, and what it adds to the tallies.
Json run(const BenchPosition& given, const Position& position, Signature& all, Tallies& tallies) {
  Signature signature;
  const SolutionCount counted = count_solutions(position, kMostSolutions, kMostNodes);
  signature.add(static_cast<std::int64_t>(counted.nodes));
  signature.add(static_cast<std::int64_t>(counted.count));
  signature.add(static_cast<std::int64_t>(counted.end));
  Json line = Json::object();
  line["name"] = given.name;
  line["nodes"] = counted.nodes;
  line["solutions"] = counted.count;
  // Once with the basics and balances alone, so that balances are met, and once with everything.
  for (const bool whole : {false, true}) {
    PathOptions options;
    options.most_free_slack = given.most_free_slack;
    if (!whole) {
      options.only = basic_families();
      options.only.emplace_back(kBalanceId);
    }
    const auto path = find_path(position, options);
    if (!path) continue;
    for (const PathStep& at : path->steps) add_step(signature, at.step, tallies);
    signature.add(static_cast<std::int64_t>(path->end));
    signature.add(to_candidate_text(path->end_position));
    line["steps"] = path->steps.size();
    line["solved"] = path->end == PathEnd::kSolved;
  }
  line["signature"] = std::to_string(signature.value());
  all.add(static_cast<std::int64_t>(signature.value()));
  return line;
}

}  // namespace

Answer bench(const BenchRequest& request) {
  Signature signature;
  Tallies tallies;
  for (const Technique& technique : catalogue()) tallies[std::string(technique.id)];
  tallies[std::string(kBalanceId)];
  Json positions = Json::array();
  const auto all = bench_positions();
  for (std::size_t i = 0; i < all.size(); i += request.quick ? kQuickStride : 1) {
    const auto position = parse_position(all[i].puzzle);
    if (!position) {
      return refuse(Error{ErrorCode::kBug, "bench position " + std::string(all[i].name) + " cannot be read: " + position.error().message, "", {}});
    }
    positions.push_back(run(all[i], *position, signature, tallies));
  }
  Answer answer;
  answer.json["positions"] = std::move(positions);
  Json techniques = Json::array();
  for (const auto& [id, tally] : tallies) {
    Json line = Json::object();
    line["technique"] = id;
    line["fired"] = tally.fired;
    line["conclusions"] = tally.conclusions;
    techniques.push_back(std::move(line));
  }
  answer.json["techniques"] = std::move(techniques);
  // As text: a JSON reader may not keep 64 bits.
  answer.json["signature"] = std::to_string(signature.value());
  return answer;
}

}  // namespace cp::api
