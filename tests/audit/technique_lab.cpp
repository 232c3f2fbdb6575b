// SPDX-License-Identifier: Apache-2.0
// A bench for the author of a technique. For the ids named it looks at random states of 4x4, 6x6 and 9x9 puzzles and of
// noise, and reports: wrong conclusions (against all solutions), reasons that do not replay (in verify and in the
// oracle), differences from the slow twin, differences in another world, and how long a call takes.
//
//   technique_lab ID... [--puzzles N] [--seed N] [--twins N] [--no-noise]
//       N puzzles of each shape (default 20; 9x9 paths are long); --twins N compares every N-th state with the twin (4)
//   technique_lab ID --cases SHAPE [--seed N] [--count N]
//       drafts of cases: the technique in its shortest form, and near misses
//   technique_lab ID --at POSITION
//       what the technique says there; the position as text, candidates and all
#include <chrono>
#include <cstring>

#include "audit/audit_judge.h"
#include "audit/audit_report.h"
#include "audit/audit_twins.h"
#include "audit/audit_worlds.h"
#include "audit/case_drafts.h"
#include "verify/step_check.h"

namespace {

using namespace cp;
using namespace cp::audit;
using Clock = std::chrono::steady_clock;

struct Wish {
  std::vector<const Technique*> techniques;
  int puzzles = 20;
  int twins = 4;
  bool noise = true;
  std::uint64_t seed = 1;
  std::string cases;
  std::string at;
  int count = 5;
};

struct Findings {
  long long states = 0, firings = 0, conclusions = 0, compared = 0, instances = 0, faults = 0;
  std::vector<double> first_us, all_us;
};

constexpr long long kFaultsShown = 3;

class Lab {
 public:
  Lab(const Technique& technique, std::uint64_t seed, int twins)
      : technique_(technique), index_(static_cast<std::size_t>(&technique - catalogue().data())), twins_(twins), rng_(seed) {}

  // False when enough is wrong.
  bool look_at(const Position& position, bool is_noise) {
    ++found_.states;
    const std::vector<Step> steps = timed(position);
    if (!is_noise) judge(position, steps);
    for (const Step& step : steps) replay(position, step);
    if (found_.states % twins_ == 0 || (!steps.empty() && found_.instances < 50)) compare(position, steps);
    if (found_.states % 8 == 0) look_through_world(position, steps);
    return found_.faults < kFaultsShown;
  }
  [[nodiscard]] Findings& found() { return found_; }

 private:
  std::vector<Step> timed(const Position& position) {
    const auto start = Clock::now();
    FirstStep first;
    technique_.find(position, first);
    const auto middle = Clock::now();
    std::vector<Step> steps = steps_of(technique_, position);
    const auto end = Clock::now();
    found_.first_us.push_back(std::chrono::duration<double, std::micro>(middle - start).count());
    found_.all_us.push_back(std::chrono::duration<double, std::micro>(end - middle).count());
    if (first.found != !steps.empty() || (first.found && step_as_text(position.shape(), first.first) != step_as_text(position.shape(), steps[0]))) fault(position, "the first step is another");
    return steps;
  }
  void judge(const Position& position, const std::vector<Step>& steps) {
    std::size_t count = 0;
    const auto possible = steps.empty() ? std::nullopt : possible_digits(position, count);
    if (!possible || (technique_.needs_unique && (count != 1 || !has_proper_givens(position)))) return;
    for (const Step& step : steps) {
      ++found_.firings;
      found_.conclusions += static_cast<long long>(step.eliminations.size() + step.placements.size());
      if (is_wrong(step, *possible)) fault(position, "WRONG " + step_as_text(position.shape(), step));
    }
  }
  void replay(const Position& position, const Step& step) {
    if (const std::string why = oracle::replay_fault(position, step); !why.empty()) fault(position, "oracle: " + why + ": " + step_as_text(position.shape(), step));
    if (const CheckResult result = check_step(position, step); !result.holds) fault(position, "verify: " + result.why + ": " + step_as_text(position.shape(), step));
  }
  void compare(const Position& position, const std::vector<Step>& steps) {
    ++found_.compared;
    const oracle::Conclusions slow = kTwins[index_](position);
    const oracle::Conclusions fast = conclusions_of(steps);
    found_.instances += static_cast<long long>(slow.size());
    if (fast == slow) return;
    std::string text = "twin " + to_text(static_cast<long long>(slow.size())) + ", technique " + to_text(static_cast<long long>(fast.size()));
    for (const auto& each : slow) text += fast.count(each) < slow.count(each) ? "\n  only the twin: " + shown(position, each) : "";
    for (const auto& each : fast) text += slow.count(each) < fast.count(each) ? "\n  only the technique: " + shown(position, each) : "";
    fault(position, text);
  }
  void look_through_world(const Position& position, const std::vector<Step>& steps) {
    const World world(position.shape(), rng_);
    if (world.map(conclusions_of(steps)) != conclusions_of(steps_of(technique_, world.map(position)))) fault(position, "says something else in another world");
  }
  static std::string shown(const Position& position, const oracle::Conclusion& conclusion) {
    Step step;
    step.placements.assign(conclusion.placed.begin(), conclusion.placed.end());
    step.eliminations.assign(conclusion.struck.begin(), conclusion.struck.end());
    return step_as_text(position.shape(), step);
  }
  void fault(const Position& position, const std::string& what) {
    if (++found_.faults > kFaultsShown) return;
    std::printf("FAULT %s: %s\n%s\n", std::string(technique_.id).c_str(), what.c_str(), to_candidate_text(position).c_str());
  }

  const Technique& technique_;
  std::size_t index_;
  long long twins_;
  Rng rng_;
  Findings found_;
};

double quantile(std::vector<double>& values, double share) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(share * static_cast<double>(values.size() - 1))];
}

bool work_on(const Technique& technique, const Wish& wish) {
  Lab lab(technique, wish.seed, wish.twins);
  for (const std::string_view shape : {"4x4", "6x6", "9x9"}) {
    visit_states({shape, wish.puzzles, 6}, wish.seed, [&](const AuditState& state) { return lab.look_at(state.position, false); });
  }
  Rng rng(wish.seed);
  for (int i = 0; wish.noise && i < wish.puzzles * 3 && lab.found().faults < kFaultsShown; ++i) {
    for (const std::string_view shape : {"4x4", "6x6", "9x9"}) lab.look_at(noise(*find_shape(shape), rng), true);
  }
  Findings& found = lab.found();
  std::printf("%-28s states %lld, firings %lld (%lld conclusions), twin compared %lld (%lld instances), faults %lld; first us median %.0f p95 %.0f, all median %.0f p95 %.0f max %.0f\n",
              std::string(technique.id).c_str(), found.states, found.firings, found.conclusions, found.compared, found.instances, found.faults,
              quantile(found.first_us, 0.5), quantile(found.first_us, 0.95), quantile(found.all_us, 0.5), quantile(found.all_us, 0.95), quantile(found.all_us, 1));
  return found.faults == 0;
}

int show_at(const Wish& wish) {
  const auto position = parse_position(wish.at);
  if (!position) return std::fprintf(stderr, "%s\n", position.error().message.c_str()), 64;
  for (const Technique* technique : wish.techniques) {
    for (const Step& step : steps_of(*technique, *position)) std::printf("%s\n", step_as_text(position->shape(), step).c_str());
  }
  return 0;
}

[[noreturn]] void refuse(const std::string& what) {
  std::fprintf(stderr, "technique_lab: %s; the head of tests/audit/technique_lab.cpp says how\n", what.c_str());
  std::exit(64);
}

Wish read_wish(int count, char** words) {
  Wish wish;
  for (int i = 1; i < count; ++i) {
    const std::string word = words[i];
    const bool has_more = i + 1 < count;
    if (word == "--no-noise") wish.noise = false;
    else if (word == "--puzzles" && has_more) wish.puzzles = std::atoi(words[++i]);
    else if (word == "--twins" && has_more) wish.twins = std::max(1, std::atoi(words[++i]));
    else if (word == "--count" && has_more) wish.count = std::atoi(words[++i]);
    else if (word == "--seed" && has_more) wish.seed = std::stoull(words[++i]);
    else if (word == "--cases" && has_more) wish.cases = words[++i];
    else if (word == "--at" && has_more) wish.at = words[++i];
    else if (const auto technique = find_technique(word); technique.is_ok()) wish.techniques.push_back(*technique);
    else refuse("'" + word + "' is not understood");
  }
  if (wish.techniques.empty()) refuse("which technique?");
  if (!wish.cases.empty() && find_shape(wish.cases) == nullptr) refuse("'" + wish.cases + "' is not a shape");
  return wish;
}

}  // namespace

int main(int count, char** words) {
  const Wish wish = read_wish(count, words);
  if (!wish.at.empty()) return show_at(wish);
  bool is_good = true;
  for (const Technique* technique : wish.techniques) {
    if (!wish.cases.empty()) print_case_drafts(*technique, wish.cases, wish.seed, wish.count);
    else is_good = work_on(*technique, wish) && is_good;
  }
  return is_good ? 0 : 1;
}
