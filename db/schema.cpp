// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/schema.h"

#include "core/reference/embedded.h"

#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>

extern "C" {
extern const loopwright::EmbeddedFile loopwright_schema_files[];
extern const loopwright::EmbeddedFile loopwright_schema_files_end[];
}

namespace loopwright {
namespace {

std::span<const EmbeddedFile> scripts() {
    return {loopwright_schema_files, loopwright_schema_files_end};
}

} // namespace

int latestSchemaVersion() {
    return static_cast<int>(scripts().size());
}

int schemaVersion(SQLite::Database& database) {
    return database.execAndGet("PRAGMA user_version").getInt();
}

std::int32_t applicationId(SQLite::Database& database) {
    return database.execAndGet("PRAGMA application_id").getInt();
}

void bringUpToDate(SQLite::Database& database) {
    while (schemaVersion(database) < latestSchemaVersion()) {
        SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
        const int version = schemaVersion(database) + 1; // another program may have been quicker
        if (version > latestSchemaVersion()) return;
        database.exec(std::string(embeddedFile(scripts(), fmt::format("{}.sql", version))));
        database.exec(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}",
                                  workbookApplicationId, version));
        transaction.commit();
    }
}

} // namespace loopwright
