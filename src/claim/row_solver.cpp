// SPDX-License-Identifier: Apache-2.0
#include "claim/row_solver.h"

#include <algorithm>

namespace cp {

namespace {

constexpr std::uint64_t kLargestActivity = std::uint64_t{1} << 50;
constexpr std::uint64_t kFirstRestart = 120;
constexpr int kLearnedTag = -1;

}  // namespace

RowSolver::RowSolver(int variables)
    : trail_(variables),
      activity_(static_cast<std::size_t>(variables), 0),
      phase_(static_cast<std::size_t>(variables), 1),
      seen_(static_cast<std::size_t>(variables), 0),
      is_left_open_(static_cast<std::size_t>(variables), 0),
      model_(static_cast<std::size_t>(variables), 0) {}

int RowSolver::level_of(Lit lit) const {
  return levels_[static_cast<std::size_t>(trail_.place(variable_of(lit)))];
}

void RowSolver::note_levels() {
  auto next = std::upper_bound(level_starts_.begin(), level_starts_.end(), levels_.size());
  while (levels_.size() < trail_.trail().size()) {
    while (next != level_starts_.end() && *next <= levels_.size()) ++next;
    levels_.push_back(static_cast<int>(next - level_starts_.begin()));
  }
}

void RowSolver::bump(int variable) {
  auto& activity = activity_[static_cast<std::size_t>(variable)];
  activity += increment_;
  if (activity < kLargestActivity) return;
  for (std::uint64_t& other : activity_) other >>= 30;
  increment_ = std::max<std::uint64_t>(increment_ >> 30, 1);
}

void RowSolver::back_to_level(std::size_t level) {
  if (level >= level_starts_.size()) return;
  const std::size_t size = level_starts_[level];
  for (std::size_t i = size; i < trail_.trail().size(); ++i) {
    const Lit lit = trail_.trail()[i];
    phase_[static_cast<std::size_t>(variable_of(lit))] = is_true(lit) ? 1 : 0;
  }
  trail_.undo_to(size);
  levels_.resize(std::min(levels_.size(), size));
  level_starts_.resize(level);
}

// The first point through which everything since the last decision goes ("first unique implication point").
bool RowSolver::learn(int row) {
  note_levels();
  std::vector<Lit> because;
  trail_.explain(row, -1, because);
  int level = 0;
  for (const Lit lit : because) level = std::max(level, level_of(lit));
  if (level == 0) return false;
  std::vector<Lit> clause{0};
  std::vector<int> touched;
  int open = 0;
  std::size_t at = trail_.trail().size();
  Lit point = -1;
  for (;;) {
    for (const Lit lit : because) {
      char& seen = seen_[static_cast<std::size_t>(variable_of(lit))];
      const int its_level = level_of(lit);
      if (seen != 0 || its_level == 0) continue;
      seen = 1;
      touched.push_back(variable_of(lit));
      bump(variable_of(lit));
      if (its_level == level) ++open;
      else clause.push_back(opposite(lit));
    }
    do point = trail_.trail()[--at];
    while (seen_[static_cast<std::size_t>(variable_of(point))] == 0);
    if (--open == 0) break;
    trail_.explain(trail_.reason(variable_of(point)), point, because);
  }
  clause[0] = opposite(point);
  drop_implied(clause);
  for (const int variable : touched) seen_[static_cast<std::size_t>(variable)] = 0;
  increment_ += increment_ / 16;
  std::vector<int> levels;
  for (std::size_t i = 1; i < clause.size(); ++i) levels.push_back(level_of(clause[i]));
  std::sort(levels.begin(), levels.end());
  const int spread = static_cast<int>(std::unique(levels.begin(), levels.end()) - levels.begin());
  std::size_t back = 0;
  for (std::size_t i = 1; i < clause.size(); ++i) back = std::max(back, static_cast<std::size_t>(level_of(clause[i])));
  back_to_level(back);
  learned_.push_back(clause);
  spread_.push_back(spread);
  trail_.add_clause(clause, kLearnedTag);
  return true;
}

// A literal that follows from others of the clause need not be in it.
void RowSolver::drop_implied(std::vector<Lit>& clause) {
  std::vector<Lit> because;
  std::size_t kept = 1;
  for (std::size_t i = 1; i < clause.size(); ++i) {
    const int reason = trail_.reason(variable_of(clause[i]));
    bool is_implied = reason != RowTrail::kNoRow;
    if (is_implied) {
      trail_.explain(reason, opposite(clause[i]), because);
      for (const Lit lit : because) is_implied = is_implied && (seen_[static_cast<std::size_t>(variable_of(lit))] != 0 || level_of(lit) == 0);
    }
    if (!is_implied) clause[kept++] = clause[i];
  }
  clause.resize(kept);
}

// Which assumptions lead to the literal `failed` being false?
void RowSolver::take_core(Lit failed) {
  note_levels();
  core_ = {failed};
  std::vector<Lit> because;
  seen_[static_cast<std::size_t>(variable_of(failed))] = 1;
  for (std::size_t at = trail_.trail().size(); at-- > 0;) {
    const Lit lit = trail_.trail()[at];
    char& seen = seen_[static_cast<std::size_t>(variable_of(lit))];
    if (seen == 0) continue;
    seen = 0;
    if (level_of(lit) == 0) continue;
    if (trail_.reason(variable_of(lit)) == RowTrail::kNoRow) {
      core_.push_back(lit);
      continue;
    }
    trail_.explain(trail_.reason(variable_of(lit)), lit, because);
    for (const Lit earlier : because) seen_[static_cast<std::size_t>(variable_of(earlier))] = 1;
  }
}

int RowSolver::best_open_variable() const {
  int best = -1;
  std::uint64_t best_activity = 0;
  for (int variable = 0; variable < trail_.variables(); ++variable) {
    if (trail_.value(lit_of(variable, true)) != 0 || is_left_open_[static_cast<std::size_t>(variable)] != 0) continue;
    if (best >= 0 && activity_[static_cast<std::size_t>(variable)] <= best_activity) continue;
    best = variable;
    best_activity = activity_[static_cast<std::size_t>(variable)];
  }
  return best;
}

void RowSolver::keep_model() {
  for (int variable = 0; variable < trail_.variables(); ++variable) model_[static_cast<std::size_t>(variable)] = trail_.value(lit_of(variable, true)) > 0;
}

// False: all is decided, or an assumption cannot hold (then core_ is not empty).
bool RowSolver::decide(const std::vector<Lit>& assumptions) {
  while (level_starts_.size() < assumptions.size()) {
    const Lit next = assumptions[level_starts_.size()];
    if (trail_.value(next) < 0) {
      take_core(next);
      return false;
    }
    level_starts_.push_back(trail_.trail().size());
    if (trail_.value(next) > 0) continue;
    trail_.assign(next, RowTrail::kNoRow);
    return true;
  }
  const int variable = best_open_variable();
  if (variable < 0) {
    keep_model();
    return false;
  }
  level_starts_.push_back(trail_.trail().size());
  trail_.assign(lit_of(variable, phase_[static_cast<std::size_t>(variable)] != 0), RowTrail::kNoRow);
  return true;
}

void RowSolver::forget() {
  std::vector<std::size_t> order(spread_.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  // Of equals the older goes first.
  std::sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) { return spread_[a] != spread_[b] ? spread_[a] > spread_[b] : a < b; });
  std::vector<char> is_kept(spread_.size(), 1);
  for (std::size_t i = 0; i < order.size() / 2; ++i) is_kept[order[i]] = spread_[order[i]] <= 2 ? 1 : 0;
  trail_.keep_clauses(is_kept);
  std::size_t kept = 0;
  for (std::size_t i = 0; i < spread_.size(); ++i) {
    if (is_kept[i] != 0) spread_[kept++] = spread_[i];
  }
  spread_.resize(kept);
  most_clauses_ += 200;
}

RowSolver::End RowSolver::solve(const std::vector<Lit>& assumptions, std::uint64_t& failures) {
  core_.clear();
  if (is_broken_) return End::kImpossible;
  std::uint64_t restart_after = kFirstRestart;
  std::uint64_t since_restart = 0;
  for (;;) {
    const int broken = trail_.propagate();
    if (broken == RowTrail::kNoRow) {
      if (level_starts_.empty() && spread_.size() > most_clauses_) forget();
      if (decide(assumptions)) continue;
      const End end = core_.empty() ? End::kMet : End::kImpossible;
      back_to_level(0);
      return end;
    }
    if (!learn(broken)) {
      is_broken_ = true;
      back_to_level(0);
      return End::kImpossible;
    }
    if (failures == 0) {
      back_to_level(0);
      return End::kLimit;
    }
    --failures;
    if (++since_restart >= restart_after) {
      since_restart = 0;
      restart_after += restart_after / 2;
      back_to_level(0);
    }
  }
}

}  // namespace cp
