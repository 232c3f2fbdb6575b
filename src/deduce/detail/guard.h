// SPDX-License-Identifier: Apache-2.0
// The guards of a technique can be weakened, in builds for the mutation audit only: tests/audit/mutation_audit.cpp
// compiles this room with CP_MUTATE and shows that the other audits notice each of these faults.
#pragma once

#include <string_view>

namespace cp::deduce {

enum class Guard {
  kSound,     // what makes the step true: weakened, it allows one candidate, place or line too many
  kTrueSize,  // what leaves smaller patterns to smaller techniques: weakened, they are reported here as well
};

#ifdef CP_MUTATE
struct Weakness {
  std::string_view technique;  // empty: none
  Guard guard = Guard::kSound;
};
inline Weakness weakness;
// Whether the guard that is to be weakened was come by at all: a technique without it has no such mutant.
inline bool was_asked = false;
inline bool is_weakened(std::string_view technique, Guard guard) {
  const bool is_this = technique == weakness.technique && guard == weakness.guard;
  was_asked = was_asked || is_this;
  return is_this;
}
#else
constexpr bool is_weakened(std::string_view /*technique*/, Guard /*guard*/) { return false; }
#endif

}  // namespace cp::deduce
