// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/Database.h>

#include <cstdint>

namespace loopwright {

/// Written into the header of every workbook, so that other SQLite files are told from ours: "LpWb".
inline constexpr std::int32_t workbookApplicationId = 0x4C705762;

/// The version that the last of db/schema/*.sql leads to.
int latestSchemaVersion();
/// The version of this file; 0 for a new one.
int schemaVersion(SQLite::Database& database);
std::int32_t applicationId(SQLite::Database& database);
/// Runs the scripts of the versions that the file does not have yet, each in a transaction of its own. Where
/// one is refused the file keeps the version that it had. Throws SQLite::Exception.
void bringUpToDate(SQLite::Database& database);

} // namespace loopwright
