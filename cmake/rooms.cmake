# SPDX-License-Identifier: Apache-2.0
# cp_room and cp_program: one folder under src/ becomes one target.

# Globs a room. Files in <room>/detail belong to the room as well.
function(cp_glob_room room out_sources out_headers)
  set(dir "${CMAKE_SOURCE_DIR}/src/${room}")
  file(GLOB sources CONFIGURE_DEPENDS "${dir}/*.cpp" "${dir}/detail/*.cpp")
  file(GLOB headers CONFIGURE_DEPENDS "${dir}/*.h" "${dir}/detail/*.h")
  set(${out_sources} "${sources}" PARENT_SCOPE)
  set(${out_headers} "${headers}" PARENT_SCOPE)
endfunction()

# Rooms named in the arguments that exist, as library names.
function(cp_existing_rooms out)
  set(found "")
  foreach(room IN LISTS ARGN)
    if(TARGET cp_${room})
      list(APPEND found cp_${room})
    endif()
  endforeach()
  set(${out} "${found}" PARENT_SCOPE)
endfunction()

# QUICK: code whose speed nobody feels, with headers that take the compiler long.
# The first ./run waits for it, so it is optimised less (the later -O wins), and
# reads those headers once.
function(cp_compile_quickly target)
  if(CP_WASM)
    return()
  endif()
  if(CMAKE_BUILD_TYPE MATCHES "^(Release|Checked)$")
    target_compile_options(${target} PRIVATE -O1)
  endif()
  cp_read_headers_once(${target} ${ARGN})
endfunction()

# cp_room(<room> [QUICK | CALM] [SHELL] [NEEDS <room>...] [LIBS <library>...] [HEAVY <header>...])
# CALM: its speed is felt, but not by the tests, so their build optimises it less.
# A room without sources is header-only; a room without files is skipped. SHELL: it talks to the world outside, so
# the WebAssembly module is built without it.
function(cp_room room)
  cmake_parse_arguments(arg "QUICK;CALM;SHELL" "" "NEEDS;LIBS;HEAVY" ${ARGN})
  if(CP_WASM AND arg_SHELL)
    return()
  endif()
  cp_glob_room(${room} sources headers)
  cp_existing_rooms(needs ${arg_NEEDS})
  if(sources)
    add_library(cp_${room} STATIC ${sources} ${headers})
    target_link_libraries(cp_${room} PUBLIC cp_flags ${needs} PRIVATE ${arg_LIBS})
    list(LENGTH sources count)
    if(arg_QUICK)
      cp_compile_quickly(cp_${room} ${arg_HEAVY})
    elseif(count GREATER 12 AND NOT CP_WASM)
      cp_read_headers_once(cp_${room})   # fewer would not make up for the reading
    endif()
    if(arg_CALM AND CMAKE_BUILD_TYPE STREQUAL "Checked")
      target_compile_options(cp_${room} PRIVATE -O1)
    endif()
  elseif(headers)
    add_library(cp_${room} INTERFACE)
    target_link_libraries(cp_${room} INTERFACE cp_flags ${needs} ${arg_LIBS})
  else()
    return()
  endif()
  set_property(GLOBAL APPEND PROPERTY CP_ROOMS ${room})
endfunction()

# cp_program(<name> [QUICK] FROM <room> [NEEDS <room>...] [PACKAGES <package>...]
#            [LIBS <library>...] [HEAVY <header>...])
# Skipped while the room has no main.cpp.
function(cp_program name)
  cmake_parse_arguments(arg "QUICK" "FROM" "NEEDS;PACKAGES;LIBS;HEAVY" ${ARGN})
  cp_glob_room(${arg_FROM} sources headers)
  if(CP_WASM OR NOT EXISTS "${CMAKE_SOURCE_DIR}/src/${arg_FROM}/main.cpp")
    return()
  endif()
  foreach(package IN LISTS arg_PACKAGES)
    find_package(${package} REQUIRED)
  endforeach()
  cp_existing_rooms(needs ${arg_NEEDS})
  add_executable(${name} ${sources} ${headers})
  target_link_libraries(${name} PRIVATE cp_flags ${needs} ${arg_LIBS})
  if(arg_QUICK)
    cp_compile_quickly(${name} ${arg_HEAVY})
    # Reading words and writing files: the tests feel how long it compiles, not how fast it is.
    if(CMAKE_BUILD_TYPE STREQUAL "Checked")
      target_compile_options(${name} PRIVATE -O0)
    endif()
  endif()
endfunction()

# cp_ranks_program(<name> FROM <room> NEEDS <room>...): a process of an MPI job. Built where MPI is there (Debian:
# libopenmpi-dev), left out where not.
function(cp_ranks_program name)
  cmake_parse_arguments(arg "" "FROM" "NEEDS" ${ARGN})
  if(CP_WASM)
    return()
  endif()
  set(MPI_CXX_SKIP_MPICXX TRUE)  # the plain interface is enough
  find_package(MPI QUIET COMPONENTS CXX)
  if(NOT MPI_CXX_FOUND)
    message(STATUS "${name} left out: MPI is not installed")
    return()
  endif()
  cp_glob_room(${arg_FROM} sources headers)
  cp_existing_rooms(needs ${arg_NEEDS})
  add_executable(${name} ${sources} ${headers})
  target_link_libraries(${name} PRIVATE cp_flags ${needs} MPI::MPI_CXX)
endfunction()

# cp_module(<name> FROM <room> NEEDS <room>... [ALSO <source>...]): the WebAssembly
# module <name>.wasm, made smaller by wasm-opt. Sources after ALSO are compiled once
# more for this module, as native programs have them, and take the place of the
# room's own. Only in the preset wasm.
function(cp_module name)
  cmake_parse_arguments(arg "" "FROM" "NEEDS;ALSO" ${ARGN})
  if(NOT CP_WASM)
    return()
  endif()
  cp_glob_room(${arg_FROM} sources headers)
  cp_existing_rooms(needs ${arg_NEEDS})
  add_executable(${name} ${sources} ${headers} ${arg_ALSO})
  target_link_libraries(${name} PRIVATE cp_flags ${needs})
  if(arg_ALSO)
    target_compile_options(${name} PRIVATE -UCP_WRITES_NO_LESSONS)
    target_link_libraries(${name} PRIVATE nlohmann_json::nlohmann_json)
  endif()
  cp_finish_module(${name})
endfunction()

# data/series as a list of names and texts that src/cli/bundled_series.cpp includes.
function(cp_bundled_series)
  if(CP_WASM)
    return()
  endif()
  file(GLOB texts CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/data/series/*")
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${texts})
  set(list "")
  foreach(path IN LISTS texts)
    get_filename_component(name "${path}" NAME)
    file(READ "${path}" text)
    string(APPEND list "{\"${name}\", R\"text(${text})text\"},\n")
  endforeach()
  set(goal "${CMAKE_BINARY_DIR}/generated/bundled_series.inc")
  set(before "")
  if(EXISTS "${goal}")
    file(READ "${goal}" before)
  endif()
  if(NOT before STREQUAL list)
    file(WRITE "${goal}" "${list}")
  endif()
  set_source_files_properties(src/cli/bundled_series.cpp PROPERTIES
    COMPILE_DEFINITIONS "CP_BUNDLED_SERIES=\"${goal}\"" OBJECT_DEPENDS "${goal}")
endfunction()
