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
inline bool is_weakened(std::string_view technique, Guard guard) { return technique == weakness.technique && guard == weakness.guard; }
#else
constexpr bool is_weakened(std::string_view /*technique*/, Guard /*guard*/) { return false; }
#endif

}  // namespace cp::deduce
