// SPDX-License-Identifier: Apache-2.0
// The tables of a shelf, and how an older file becomes a newer one (docs/formats/shelf.md).
//
// The version stands in the file. Each step from one version to the next is a text that is never edited again: files of
// every version are out there.
#pragma once

#include "store/database.h"

namespace cp {

inline constexpr int kShelfVersion = 2;
inline constexpr std::int64_t kShelfMark = 0x43507368;  // "CPsh": the application id in the head of the file; on disk, never change

// Makes the tables in an empty file and brings an older one up to date; all of it or nothing. Errors: kBadArgument when the
// file belongs to another program or comes from a newer Counterpoise.
std::optional<Error> bring_up_to_date(Database& database, const std::string& path);

// Is this file one that find and export can read as it is? The same errors, and one for an older file.
std::optional<Error> check_version(Database& database, const std::string& path);

}  // namespace cp
