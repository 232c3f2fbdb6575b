// SPDX-License-Identifier: Apache-2.0
// Finds a clear example of a technique for its card: along the easiest paths of random minimal puzzles and of hard
// ones, where nothing cheaper fires, the step of it with the fewest facts. Prints the example as Markdown on standard
// output and writes the figure. tools/write_cards.py calls it and puts the example into the card.
//
//   card_lab ID FIGURE.svg [--puzzles N] [--seed N]
//   card_lab --table        the catalogue as a table
#include <cstdio>
#include <fstream>
#include <optional>
#include <string>

#include "audit/rare_states.h"
#include "base/text.h"
#include "export/board_svg.h"
#include "lesson/figure.h"
#include "path/path.h"
#include "speak/step_text.h"

namespace {

using namespace cp;
using namespace cp::audit;

struct Example {
  Position before;
  Step step;
  Measure measure;
  bool is_at_rest = false;  // nothing cheaper fires
};

// Better: where it is needed, then fewer facts, then fewer candidates on the board, so that the figure is clear.
bool is_clearer(const Example& a, const Example& b) {
  if (a.is_at_rest != b.is_at_rest) return a.is_at_rest;
  if (a.measure.facts != b.measure.facts) return a.measure.facts < b.measure.facts;
  return a.before.candidate_count() < b.before.candidate_count();
}

class Search {
 public:
  explicit Search(const Technique& technique) : technique_(technique) {
    for (const Technique& each : catalogue()) {
      if (each.cost < technique.cost) cheaper_.techniques.push_back(&each);
    }
    std::stable_sort(cheaper_.techniques.begin(), cheaper_.techniques.end(), [](const Technique* a, const Technique* b) { return a->cost < b->cost; });
    cheaper_.balances = false;
  }

  // Goes along the path of cheaper steps; looks wherever none of them fires, and anywhere when `everywhere`.
  void walk(Position position, bool everywhere) {
    while (!position.is_complete() && !position.has_clash()) {
      const auto cheaper = easiest_step(position, cheaper_, 0);
      if (!cheaper || everywhere) look_at(position, !cheaper);
      if (!cheaper) {
        FirstStep first;
        technique_.find(position, first);
        if (!first.found) (*find_technique("hidden-single"))->find(position, first);  // a full house has nothing cheaper to walk with
        if (!first.found) return;
        apply(first.first, position);
        continue;
      }
      apply(cheaper->step, position);
    }
  }
  [[nodiscard]] const std::optional<Example>& best() const { return best_; }
  [[nodiscard]] int found() const { return found_; }

 private:
  void look_at(const Position& position, bool is_at_rest) {
    for (Step& step : some_steps_of(technique_, position, 40)) {
      ++found_;
      Example example{position, std::move(step), {}, is_at_rest};
      example.measure = measure(example.step, position, &technique_);
      if (!best_ || is_clearer(example, *best_)) best_ = std::move(example);
    }
  }
  const Technique& technique_;
  Selection cheaper_;
  std::optional<Example> best_;
  int found_ = 0;
};

std::optional<Example> find_example(const Technique& technique, int puzzles, std::uint64_t seed) {
  Search search(technique);
  Rng rng(seed);
  const Shape& shape = standard_shape();
  for (int i = 0; i < puzzles && search.found() < 60; ++i) search.walk(random_minimal_puzzle(shape, rng.next()), false);
  if (search.found() >= 3) return search.best();
  for (int i = 0; i < 9 * static_cast<int>(kRarePuzzles.size()); ++i) {
    int states = 0;
    visit_rare(seed, i, [&](const AuditState& state) {
      search.walk(state.position, true);
      return i % 3 != 0 && ++states < 12 && search.found() < 30;
    });
  }
  for (int i = 0; i < 150 && search.found() < 10; ++i) search.walk(random_minimal_puzzle(shape, rng.next()), true);
  return search.best();
}

int print_table() {
  for (const Technique& technique : catalogue()) {
    std::printf("%s\t%s\t%s\t%d\t%s\n", std::string(technique.family).c_str(), std::string(technique.id).c_str(), std::string(technique.name).c_str(), technique.cost,
                technique.needs_unique ? "yes" : "");
  }
  return 0;
}

int write_example(const Technique& technique, const std::string& file, int puzzles, std::uint64_t seed) {
  const auto example = find_example(technique, puzzles, seed);
  if (!example) return std::fprintf(stderr, "card_lab: no example of %s found\n", std::string(technique.id).c_str()), 1;
  std::ofstream out(file);
  out << board_svg(step_figure(example->step, example->before, std::string(technique.name)), SvgUse::kFile, std::string(technique.id));
  out.close();
  if (!out) return std::fprintf(stderr, "card_lab: %s cannot be written\n", file.c_str()), 1;
  std::printf("%s\n\n", step_text(example->step, example->before).c_str());
  const Measure& parts = example->measure;
  std::printf("Cost %d: %s, %s, %s, %s.\n\n", parts.cost, counted(parts.facts, "fact").c_str(), counted(parts.houses, "house").c_str(), counted(parts.cells, "cell").c_str(),
              counted(parts.digits, "digit").c_str());
  std::printf("```position\n%s```\n", to_candidate_text(example->before).c_str());
  return 0;
}

}  // namespace

int main(int count, char** words) {
  if (count == 2 && std::string(words[1]) == "--table") return print_table();
  int puzzles = 1'500;
  std::uint64_t seed = 1;
  for (int i = 3; i + 1 < count; i += 2) {
    const std::string word = words[i];
    if (word == "--puzzles") puzzles = std::atoi(words[i + 1]);
    if (word == "--seed") seed = std::stoull(words[i + 1]);
  }
  const auto technique = count >= 3 ? find_technique(words[1]) : Result<const Technique*>(Error{ErrorCode::kBadName, "which technique?", {}, {}});
  if (!technique) return std::fprintf(stderr, "card_lab: %s\n", technique.error().message.c_str()), 64;
  return write_example(**technique, words[2], puzzles, seed);
}
