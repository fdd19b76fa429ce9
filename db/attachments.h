// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/workbook.h"

#include <SQLiteCpp/Database.h>

namespace loopwright {

/// Keeps the bytes under their digest, once.
std::string keepAttachment(SQLite::Database& database, std::span<const std::byte> bytes,
                           std::string_view mediaType);
/// Nothing when that digest is not kept here.
std::optional<AttachmentBytes> keptAttachment(SQLite::Database& database, std::string_view digest);

} // namespace loopwright
