// SPDX-License-Identifier: Apache-2.0
// What Debian's C and C++ archives for WebAssembly want from their surroundings. Every way to fail is a trap: messages
// would bring a console in, and with it a few hundred kilobytes and imports.
#include <cstddef>
#include <cstdint>

extern "C" {

// The archives are compiled with stack protection.
extern std::uintptr_t __stack_chk_guard;  // NOLINT: the name is theirs
std::uintptr_t __stack_chk_guard = 0x5AFE57AC;

[[noreturn]] void __stack_chk_fail() { __builtin_trap(); }

// libc++abi, when it gives up.
[[noreturn]] void abort_message(const char* /*format*/, ...) { __builtin_trap(); }

// The JSON library prints numbers into the texts of parse errors, which nobody reads here. The real one would bring the
// whole of stdio.
int snprintf(char* /*text*/, std::size_t /*size*/, const char* /*format*/, ...) { return 0; }

// Requests hold whole numbers: one with a point is refused, whatever its value. So it is enough to find its end. The real
// ones bring arithmetic with 128 bits; they live in one object, so all three are needed.
double strtod(const char* text, char** end) {
  while ((*text >= '0' && *text <= '9') || *text == '-' || *text == '+' || *text == '.' || *text == 'e' || *text == 'E') ++text;
  *end = const_cast<char*>(text);
  return 0.5;
}
float strtof(const char* text, char** end) { return static_cast<float>(strtod(text, end)); }
long double strtold(const char* text, char** end) { return strtod(text, end); }

}  // extern "C"

// libc++: a container that was asked for the impossible, or no memory left.
_LIBCPP_BEGIN_NAMESPACE_STD
[[noreturn]] void __libcpp_verbose_abort(const char* /*format*/, ...) noexcept { __builtin_trap(); }
_LIBCPP_END_NAMESPACE_STD
