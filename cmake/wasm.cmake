# SPDX-License-Identifier: Apache-2.0
# Tool chain of the preset `wasm`: clang 19 with Debian's wasi-libc and libc++
# (wasi-libc, libc++-19-dev-wasm32, libclang-rt-19-dev-wasm32, lld-19). The
# module has no exceptions, no threads and no imports.

set(CMAKE_SYSTEM_NAME Generic)
set(CMAKE_SYSTEM_PROCESSOR wasm32)
set(CMAKE_C_COMPILER clang-19)
set(CMAKE_CXX_COMPILER clang++-19)
set(CMAKE_C_COMPILER_TARGET wasm32-wasi)
set(CMAKE_CXX_COMPILER_TARGET wasm32-wasi)
set(CMAKE_TRY_COMPILE_TARGET_TYPE STATIC_LIBRARY)
set(CMAKE_CXX_FLAGS_INIT "-fno-exceptions -fno-rtti -msimd128 -mbulk-memory")
