// SPDX-License-Identifier: Apache-2.0
// The engine as a WebAssembly module: the one door of `api`, for hosts that share nothing but memory. The module imports
// nothing: no clock, no files, no console. docs/formats/engine.md describes the calls.
//
// One request at a time: the host writes the text of a request to the place that cp_room() gives, calls cp_answer(), and
// reads the answer. A trap leaves the module unusable; the host then makes a new one.
#include <cstddef>
#include <cstdint>
#include <string>

#include "api/api.h"

#define CP_EXPORT(name) extern "C" __attribute__((export_name(#name), used))

namespace {

// Frozen: the page refuses a module that speaks another version.
constexpr std::uint32_t kAbi = 1;

// Longer requests are refused before they are read. A script of 10 000 claims fits.
constexpr std::size_t kMostBytes = std::size_t{1} << 20;

// The only memory that outlives a call.
struct Door {
  std::string request;
  std::string answer;
};

Door& door() {
  static Door the_door;
  return the_door;
}

// `field` would name the part at fault; here it is the whole.
constexpr const char* kTooLong =
    R"({"error":{"code":"bad-argument","message":"the request is longer than 1 MiB","hint":"send the puzzle and the question alone"}})";

}  // namespace

CP_EXPORT(cp_abi) std::uint32_t cp_abi() { return kAbi; }

// Room for a request of so many bytes, valid until the next call; null when it is too long.
CP_EXPORT(cp_room) char* cp_room(std::size_t bytes) {
  if (bytes > kMostBytes) return nullptr;
  door().request.assign(bytes, ' ');
  return door().request.data();
}

// Answers the first `bytes` bytes of the room. The answer is valid until the next call; its size is cp_answer_size().
CP_EXPORT(cp_answer) const char* cp_answer(std::size_t bytes) {
  Door& memory = door();
  memory.answer = bytes <= memory.request.size() ? cp::api::answer(std::string_view(memory.request).substr(0, bytes)) : kTooLong;
  return memory.answer.data();
}

CP_EXPORT(cp_answer_size) std::size_t cp_answer_size() { return door().answer.size(); }
