// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/workbook.h"

#include "core/model/digest.h"

#include "db/attachments.h"
#include "db/journal.h"
#include "db/rows.h"
#include "db/schema.h"
#include "db/sqlite_message.h"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <cstdio>

namespace loopwright {
namespace {

namespace fs = std::filesystem;

/// SQLite takes a name that starts with "file:" for a URI; an absolute path never does.
std::string fileName(const fs::path& path) {
    return fs::absolute(path).string();
}

/// Makes an empty file where nothing is yet, so that no two programs make the same workbook.
std::optional<Message> claim(const fs::path& path) {
    std::FILE* made = std::fopen(path.c_str(), "wx");
    std::error_code unknown;
    if (!made)
        return about(fs::exists(path, unknown) ? "workbook.already-there" : "workbook.cannot-open", path);
    std::fclose(made);
    return std::nullopt;
}

/// Takes back what an attempt to make the file at `path` has left.
void removeAttempt(const fs::path& path) {
    for (const char* ending : {"", "-wal", "-shm", "-journal"}) {
        std::error_code gone;
        fs::remove(fs::path(path) += ending, gone);
    }
}

/// Sets what keeps changes safe, and reads each back: a file system may not be able to.
std::optional<Message> makeSafe(SQLite::Database& database, const fs::path& path,
                                const Surroundings& surroundings) {
    constexpr int synchronousFull = 2; // as PRAGMA synchronous answers
    database.exec("PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON");
    database.exec("PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
    if (surroundings.mostPages)
        database.exec(fmt::format("PRAGMA max_page_count = {}", *surroundings.mostPages));
    const bool safe = database.execAndGet("PRAGMA journal_mode = WAL").getString() == "wal" &&
                      database.execAndGet("PRAGMA synchronous").getInt() == synchronousFull &&
                      database.execAndGet("PRAGMA foreign_keys").getInt() == 1;
    return safe ? std::nullopt : std::optional(about("workbook.not-safe-here", path));
}

/// Why this file, which SQLite could open, cannot be opened as a workbook.
std::optional<Message> unfit(SQLite::Database& database, const fs::path& path) {
    if (applicationId(database) != workbookApplicationId) return about("workbook.not-a-workbook", path);
    if (const int version = schemaVersion(database); version > latestSchemaVersion()) {
        Message newer = about("workbook.newer", path);
        newer.arguments.emplace_back(std::int64_t{version});
        newer.arguments.emplace_back(std::int64_t{latestSchemaVersion()});
        return newer;
    }
    if (sqlite3_db_readonly(database.getHandle(), "main") == 1) return about("workbook.read-only", path);
    return std::nullopt;
}

} // namespace

struct Workbook::Open {
    Open(const fs::path& where, const Surroundings& surroundings)
      : path(where)
      , database(fileName(where), SQLite::OPEN_READWRITE, static_cast<int>(surroundings.patience.count()))
      , journal(database, surroundings) {}

    fs::path path;
    SQLite::Database database;
    Journal journal;
};

Workbook::Workbook(std::unique_ptr<Open> open)
  : open_(std::move(open)) {}
Workbook::Workbook(Workbook&&) noexcept = default;
Workbook& Workbook::operator=(Workbook&&) noexcept = default;
Workbook::~Workbook() = default;

tl::expected<Workbook, Message> Workbook::create(const fs::path& path, const Surroundings& surroundings) {
    if (auto taken = claim(path)) return tl::unexpected(std::move(*taken));
    auto made = guarded(path, [&]() -> tl::expected<Workbook, Message> {
        auto open = std::make_unique<Open>(path, surroundings);
        if (auto unsafe = makeSafe(open->database, path, surroundings))
            return tl::unexpected(std::move(*unsafe));
        bringUpToDate(open->database);
        return Workbook(std::move(open));
    });
    if (!made) removeAttempt(path);
    return made;
}

tl::expected<Workbook, Message> Workbook::open(const fs::path& path, const Surroundings& surroundings) {
    std::error_code unknown;
    if (!fs::exists(path, unknown)) return tl::unexpected(about("workbook.no-such-file", path));
    if (!fs::is_regular_file(path, unknown)) return tl::unexpected(about("workbook.not-a-workbook", path));
    return guarded(path, [&]() -> tl::expected<Workbook, Message> {
        auto open = std::make_unique<Open>(path, surroundings);
        if (auto reason = unfit(open->database, path)) return tl::unexpected(std::move(*reason));
        if (auto unsafe = makeSafe(open->database, path, surroundings))
            return tl::unexpected(std::move(*unsafe));
        bringUpToDate(open->database);
        return Workbook(std::move(open));
    });
}

const fs::path& Workbook::path() const {
    return open_->path;
}

tl::expected<std::vector<SiteEntry>, Message> Workbook::sites() const {
    return guarded(open_->path, [&]() -> tl::expected<std::vector<SiteEntry>, Message> {
        SQLite::Statement select(open_->database, "SELECT id, name FROM site ORDER BY position, id");
        std::vector<SiteEntry> sites;
        while (select.executeStep())
            sites.push_back(
                {Id::parse(select.getColumn(0).getString()).value_or(Id{}), select.getColumn(1).getString()});
        return sites;
    });
}

tl::expected<Installation, Message> Workbook::load(Id site) const {
    return guarded(open_->path, [&] {
        const SQLite::Transaction oneMoment(open_->database);
        return readInstallation(open_->database, site);
    });
}

tl::expected<JournalEntry, Message> Workbook::add(const Installation& installation, const Message& label) {
    return guarded(open_->path, [&]() -> tl::expected<JournalEntry, Message> {
        auto entry = open_->journal.commit(label, [&]() -> tl::expected<void, Message> {
            insertInstallation(open_->database, installation);
            return {};
        });
        if (!entry) return tl::unexpected(std::move(entry.error()));
        return std::move(**entry);
    });
}

tl::expected<std::optional<JournalEntry>, Message> Workbook::commit(const Change& change) {
    return guarded(open_->path, [&] {
        return open_->journal.commit(change.label, [&]() -> tl::expected<void, Message> {
            for (const Edit& edit : change.edits)
                if (auto done = applyEdit(open_->database, edit); !done) return done;
            return {};
        });
    });
}

tl::expected<std::optional<JournalEntry>, Message> Workbook::undoable() const {
    return guarded(open_->path, [&]() -> Journal::Entry { return open_->journal.undoable(); });
}

tl::expected<std::optional<JournalEntry>, Message> Workbook::redoable() const {
    return guarded(open_->path, [&]() -> Journal::Entry { return open_->journal.redoable(); });
}

tl::expected<std::optional<JournalEntry>, Message> Workbook::undo() {
    return guarded(open_->path, [&] { return open_->journal.undo(); });
}

tl::expected<std::optional<JournalEntry>, Message> Workbook::redo() {
    return guarded(open_->path, [&] { return open_->journal.redo(); });
}

tl::expected<std::vector<JournalEntry>, Message> Workbook::journal() const {
    return guarded(open_->path, [&]() -> tl::expected<std::vector<JournalEntry>, Message> {
        return open_->journal.entries();
    });
}

tl::expected<std::string, Message> Workbook::putAttachment(std::span<const std::byte> bytes,
                                                           std::string_view mediaType) {
    return guarded(open_->path, [&]() -> tl::expected<std::string, Message> {
        return keepAttachment(open_->database, bytes, mediaType);
    });
}

tl::expected<AttachmentBytes, Message> Workbook::attachment(std::string_view digest) const {
    return guarded(open_->path, [&]() -> tl::expected<AttachmentBytes, Message> {
        auto kept = keptAttachment(open_->database, digest);
        if (!kept) {
            Message missing = about("workbook.no-such-attachment", open_->path);
            missing.arguments.emplace_back(std::string(digest));
            return tl::unexpected(std::move(missing));
        }
        if (digestOf(kept->bytes) != digest) return tl::unexpected(about("workbook.damaged", open_->path));
        return std::move(*kept);
    });
}

tl::expected<void, Message> Workbook::copyTo(const fs::path& target) const {
    if (auto taken = claim(target)) return tl::unexpected(std::move(*taken));
    auto copied = guarded(target, [&]() -> tl::expected<void, Message> {
        constexpr int wholeFile = -1;
        SQLite::Database copy(fileName(target), SQLite::OPEN_READWRITE);
        SQLite::Backup(copy, open_->database).executeStep(wholeFile);
        return {};
    });
    if (!copied) removeAttempt(target);
    return copied;
}

} // namespace loopwright
