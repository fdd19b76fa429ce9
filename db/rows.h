// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"

#include <SQLiteCpp/Database.h>

#include <string>

/// Records as rows, by way of the field catalogue: nothing here knows a single field.
namespace loopwright {

/// "device_ratedCurrent_A" for "device.ratedCurrent_A".
std::string columnOf(std::string_view fieldKey);

/// The value of one column of one row; nothing when there is no such row or the column is absent in it.
std::optional<Id> referenceIn(SQLite::Database& database, RecordKind kind, Id row, std::string_view fieldKey);

/// Everything that belongs to `site`, each table in the order of its rows' positions.
tl::expected<Installation, Message> readInstallation(SQLite::Database& database, Id site);
void insertInstallation(SQLite::Database& database, const Installation& installation);

/// Carries out one step of a change. Belongings of a removed record go with it by the schema's foreign keys.
tl::expected<void, Message> applyEdit(SQLite::Database& database, const Edit& edit);

} // namespace loopwright
