// SPDX-License-Identifier: Apache-2.0
// What composing costs for each bundled plan, in processor time: by trial (as the program does it), and with the solution and the
// givens of the remainders chosen by a SAT solver, the rest by trial all the same. Both run in turn.
//
//   compose_bench [PUZZLES] [PLANS-FOLDER]
#include <cadical.hpp>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <set>
#include <sstream>

#include "compose/crew.h"
#include "cpu_seconds.h"
#include "exact/solve.h"
#include "grid/canonical_form.h"
#include "grid/notation.h"
#include "oracle/cadical_oracle.h"

namespace {

using namespace cp;

struct Outcome {
  std::size_t found = 0;
  std::uint64_t tries = 0;
  double time = 0;
};

class Never final : public ComposeWatch {
 public:
  bool goes_on(const ComposeState&) override { return true; }
};

Outcome by_trial(const Workshop& workshop, std::size_t wanted, std::uint64_t seed) {
  Never watch;
  ComposeState state;
  state.seed = seed;
  const double start = bench::cpu_seconds();
  compose(workshop, state, wanted, 100'000, 1, watch);
  return {state.found.size(), state.reached[0], bench::cpu_seconds() - start};
}

// Solution and first givens from a SAT model: the grid, a variable for each given of the remainders, the cells of each bounded region
// drawn by lot, and every copy of two digits in the remainders given, so that nothing is left of the tally for them.
class SatLayout {
 public:
  explicit SatLayout(const Plan& plan) : plan_(plan) {}

  std::optional<Position> lay_out(const std::vector<Weight>& weights, Rng& rng) {
    CaDiCaL::Solver solver;
    solver.set("seed", static_cast<int>(rng.below(1'000'000)));
    for (int i = 1; i <= 729; ++i) solver.phase(rng.below(9) == 0 ? i : -i);
    encode_grid(solver);
    const Weighing weighing = weigh(Position(plan_shape()), weights);
    for (const GivenBounds& each : bounds_of(plan_, weights)) bound(solver, each, rng);
    spend_two_digits(solver, weighing, rng);
    if (solver.solve() != 10) return std::nullopt;
    Position puzzle(plan_shape());
    for (const Cell cell : plan_shape().all_cells()) {
      if (solver.val(given(cell)) < 0) continue;
      for (const Digit digit : plan_shape().digits()) {
        if (solver.val(holds(cell, digit)) > 0) puzzle.place_given(cell, digit);
      }
    }
    grid_ = FullGrid(plan_shape());
    for (const Cell cell : plan_shape().all_cells()) {
      for (const Digit digit : plan_shape().digits()) {
        if (solver.val(holds(cell, digit)) > 0) grid_->set(cell, digit);
      }
    }
    return puzzle;
  }
  [[nodiscard]] const FullGrid& grid() const { return *grid_; }

 private:
  static int holds(Cell cell, Digit digit) { return cell.index * 9 + digit.index + 1; }
  static int given(Cell cell) { return 730 + cell.index; }
  static void clause(CaDiCaL::Solver& solver, const std::vector<int>& literals) {
    for (const int literal : literals) solver.add(literal);
    solver.add(0);
  }
  static void exactly_one(CaDiCaL::Solver& solver, const std::vector<int>& literals) {
    clause(solver, literals);
    for (std::size_t i = 0; i < literals.size(); ++i) {
      for (std::size_t j = i + 1; j < literals.size(); ++j) clause(solver, {-literals[i], -literals[j]});
    }
  }
  static void encode_grid(CaDiCaL::Solver& solver) {
    const Shape& shape = plan_shape();
    for (const Cell cell : shape.all_cells()) {
      std::vector<int> literals;
      for (const Digit digit : shape.digits()) literals.push_back(holds(cell, digit));
      exactly_one(solver, literals);
    }
    for (int house = 0; house < shape.house_count(); ++house) {
      for (const Digit digit : shape.digits()) {
        std::vector<int> literals;
        for (const Cell cell : shape.cells(House(house))) literals.push_back(holds(cell, digit));
        exactly_one(solver, literals);
      }
    }
  }
  // Which cells of the region stay empty is drawn by lot; the model then keeps to it.
  static void bound(CaDiCaL::Solver& solver, const GivenBounds& bounds, Rng& rng) {
    std::vector<Cell> cells;
    for (const Cell cell : bounds.cells) cells.push_back(cell);
    rng.shuffle(cells);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (static_cast<int>(i) < bounds.least) clause(solver, {given(cells[i])});
      else if (static_cast<int>(i) >= bounds.most) clause(solver, {-given(cells[i])});
    }
  }
  void spend_two_digits(CaDiCaL::Solver& solver, const Weighing& weighing, Rng& rng) {
    std::vector<Digit> digits;
    for (const Digit digit : plan_shape().digits()) digits.push_back(digit);
    rng.shuffle(digits);
    CellSet outside = plan_shape().all_cells();
    for (int i = 0; i < 2; ++i) {
      for (const Cell cell : weighing.left | weighing.right) clause(solver, {-holds(cell, digits[static_cast<std::size_t>(i)]), given(cell)});
    }
    outside -= weighing.left | weighing.right;
    for (const Cell cell : outside) clause(solver, {-given(cell)});  // those come by trial
    // No more of the right remainder than that.
    for (const Cell cell : weighing.right) {
      clause(solver, {-given(cell), holds(cell, digits[0]), holds(cell, digits[1])});
    }
  }

  const Plan& plan_;
  std::optional<FullGrid> grid_;
};

Outcome by_model(const Plan& plan, const Workshop& workshop, std::size_t wanted, std::uint64_t seed) {
  Rng rng(seed);
  Outcome outcome;
  std::set<std::string> forms;
  const double start = bench::cpu_seconds();
  for (; outcome.tries < 20'000 && forms.size() < wanted; ++outcome.tries) {
    const auto weights = pick_houses(plan.idea, rng);
    SatLayout layout(plan);
    const auto puzzle = weights ? layout.lay_out(*weights, rng) : std::nullopt;
    if (!puzzle) continue;
    const Attempt attempt = workshop.finish(layout.grid(), puzzle->givens(), *weights, rng);
    if (attempt.way && oracle::CadicalOracle(attempt.puzzle).count(2) == 1) forms.insert(canonical_form(attempt.puzzle).text);
  }
  outcome.found = forms.size();
  outcome.time = bench::cpu_seconds() - start;
  return outcome;
}

void print(const char* way, const Outcome& outcome) {
  std::printf("  %-6s %5zu found, %7llu tries, %8.2f s, %8.1f tries a second, %7.2f puzzles a second\n", way, outcome.found, static_cast<unsigned long long>(outcome.tries), outcome.time,
              static_cast<double>(outcome.tries) / outcome.time, static_cast<double>(outcome.found) / outcome.time);
}

int run(std::size_t wanted, const std::string& folder) {
  for (const char* name : {"three_against_four", "four_against_four", "ring"}) {
    std::ifstream file(folder + "/" + name + ".plan");
    std::stringstream text;
    text << file.rdbuf();
    const auto plan = parse_plan(text.str());
    const auto ground = plan ? ground_of(*plan) : Result<PlanGround>(plan.error());
    if (!ground) {
      std::fprintf(stderr, "%s: %s\n", name, ground.error().message.c_str());
      return 1;
    }
    const Workshop workshop(*plan, *ground);
    std::printf("%s\n", name);
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      print("trial", by_trial(workshop, wanted, seed));
      print("model", by_model(*plan, workshop, wanted, seed));
    }
  }
  return 0;
}

}  // namespace

int main(int count, char** words) {
  const std::size_t wanted = count > 1 ? static_cast<std::size_t>(std::atoi(words[1])) : 10;
  return run(wanted, count > 2 ? words[2] : CP_SOURCE_DIR "/data/plans");
}
