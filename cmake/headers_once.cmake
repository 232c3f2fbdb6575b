# SPDX-License-Identifier: Apache-2.0
# Precompiled headers: most of the time of a build goes into reading the same
# library headers again. No source relies on them; each includes what it uses.

set(CP_COMMON_HEADERS <algorithm> <array> <bit> <cstdint> <map> <memory> <optional> <set>
    <string> <string_view> <utility> <variant> <vector>)

# What a compiler cache needs to know, before it caches a build with such headers.
if(CMAKE_CXX_COMPILER_LAUNCHER MATCHES "ccache$" AND NOT CP_WASM)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env
      CCACHE_SLOPPINESS=pch_defines,time_macros "${CMAKE_CXX_COMPILER_LAUNCHER}")
  set(CP_CACHES_HEADERS $<$<CXX_COMPILER_ID:GNU>:-fpch-preprocess>)
endif()

# The target reads the common headers and these once. g++ 12 then sees copies beyond a
# string's own buffer that are not there (GCC bug 105651, mended in 13).
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  set(CP_FALSE_ALARMS -Wno-array-bounds -Wno-stringop-overflow -Wno-stringop-overread)
endif()
function(cp_read_headers_once target)
  target_compile_options(${target} PRIVATE ${CP_CACHES_HEADERS} ${CP_FALSE_ALARMS})
  target_precompile_headers(${target} PRIVATE ${CP_COMMON_HEADERS} ${ARGN})
endfunction()

# All unit tests read GoogleTest once between them: the first target does, the
# others, compiled with the same words, take it from there.
function(cp_share_gtest target)
  # The code under test is optimised in its own library; what asks it need not be.
  if(CMAKE_BUILD_TYPE STREQUAL "Checked")
    target_compile_options(${target} PRIVATE -O1)
  endif()
  get_property(first GLOBAL PROPERTY CP_READS_GTEST)
  if(first)
    target_compile_options(${target} PRIVATE ${CP_CACHES_HEADERS} ${CP_FALSE_ALARMS})
    target_precompile_headers(${target} REUSE_FROM ${first})
  else()
    cp_read_headers_once(${target} <gtest/gtest.h>)
    set_property(GLOBAL PROPERTY CP_READS_GTEST ${target})
  endif()
endfunction()
