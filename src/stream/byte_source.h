// SPDX-License-Identifier: Apache-2.0
// The unpacked bytes of a file or of standard input.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "base/result.h"

namespace cp {

class ByteSource {
 public:
  ByteSource() = default;
  ByteSource(const ByteSource&) = delete;
  ByteSource& operator=(const ByteSource&) = delete;
  virtual ~ByteSource() = default;

  // Appends some bytes. False at the end or when something went wrong.
  virtual bool read(std::string& to) = 0;

  // Why read() said false; empty at an honest end.
  [[nodiscard]] const std::optional<Error>& trouble() const { return trouble_; }

 protected:
  std::optional<Error> trouble_;
};

// Opens it and looks at the first bytes to choose how it is unpacked. "-": standard input. Errors as LineSource::open().
Result<std::unique_ptr<ByteSource>> open_bytes(const std::string& name);

}  // namespace cp
