// SPDX-License-Identifier: Apache-2.0
// The lessons that the desk may read and write: the files of one folder whose names end in .lesson, or one file of them.
// docs/formats/served_lessons.md has the requests.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "base/result.h"
#include "serve/page_answer.h"

namespace cp::cli {

class ServedLessons {
 public:
  // A folder, or a file that ends in .lesson. Error kNotFound: there is neither.
  static Result<ServedLessons> open(const std::string& path);

  // Nothing: the path is not below /lessons. Files are written whole or not at all, and only over the revision that the
  // request names.
  [[nodiscard]] std::optional<serve::DoorReply> answer(const serve::DoorRequest& request) const;


 private:
  [[nodiscard]] serve::DoorReply list() const;
  [[nodiscard]] serve::DoorReply read(const std::string& name) const;
  [[nodiscard]] serve::DoorReply write(const std::string& name, const serve::DoorRequest& request) const;
  [[nodiscard]] bool may_use(const std::string& name) const;

  std::string place_;             // as it was named
  std::filesystem::path folder_;
  std::string only_;              // the one file; empty: all of the folder
};

}  // namespace cp::cli
