// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal.h"

#include "core/phrases/phrases.h"
#include "db/changeset.h"
#include "db/issued.h"
#include "db/label_text.h"

#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <array>

namespace loopwright {
namespace {

constexpr std::array actionWords{std::string_view("change"), std::string_view("undo"),
                                 std::string_view("redo")};

JournalAction actionNamed(std::string_view word) {
    if (word == "undo") return JournalAction::Undo;
    return word == "redo" ? JournalAction::Redo : JournalAction::Change;
}

constexpr std::string_view selectEntries =
    "SELECT sequence, id, unixepoch(at), who, action, reverses, label_key, "
    "label_arguments FROM journal ";

JournalEntry entryFrom(SQLite::Statement& row) {
    return {row.getColumn(0).getInt64(),
            Id::parse(row.getColumn(1).getString()).value_or(Id{}),
            std::chrono::sys_seconds(std::chrono::seconds(row.getColumn(2).getInt64())),
            row.getColumn(3).getString(),
            actionNamed(row.getColumn(4).getString()),
            Id::parse(row.getColumn(5).getString()).value_or(Id{}),
            labelFrom(row.getColumn(6).getString(), row.getColumn(7).getString())};
}

std::vector<std::byte> changesetOf(SQLite::Database& database, std::int64_t sequence) {
    SQLite::Statement select(database, "SELECT changeset FROM journal WHERE sequence = ?");
    select.bind(1, sequence);
    if (!select.executeStep()) return {};
    const SQLite::Column column = select.getColumn(0);
    const auto* bytes = static_cast<const std::byte*>(column.getBlob());
    return {bytes, bytes + column.getBytes()};
}

std::string_view wordFor(const std::string& recordTable) {
    const auto word = phrase("record." + recordTable);
    return word ? word->key : std::string_view();
}

/// A reference that leads nowhere now, in words; nothing when there is none. Only when SQLite counts one does
/// it search the whole workbook for which it is.
std::optional<Message> danglingReference(SQLite::Database& database) {
    int unresolved = 0;
    int highest = 0;
    sqlite3_db_status(database.getHandle(), SQLITE_DBSTATUS_DEFERRED_FKS, &unresolved, &highest, 0);
    if (unresolved == 0) return std::nullopt;
    SQLite::Statement check(database, "PRAGMA foreign_key_check");
    if (!check.executeStep()) return std::nullopt;
    return Message{
        "workbook.dangling-reference",
        {Word{wordFor(check.getColumn(0).getString())}, Word{wordFor(check.getColumn(2).getString())}}};
}

/// Keeps foreign keys from acting while a changeset is applied: it holds what they did when it was recorded.
class ForeignKeysSuspended {
  public:
    explicit ForeignKeysSuspended(SQLite::Database& database)
      : database_(database) {
        database_.exec("PRAGMA foreign_keys = OFF");
    }
    ~ForeignKeysSuspended() { database_.tryExec("PRAGMA foreign_keys = ON"); }
    ForeignKeysSuspended(const ForeignKeysSuspended&) = delete;
    ForeignKeysSuspended& operator=(const ForeignKeysSuspended&) = delete;

  private:
    SQLite::Database& database_;
};

} // namespace

Journal::Journal(SQLite::Database& database, const Surroundings& surroundings)
  : database_(database)
  , surroundings_(surroundings)
  , tables_{std::string(RecordTraits<Site>::name)} {
    forEachRowKind([&](auto blank) { tables_.emplace_back(RecordTraits<decltype(blank)>::name); });
}

Journal::Entry Journal::commit(const Message& label, const Work& work) {
    SQLite::Transaction transaction(database_, SQLite::TransactionBehavior::IMMEDIATE);
    JournalEntry entry;
    entry.label = label;
    return record(transaction, std::move(entry), work);
}

Journal::Entry Journal::undo() {
    return reverse(JournalAction::Undo);
}

Journal::Entry Journal::redo() {
    return reverse(JournalAction::Redo);
}

Journal::Entry Journal::reverse(JournalAction action) {
    const ForeignKeysSuspended suspended(database_);
    SQLite::Transaction transaction(database_, SQLite::TransactionBehavior::IMMEDIATE);
    auto reversed = action == JournalAction::Undo ? undoable() : redoable();
    if (!reversed) return std::nullopt;
    const Changeset taken = inverse(changesetOf(database_, reversed->sequence));
    JournalEntry entry;
    entry.action = action;
    entry.reverses = reversed->id;
    entry.label = std::move(reversed->label);
    return record(transaction, std::move(entry), [&]() -> tl::expected<void, Message> {
        if (applyExactly(database_, taken.bytes())) return {};
        return tl::unexpected(Message{"workbook.changed-outside", {}});
    });
}

Journal::Entry Journal::record(SQLite::Transaction& transaction, JournalEntry entry, const Work& work) {
    const std::vector<IssuedVisit> issued = issuedVisits(database_);
    const Recording recording(database_, tables_);
    if (const auto done = work(); !done) return tl::unexpected(done.error());
    const Changeset changeset = recording.changeset();
    if (changeset.empty()) return std::nullopt;
    const bool mayGoWhole = entry.action != JournalAction::Change;
    if (const auto* visit = issuedVisitTouched(database_, issued, changeset.bytes(), mayGoWhole))
        return tl::unexpected(Message{"workbook.issued", {visit->label}});
    if (auto dangling = danglingReference(database_)) return tl::unexpected(std::move(*dangling));
    append(entry, changeset.bytes());
    transaction.commit();
    return entry;
}

void Journal::append(JournalEntry& entry, std::span<const std::byte> changeset) {
    entry.id = surroundings_.ids.next();
    entry.at = surroundings_.clock.now();
    entry.who = surroundings_.author.name;
    SQLite::Statement insert(
        database_,
        "INSERT INTO journal (id, at, who, action, reverses, label_key, label_arguments, changeset) "
        "VALUES (?, strftime('%Y-%m-%dT%H:%M:%SZ', ?, 'unixepoch'), ?, ?, ?, ?, ?, ?)");
    insert.bind(1, entry.id.text());
    insert.bind(2, static_cast<std::int64_t>(entry.at.time_since_epoch().count()));
    insert.bind(3, entry.who);
    insert.bind(4, std::string(actionWords.at(static_cast<std::size_t>(entry.action))));
    if (entry.reverses.isNone())
        insert.bind(5);
    else
        insert.bind(5, entry.reverses.text());
    insert.bind(6, std::string(entry.label.key));
    insert.bind(7, argumentsText(entry.label));
    insert.bind(8, changeset.data(), static_cast<int>(changeset.size()));
    insert.exec();
    entry.sequence = database_.getLastInsertRowid();
}

void Journal::readOn() {
    SQLite::Statement select(database_,
                             "SELECT sequence, action FROM journal WHERE sequence > ? ORDER BY sequence");
    select.bind(1, history_.last());
    while (select.executeStep())
        history_.add(select.getColumn(0).getInt64(), actionNamed(select.getColumn(1).getString()));
}

std::optional<JournalEntry> Journal::undoable() {
    readOn();
    return entry(history_.undoable());
}

std::optional<JournalEntry> Journal::redoable() {
    readOn();
    return entry(history_.redoable());
}

std::optional<JournalEntry> Journal::entry(std::optional<std::int64_t> sequence) const {
    if (!sequence) return std::nullopt;
    SQLite::Statement select(database_, fmt::format("{} WHERE sequence = ?", selectEntries));
    select.bind(1, *sequence);
    if (!select.executeStep()) return std::nullopt;
    return entryFrom(select);
}

std::vector<JournalEntry> Journal::entries() const {
    SQLite::Statement select(database_, fmt::format("{} ORDER BY sequence", selectEntries));
    std::vector<JournalEntry> entries;
    while (select.executeStep())
        entries.push_back(entryFrom(select));
    return entries;
}

} // namespace loopwright
