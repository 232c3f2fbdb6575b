# SPDX-License-Identifier: Apache-2.0
# General-purpose solvers for bench/: linked where they are installed (Debian:
# libcadical-dev, picosat, libcryptominisat5-dev, libgecode-dev), left out
# where not. Nothing is fetched, and no test or program needs them.

function(cp_link_external_solvers target)
  set(found "")
  cp_try_solver(CADICAL cadical.hpp "" cadical)
  cp_try_solver(PICOSAT picosat.h picosat picosat)
  cp_try_solver(CRYPTOMINISAT cryptominisat5/cryptominisat.h "" cryptominisat5)
  cp_try_solver(GECODE gecode/int.hh "" gecodesearch gecodeint gecodekernel gecodesupport)
  string(TOUPPER "${CMAKE_BUILD_TYPE}" type)
  get_target_property(options cp_flags INTERFACE_COMPILE_OPTIONS)
  list(FILTER options INCLUDE REGEX "^-march|^-fsanitize")
  target_compile_definitions(${target} PRIVATE
    CP_BENCH_FLAGS="${CMAKE_CXX_FLAGS_${type}} ${options}")
  list(JOIN found ", " names)
  message(STATUS "${target} measures against: ${names}")
endfunction()

# cp_try_solver(<NAME> <header> <folder of the header> <library>...)
macro(cp_try_solver name header folder)
  find_path(CP_${name}_INCLUDE ${header} PATH_SUFFIXES ${folder})
  set(libraries "")
  foreach(library ${ARGN})
    find_library(CP_${name}_${library} ${library})
    list(APPEND libraries "${CP_${name}_${library}}")
  endforeach()
  if(CP_${name}_INCLUDE AND NOT libraries MATCHES "NOTFOUND")
    list(APPEND found ${name})
    target_compile_definitions(${target} PRIVATE CP_WITH_${name})
    target_include_directories(${target} SYSTEM PRIVATE "${CP_${name}_INCLUDE}")
    target_link_libraries(${target} PRIVATE ${libraries})
  endif()
endmacro()
