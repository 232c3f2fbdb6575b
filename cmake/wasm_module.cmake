# SPDX-License-Identifier: Apache-2.0
# What the preset `wasm` does otherwise: sizes before speed except where speed is
# felt, one header library without the rest of /usr/include, a module at the end.

# Rooms whose speed is felt; the others are made small.
set(CP_FAST_ROOMS exact balance)

# -Oz not here: with it the compiler would call wasm-opt when it links, and so do we.
set(CMAKE_CXX_FLAGS_RELEASE "-DNDEBUG")
add_compile_options(-Oz)
add_compile_definitions(CP_WRITES_NO_LESSONS)  # ADR 14: what a page never asks is not in it

find_path(CP_NLOHMANN_FOLDER nlohmann/json.hpp PATHS /usr/include /usr/local/include
  NO_DEFAULT_PATH REQUIRED)
file(MAKE_DIRECTORY "${CMAKE_BINARY_DIR}/headers")
file(CREATE_LINK "${CP_NLOHMANN_FOLDER}/nlohmann" "${CMAKE_BINARY_DIR}/headers/nlohmann" SYMBOLIC)
add_library(nlohmann_json::nlohmann_json INTERFACE IMPORTED)
target_include_directories(nlohmann_json::nlohmann_json INTERFACE "${CMAKE_BINARY_DIR}/headers")

if(CP_CCACHE AND CMAKE_CXX_COMPILER_LAUNCHER MATCHES "ccache$")
  set(CMAKE_CXX_COMPILER_LAUNCHER env CCACHE_SLOPPINESS=pch_defines,time_macros "${CP_CCACHE}")
  add_compile_options(-Xclang -fno-pch-timestamp)
endif()

find_program(CP_WASM_OPT wasm-opt REQUIRED)

# Precompiled headers: most of the time goes into reading the same library headers
# again. Targets of one sort (fast or small, with JSON or without) share them.
function(cp_share_headers)
  foreach(target IN LISTS ARGN)
    get_target_property(type ${target} TYPE)
    if(type STREQUAL "INTERFACE_LIBRARY")
      continue()
    endif()
    string(REPLACE "cp_" "" room ${target})
    get_target_property(libraries ${target} LINK_LIBRARIES)
    set(sort small)
    set(headers ${CP_COMMON_HEADERS})
    if(room IN_LIST CP_FAST_ROOMS)
      set(sort fast)
      target_compile_options(${target} PRIVATE -O2)
    elseif(libraries MATCHES "nlohmann")
      set(sort json)
      list(APPEND headers <nlohmann/json.hpp>)
    endif()
    if(DEFINED first_${sort})
      target_precompile_headers(${target} REUSE_FROM ${first_${sort}})
    else()
      target_precompile_headers(${target} PRIVATE ${headers})
      set(first_${sort} ${target})
    endif()
  endforeach()
endfunction()

function(cp_finish_module name)
  get_property(has_shared GLOBAL PROPERTY CP_HAS_SHARED_HEADERS)
  if(NOT has_shared)
    get_property(rooms GLOBAL PROPERTY CP_ROOMS)
    list(TRANSFORM rooms PREPEND cp_)
    cp_share_headers(${rooms})
    set_property(GLOBAL PROPERTY CP_HAS_SHARED_HEADERS TRUE)
  endif()
  set_target_properties(${name} PROPERTIES SUFFIX ".wasm")
  target_link_options(${name} PRIVATE -mexec-model=reactor -Wl,--strip-all -Wl,--gc-sections
    -Wl,--stack-first -Wl,-z,stack-size=1048576)
  add_custom_command(TARGET ${name} POST_BUILD VERBATIM
    COMMAND "${CP_WASM_OPT}" -Oz --enable-simd --enable-bulk-memory --enable-sign-ext --enable-mutable-globals
            --enable-nontrapping-float-to-int --strip-producers --strip-target-features
            -o "$<TARGET_FILE:${name}>.small" "$<TARGET_FILE:${name}>"
    COMMAND "${CMAKE_COMMAND}" -E rename "$<TARGET_FILE:${name}>.small" "$<TARGET_FILE:${name}>")
endfunction()
