// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/attachments.h"

#include "core/model/digest.h"

#include <SQLiteCpp/Statement.h>

namespace loopwright {

// The table is named after what alone was kept in it when it was made.
std::string keepAttachment(SQLite::Database& database, std::span<const std::byte> bytes,
                           std::string_view mediaType) {
    std::string digest = digestOf(bytes);
    SQLite::Statement insert(database, "INSERT INTO photo_blob (digest, mediaType, bytes) VALUES (?, ?, ?) "
                                       "ON CONFLICT (digest) DO NOTHING");
    insert.bind(1, digest);
    insert.bind(2, std::string(mediaType));
    const void* start =
        bytes.empty() ? static_cast<const void*>("") : bytes.data(); // a null pointer would be NULL
    insert.bindNoCopy(3, start, static_cast<int>(bytes.size()));
    insert.exec();
    return digest;
}

std::optional<AttachmentBytes> keptAttachment(SQLite::Database& database, std::string_view digest) {
    SQLite::Statement select(database, "SELECT mediaType, bytes FROM photo_blob WHERE digest = ?");
    select.bind(1, std::string(digest));
    if (!select.executeStep()) return std::nullopt;
    const SQLite::Column blob = select.getColumn(1);
    const auto* bytes = static_cast<const std::byte*>(blob.getBlob());
    return AttachmentBytes{select.getColumn(0).getString(), {bytes, bytes + blob.getBytes()}};
}

} // namespace loopwright
