// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/changeset.h"

#include <SQLiteCpp/Exception.h>
#include <sqlite3.h>

namespace loopwright {
namespace {

void check(int result) {
    if (result != SQLITE_OK) throw SQLite::Exception(sqlite3_errstr(result), result);
}

int sizeOf(std::span<const std::byte> changeset) {
    return static_cast<int>(changeset.size());
}

/// SQLite asks for a pointer to mutable bytes that it does not change.
void* bytesOf(std::span<const std::byte> changeset) {
    return const_cast<std::byte*>(changeset.data());
}

std::string textOf(sqlite3_value* value) {
    if (!value) return {};
    const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(value));
    return text ? std::string(text, static_cast<std::size_t>(sqlite3_value_bytes(value))) : std::string();
}

using ColumnReader = int (*)(sqlite3_changeset_iter*, int, sqlite3_value**);

std::vector<std::string> columnsOf(sqlite3_changeset_iter* row, int count, ColumnReader read) {
    std::vector<std::string> columns;
    for (int column = 0; column < count; ++column) {
        sqlite3_value* value = nullptr;
        check(read(row, column, &value));
        columns.push_back(textOf(value));
    }
    return columns;
}

ChangedRow changedRow(sqlite3_changeset_iter* row) {
    const char* table = nullptr;
    int columns = 0;
    int operation = 0;
    check(sqlite3changeset_op(row, &table, &columns, &operation, nullptr));
    ChangedRow changed{ChangedRow::What::Updated, table, {}, {}};
    if (operation == SQLITE_INSERT) changed.what = ChangedRow::What::Inserted;
    if (operation == SQLITE_DELETE) changed.what = ChangedRow::What::Deleted;
    if (operation != SQLITE_INSERT) changed.before = columnsOf(row, columns, sqlite3changeset_old);
    if (operation != SQLITE_DELETE) changed.after = columnsOf(row, columns, sqlite3changeset_new);
    return changed;
}

} // namespace

void Changeset::Free::operator()(void* bytes) const {
    sqlite3_free(bytes);
}

void Recording::Delete::operator()(sqlite3_session* session) const {
    sqlite3session_delete(session);
}

Recording::Recording(SQLite::Database& database, const std::vector<std::string>& tables)
  : database_(database) {
    sqlite3_session* session = nullptr;
    check(sqlite3session_create(database_.getHandle(), "main", &session));
    session_.reset(session);
    for (const std::string& table : tables)
        check(sqlite3session_attach(session, table.c_str()));
}

Changeset Recording::changeset() const {
    int size = 0;
    void* bytes = nullptr;
    check(sqlite3session_changeset(session_.get(), &size, &bytes));
    return {bytes, size};
}

void forEachRow(std::span<const std::byte> changeset, const std::function<void(const ChangedRow&)>& visit) {
    struct Finalize {
        void operator()(sqlite3_changeset_iter* rows) const { sqlite3changeset_finalize(rows); }
    };
    sqlite3_changeset_iter* started = nullptr;
    check(sqlite3changeset_start(&started, sizeOf(changeset), bytesOf(changeset)));
    const std::unique_ptr<sqlite3_changeset_iter, Finalize> rows(started);
    int step = SQLITE_OK;
    while ((step = sqlite3changeset_next(rows.get())) == SQLITE_ROW)
        visit(changedRow(rows.get()));
    if (step != SQLITE_DONE) check(step);
}

Changeset inverse(std::span<const std::byte> changeset) {
    int size = 0;
    void* bytes = nullptr;
    check(sqlite3changeset_invert(sizeOf(changeset), bytesOf(changeset), &size, &bytes));
    return {bytes, size};
}

bool applyExactly(SQLite::Database& database, std::span<const std::byte> changeset) {
    const auto refuse = [](void*, int, sqlite3_changeset_iter*) -> int { return SQLITE_CHANGESET_ABORT; };
    const int result = sqlite3changeset_apply(database.getHandle(), sizeOf(changeset), bytesOf(changeset),
                                              nullptr, refuse, nullptr);
    if (result == SQLITE_ABORT) return false;
    check(result);
    return true;
}

} // namespace loopwright
