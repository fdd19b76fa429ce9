// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite_message.h"

#include <sqlite3.h>

namespace loopwright {

Message about(std::string_view key, const std::filesystem::path& path) {
    return {key, {path.string()}};
}

Message messageFor(const SQLite::Exception& refusal, const std::filesystem::path& path) {
    switch (refusal.getExtendedErrorCode()) {
    case SQLITE_CONSTRAINT_PRIMARYKEY:
        return about("workbook.id-taken", path);
    case SQLITE_CONSTRAINT_NOTNULL:
        return about("workbook.owner-missing", path);
    case SQLITE_READONLY_CANTINIT:
    case SQLITE_READONLY_DIRECTORY:
        return about("workbook.folder-read-only", path);
    default:
        break;
    }
    constexpr int primaryCode = 0xFF; // an extended result code holds its primary code in the lowest byte
    switch (refusal.getErrorCode() & primaryCode) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return about("workbook.busy", path);
    case SQLITE_FULL:
        return about("workbook.disk-full", path);
    case SQLITE_IOERR:
        return about("workbook.input-output", path);
    case SQLITE_READONLY:
        return about("workbook.read-only", path);
    case SQLITE_CANTOPEN:
        return about("workbook.cannot-open", path);
    case SQLITE_NOTADB:
        return about("workbook.not-a-workbook", path);
    case SQLITE_CORRUPT:
        return about("workbook.damaged", path);
    default:
        break;
    }
    Message message = about("workbook.refused", path);
    message.arguments.emplace_back(std::string(refusal.what()));
    return message;
}

} // namespace loopwright
