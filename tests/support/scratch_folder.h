// SPDX-License-Identifier: Apache-2.0
// Tests that write files: each has a folder of its own, gone afterwards.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <string>

namespace cp::support {

class ScratchFolderTest : public testing::Test {
 protected:
  // The number of the process keeps two runs of the same test apart.
  void SetUp() override {
    const auto* about = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = std::filesystem::temp_directory_path() / ("cp-" + std::string(about->test_suite_name()) + "-" + about->name() + "-" + std::to_string(::getpid()));
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  [[nodiscard]] std::string path(const std::string& name) const { return (folder_ / name).string(); }

 private:
  std::filesystem::path folder_;
};

}  // namespace cp::support
