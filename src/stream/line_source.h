// SPDX-License-Identifier: Apache-2.0
// Where do lines come from? A file or standard input of any size, plain, gzip (RFC 1952) or zstd (RFC 8878); which of them
// is told by the first bytes, not by the name. Memory stays small whatever the size.
//
// A place in a source is a Place: how many unpacked bytes lie before it, with a check over all of them. A reader that was
// stopped opens the same source again and calls skip_to(): the bytes are read again (unpacking is quick) and compared,
// so a file that was changed meanwhile is noticed and nothing is skipped by mistake. This works for pipes as well.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "base/result.h"

namespace cp {

inline constexpr std::size_t kLongestSourceLine = 100'000;  // bytes; of a longer line only so many are given

// A place between two lines.
struct Place {
  std::uint64_t offset = 0;  // unpacked bytes before it
  std::uint64_t line = 0;    // lines before it
  std::uint64_t check = 0;   // a running check of those bytes (FNV-1a, 64 bits, by Fowler, Noll and Vo)

  friend bool operator==(const Place&, const Place&) = default;
};

class ByteSource;  // unpacks; in byte_source.h

class LineSource {
 public:
  // `name` "-": standard input. Errors kNotFound: there is none, it is a folder, it cannot be read.
  static Result<LineSource> open(const std::string& name);
  LineSource(LineSource&& other) noexcept;
  LineSource& operator=(LineSource&& other) noexcept;
  ~LineSource();

  // The next line without its end (\n or \r\n; a byte order mark at the very start is dropped). False at the end, and when
  // something went wrong: trouble() tells which. A last line without an end counts. A line that is longer than
  // kLongestSourceLine is cut there; was_cut() tells.
  bool next(std::string& line);
  [[nodiscard]] bool was_cut() const { return was_cut_; }

  // Why next() said false; empty at an honest end. A packed file that ends in its middle is trouble, after its last line.
  [[nodiscard]] const std::optional<Error>& trouble() const { return trouble_; }

  // The place after the last line that was given.
  [[nodiscard]] const Place& place() const { return place_; }

  // Reads up to a place of an earlier run. Error kBadArgument when the bytes before it are not the same any more; then the
  // source is of no more use. Lines that were read before (a header) may lie before the place, not beyond it.
  std::optional<Error> skip_to(const Place& goal);

 private:
  LineSource(std::unique_ptr<ByteSource> bytes, std::string name);
  bool fill();
  void take(std::string_view bytes);

  std::unique_ptr<ByteSource> bytes_;
  std::string name_;
  std::string buffer_;
  std::size_t used_ = 0;  // bytes of the buffer that were given
  Place place_;
  bool was_cut_ = false;
  std::optional<Error> trouble_;
};

}  // namespace cp
