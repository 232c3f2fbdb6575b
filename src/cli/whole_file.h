// SPDX-License-Identifier: Apache-2.0
// Files that appear under their name only when they are complete.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"

namespace cp::cli {

// The end of the name of a file that is being written, ".page.html.partial-4711"; the number of the process follows it.
inline constexpr std::string_view kPartial = ".partial-";

// What to do when a file can not get its name.
inline constexpr const char* kPermissions = "check the permissions of the folder";

Error cannot_write(const std::filesystem::path& path, const std::string& why, std::string hint);

// The error when a file is there that would be lost and --replace was not said.
std::optional<Error> refuse_loss(const std::filesystem::path& path, bool replace);

// Writes the bytes and notices a full disk.
std::optional<Error> write_bytes(const std::filesystem::path& path, const std::string& bytes);

// Has `write` fill a hidden file beside the goal and renames it, so that the goal is never half a file. Nothing stays when
// that fails or a StopWish has come meanwhile (then without an error). `hint` goes with an error of the renaming.
std::optional<Error> write_whole(const std::filesystem::path& goal, const std::string& hint,
                                 const std::function<std::optional<Error>(const std::filesystem::path& partial)>& write);

// The same for bytes that are there: they get their name even when a StopWish has come, for nothing is left to wait for.
std::optional<Error> write_whole(const std::filesystem::path& goal, const std::string& hint, const std::string& bytes);

// Makes a folder and those above it; one that is there is fine.
std::optional<Error> make_folder(const std::filesystem::path& folder);

}  // namespace cp::cli
