// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "db/history.h"
#include "db/workbook.h"

#include <SQLiteCpp/Database.h>

#include <functional>

namespace SQLite {
class Transaction;
}

namespace loopwright {

/// Carries out user actions, each in one transaction together with its entry. Throws SQLite::Exception when
/// SQLite refuses; whatever is refused, nothing has changed.
class Journal {
  public:
    using Entry = tl::expected<std::optional<JournalEntry>, Message>;
    using Work = std::function<tl::expected<void, Message>()>;

    /// `database` and what `surroundings` refers to outlive the journal.
    Journal(SQLite::Database& database, const Surroundings& surroundings);

    /// Does `work` as one user action; nothing when it leaves every row as it was.
    Entry commit(const Message& label, const Work& work);
    Entry undo();
    Entry redo();
    std::optional<JournalEntry> undoable();
    std::optional<JournalEntry> redoable();
    std::vector<JournalEntry> entries() const;

  private:
    Entry reverse(JournalAction action);
    Entry record(SQLite::Transaction& transaction, JournalEntry entry, const Work& work);
    void append(JournalEntry& entry, std::span<const std::byte> changeset);
    void readOn();
    std::optional<JournalEntry> entry(std::optional<std::int64_t> sequence) const;

    SQLite::Database& database_;
    Surroundings surroundings_;
    std::vector<std::string> tables_; ///< whose rows the journal records
    History history_;
};

} // namespace loopwright
