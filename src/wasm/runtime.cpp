// SPDX-License-Identifier: Apache-2.0
// What Debian's C and C++ archives for WebAssembly want from their surroundings. Every way to fail is a trap: messages
// would bring a console in, and with it a few hundred kilobytes and imports.
#include <cstdint>

extern "C" {

// The archives are compiled with stack protection.
extern std::uintptr_t __stack_chk_guard;  // NOLINT: the name is theirs
std::uintptr_t __stack_chk_guard = 0x5AFE57AC;

[[noreturn]] void __stack_chk_fail() { __builtin_trap(); }

// libc++abi, when it gives up.
[[noreturn]] void abort_message(const char* /*format*/, ...) { __builtin_trap(); }

}  // extern "C"

// libc++: a container that was asked for the impossible, or no memory left.
_LIBCPP_BEGIN_NAMESPACE_STD
[[noreturn]] void __libcpp_verbose_abort(const char* /*format*/, ...) noexcept { __builtin_trap(); }
_LIBCPP_END_NAMESPACE_STD
