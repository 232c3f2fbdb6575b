# SPDX-License-Identifier: Apache-2.0
# Compiler and linker settings. Everything we compile links cp_flags.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
if(NOT CP_WASM)
  set(CMAKE_POSITION_INDEPENDENT_CODE ON)
endif()
set(CMAKE_RUNTIME_OUTPUT_DIRECTORY "${CMAKE_BINARY_DIR}")

if(NOT CMAKE_BUILD_TYPE)
  set(CMAKE_BUILD_TYPE Release CACHE STRING "Release, Debug or Checked" FORCE)
endif()
set(CMAKE_CXX_FLAGS_RELEASE "-O3 -DNDEBUG -g1")
set(CMAKE_CXX_FLAGS_DEBUG   "-Og -g -D_GLIBCXX_ASSERTIONS")
# Checked: as fast as asserts allow. The tests use it.
set(CMAKE_CXX_FLAGS_CHECKED "-O2 -g1 -D_GLIBCXX_ASSERTIONS")
set(CMAKE_EXE_LINKER_FLAGS_CHECKED "")

set(CP_SANITIZE "" CACHE STRING "Sanitizers, for example address,undefined")

add_library(cp_flags INTERFACE)
target_include_directories(cp_flags INTERFACE "${CMAKE_SOURCE_DIR}/src")
target_compile_definitions(cp_flags INTERFACE CP_VERSION="${PROJECT_VERSION}")
target_compile_options(cp_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion)
# g++ 12 sees overlapping copies inside std::string that are not there
# (GCC bug 105651, mended in 13).
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  target_compile_options(cp_flags INTERFACE -Wno-restrict)
endif()
if(CP_WERROR)
  target_compile_options(cp_flags INTERFACE -Werror)
endif()

# Without popcount the bit boards run about three times slower.
if(NOT CP_PORTABLE AND CMAKE_SYSTEM_PROCESSOR MATCHES "^(x86_64|AMD64|amd64)$")
  target_compile_options(cp_flags INTERFACE -march=x86-64-v2)
endif()

if(CP_SANITIZE)
  target_compile_options(cp_flags INTERFACE
    -fsanitize=${CP_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(cp_flags INTERFACE -fsanitize=${CP_SANITIZE})
endif()

find_program(CP_CCACHE ccache)
if(CP_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CP_CCACHE}")
endif()

include(CheckLinkerFlag)
find_program(CP_MOLD mold)
if(CP_MOLD AND NOT CP_WASM)
  check_linker_flag(CXX -fuse-ld=mold CP_LINKS_WITH_MOLD)
  if(CP_LINKS_WITH_MOLD)
    target_link_options(cp_flags INTERFACE -fuse-ld=mold)
  endif()
endif()
