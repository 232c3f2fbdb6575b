// SPDX-License-Identifier: Apache-2.0
// General-purpose solvers from Debian, linked, behind one small face, for side-by-side measurements. Which of them are built
// in is decided by CMake (cmake/external_solvers.cmake): what is installed is used, nothing is ever fetched.
//
// The SAT solvers get the extended encoding of I. Lynce and J. Ouaknine (2006): 729 variables, 11 988 clauses.
// "fresh" makes a new solver for every puzzle. "kept" keeps one solver: the givens are assumptions, the found model is shut out by a
// clause under a literal of its own, and what was learnt from earlier puzzles (and earlier rounds) stays.
#pragma once

#include <array>
#include <memory>
#include <string>
#include <vector>

#ifdef CP_WITH_CADICAL
#include <cadical.hpp>
#endif
#ifdef CP_WITH_PICOSAT
extern "C" {
#include <picosat.h>
}
#endif
#ifdef CP_WITH_CRYPTOMINISAT
#include <cryptominisat5/cryptominisat.h>
#endif
#ifdef CP_WITH_GECODE
#include <gecode/int.hh>
#include <gecode/search.hh>
#endif

namespace cp::bench {

// 0 = empty, 1..9.
using Digits = std::array<int, 81>;

struct Answer {
  int solutions = 0;  // 0, 1 or 2 (two or more)
  Digits first{};
};

class Solver {
 public:
  virtual ~Solver() = default;
  [[nodiscard]] virtual std::string name() const = 0;
  virtual Answer solve(const Digits& puzzle) = 0;
};

inline constexpr int kVariables = 729;

// The variable of "cell holds digit", cells 0..80, digits 1..9.
inline int variable(int cell, int digit) { return cell * 9 + digit; }

// All clauses of the empty grid.
inline std::vector<std::vector<int>> sudoku_clauses() {
  std::vector<std::vector<int>> clauses;
  const auto exactly_one = [&](const std::vector<int>& literals) {
    clauses.push_back(literals);
    for (std::size_t i = 0; i < literals.size(); ++i) {
      for (std::size_t j = i + 1; j < literals.size(); ++j) clauses.push_back({-literals[i], -literals[j]});
    }
  };
  for (int a = 0; a < 9; ++a) {
    for (int b = 0; b < 9; ++b) {
      std::array<std::vector<int>, 4> groups;  // cell; digit in row; digit in column; digit in box
      for (int c = 0; c < 9; ++c) {
        groups[0].push_back(variable(a * 9 + b, c + 1));
        groups[1].push_back(variable(a * 9 + c, b + 1));
        groups[2].push_back(variable(c * 9 + a, b + 1));
        groups[3].push_back(variable((a / 3 * 3 + c / 3) * 9 + a % 3 * 3 + c % 3, b + 1));
      }
      for (const auto& group : groups) exactly_one(group);
    }
  }
  return clauses;
}

// The same two questions for every SAT library. A Library has: add_clause, solve_under(assumptions), is_true(variable).
template <typename Library>
class SatSolver : public Solver {
 public:
  SatSolver(std::string library_name, bool keep) : name_(std::move(library_name)), keep_(keep), clauses_(sudoku_clauses()) {}

  [[nodiscard]] std::string name() const override { return name_ + (keep_ ? ", kept" : ", fresh"); }

  Answer solve(const Digits& puzzle) override {
    if (!keep_ || library_ == nullptr) start();
    std::vector<int> assumptions;
    for (int cell = 0; cell < 81; ++cell) {
      if (puzzle[static_cast<std::size_t>(cell)] == 0) continue;
      const int literal = variable(cell, puzzle[static_cast<std::size_t>(cell)]);
      if (keep_) assumptions.push_back(literal);
      else library_->add_clause({literal});
    }
    Answer answer;
    if (!library_->solve_under(assumptions)) return answer;
    answer.first = model();
    const int shut = keep_ ? next_variable_++ : 0;
    shut_out(answer.first, shut);
    if (keep_) assumptions.push_back(shut);
    answer.solutions = library_->solve_under(assumptions) ? 2 : 1;
    if (keep_) library_->add_clause({-shut});
    return answer;
  }

 private:
  void start() {
    library_ = std::make_unique<Library>();
    next_variable_ = kVariables + 1;
    for (const auto& clause : clauses_) library_->add_clause(clause);
  }

  Digits model() {
    Digits digits{};
    for (int cell = 0; cell < 81; ++cell) {
      for (int digit = 1; digit <= 9; ++digit) {
        if (library_->is_true(variable(cell, digit))) digits[static_cast<std::size_t>(cell)] = digit;
      }
    }
    return digits;
  }

  void shut_out(const Digits& digits, int shut) {
    std::vector<int> clause;
    if (shut != 0) clause.push_back(-shut);
    for (int cell = 0; cell < 81; ++cell) clause.push_back(-variable(cell, digits[static_cast<std::size_t>(cell)]));
    library_->add_clause(clause);
  }

  std::string name_;
  bool keep_;
  std::vector<std::vector<int>> clauses_;
  std::unique_ptr<Library> library_;
  int next_variable_ = kVariables + 1;
};

#ifdef CP_WITH_CADICAL
class Cadical {
 public:
  Cadical() { solver_.set("quiet", 1); }
  void add_clause(const std::vector<int>& clause) {
    for (const int literal : clause) solver_.add(literal);
    solver_.add(0);
  }
  bool solve_under(const std::vector<int>& assumptions) {
    for (const int literal : assumptions) solver_.assume(literal);
    return solver_.solve() == 10;
  }
  bool is_true(int variable) { return solver_.val(variable) > 0; }

 private:
  CaDiCaL::Solver solver_;
};
#endif

#ifdef CP_WITH_PICOSAT
class Picosat {
 public:
  Picosat() : solver_(picosat_init()) {}
  ~Picosat() { picosat_reset(solver_); }
  Picosat(const Picosat&) = delete;
  Picosat& operator=(const Picosat&) = delete;
  void add_clause(const std::vector<int>& clause) {
    for (const int literal : clause) picosat_add(solver_, literal);
    picosat_add(solver_, 0);
  }
  bool solve_under(const std::vector<int>& assumptions) {
    for (const int literal : assumptions) picosat_assume(solver_, literal);
    return picosat_sat(solver_, -1) == PICOSAT_SATISFIABLE;
  }
  bool is_true(int variable) { return picosat_deref(solver_, variable) > 0; }

 private:
  PicoSAT* solver_;
};
#endif

#ifdef CP_WITH_CRYPTOMINISAT
class CryptoMiniSat {
 public:
  CryptoMiniSat() { solver_.new_vars(kVariables); }
  void add_clause(const std::vector<int>& clause) { solver_.add_clause(literals(clause)); }
  bool solve_under(const std::vector<int>& assumptions) {
    const auto assumed = literals(assumptions);
    return solver_.solve(&assumed) == CMSat::l_True;
  }
  bool is_true(int variable) { return solver_.get_model()[static_cast<std::size_t>(variable - 1)] == CMSat::l_True; }

 private:
  std::vector<CMSat::Lit> literals(const std::vector<int>& numbers) {
    std::vector<CMSat::Lit> result;
    for (const int number : numbers) {
      const auto index = static_cast<unsigned>(number > 0 ? number : -number);
      while (solver_.nVars() < index) solver_.new_var();
      result.emplace_back(index - 1, number < 0);
    }
    return result;
  }

  CMSat::SATSolver solver_;
};
#endif

#ifdef CP_WITH_GECODE
// 27 all-different rules, domain consistent; smallest domain first, smallest value first.
class GecodeGrid : public Gecode::Space {
 public:
  explicit GecodeGrid(const Digits& puzzle) : cells_(*this, 81, 1, 9) {
    for (int a = 0; a < 9; ++a) {
      Gecode::IntVarArgs row(9);
      Gecode::IntVarArgs column(9);
      Gecode::IntVarArgs box(9);
      for (int b = 0; b < 9; ++b) {
        row[b] = cells_[a * 9 + b];
        column[b] = cells_[b * 9 + a];
        box[b] = cells_[(a / 3 * 3 + b / 3) * 9 + a % 3 * 3 + b % 3];
      }
      for (const auto& house : {row, column, box}) Gecode::distinct(*this, house, Gecode::IPL_DOM);
    }
    for (int cell = 0; cell < 81; ++cell) {
      const int digit = puzzle[static_cast<std::size_t>(cell)];
      if (digit != 0) Gecode::rel(*this, cells_[cell], Gecode::IRT_EQ, digit);
    }
    Gecode::branch(*this, cells_, Gecode::INT_VAR_SIZE_MIN(), Gecode::INT_VAL_MIN());
  }
  GecodeGrid(GecodeGrid& other) : Space(other) { cells_.update(*this, other.cells_); }
  Gecode::Space* copy() override { return new GecodeGrid(*this); }
  [[nodiscard]] int digit(int cell) const { return cells_[cell].val(); }

 private:
  Gecode::IntVarArray cells_;
};

class GecodeSolver : public Solver {
 public:
  [[nodiscard]] std::string name() const override { return "Gecode, all-different"; }
  Answer solve(const Digits& puzzle) override {
    GecodeGrid start(puzzle);
    Gecode::DFS<GecodeGrid> search(&start);
    Answer answer;
    while (answer.solutions < 2) {
      const std::unique_ptr<GecodeGrid> grid(search.next());
      if (grid == nullptr) break;
      for (int cell = 0; cell < 81 && answer.solutions == 0; ++cell) answer.first[static_cast<std::size_t>(cell)] = grid->digit(cell);
      ++answer.solutions;
    }
    return answer;
  }
};
#endif

// Every solver built in, in a fixed order.
inline std::vector<std::unique_ptr<Solver>> external_solvers() {
  std::vector<std::unique_ptr<Solver>> solvers;
#ifdef CP_WITH_CADICAL
  for (const bool keep : {false, true}) solvers.push_back(std::make_unique<SatSolver<Cadical>>("CaDiCaL", keep));
#endif
#ifdef CP_WITH_PICOSAT
  for (const bool keep : {false, true}) solvers.push_back(std::make_unique<SatSolver<Picosat>>("PicoSAT", keep));
#endif
#ifdef CP_WITH_CRYPTOMINISAT
  for (const bool keep : {false, true}) solvers.push_back(std::make_unique<SatSolver<CryptoMiniSat>>("CryptoMiniSat", keep));
#endif
#ifdef CP_WITH_GECODE
  solvers.push_back(std::make_unique<GecodeSolver>());
#endif
  return solvers;
}

}  // namespace cp::bench
