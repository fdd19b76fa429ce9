// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/Database.h>

#include <cstddef>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

struct sqlite3_session;
struct sqlite3_changeset_iter;

/// SQLite's session extension, owned. Everything here throws SQLite::Exception when SQLite refuses.
namespace loopwright {

/// What happened to some rows: each row's key, and its columns before and after.
class Changeset {
  public:
    Changeset() = default;
    Changeset(void* bytes, int size)
      : bytes_(bytes)
      , size_(size) {} ///< owns `bytes`, which sqlite3_malloc has given
    std::span<const std::byte> bytes() const {
        return {static_cast<const std::byte*>(bytes_.get()), static_cast<std::size_t>(size_)};
    }
    bool empty() const { return size_ == 0; }

  private:
    struct Free {
        void operator()(void* bytes) const;
    };
    std::unique_ptr<void, Free> bytes_;
    int size_ = 0;
};

/// Records what happens to `tables` while it lives. Never set a preupdate hook on the same connection: both
/// use the one slot there is, and the changeset would be empty without a word.
class Recording {
  public:
    Recording(SQLite::Database& database, const std::vector<std::string>& tables);
    /// What has happened so far; empty when every row is as it was.
    Changeset changeset() const;

  private:
    struct Delete {
        void operator()(sqlite3_session* session) const;
    };
    SQLite::Database& database_;
    std::unique_ptr<sqlite3_session, Delete> session_;
};

/// One row of a changeset.
struct ChangedRow {
    enum class What : std::uint8_t { Inserted, Updated, Deleted };
    What what = What::Updated;
    std::string table;
    /// The value of a column before and after, as text; empty where the changeset does not hold it, which of
    /// an update are all columns that stayed, except the key.
    std::vector<std::string> before;
    std::vector<std::string> after;
};

void forEachRow(std::span<const std::byte> changeset, const std::function<void(const ChangedRow&)>& visit);

/// The changeset that takes `changeset` back.
Changeset inverse(std::span<const std::byte> changeset);
/// Applies a changeset in the transaction that is open. False, with nothing applied, when a row is not as the
/// changeset found it.
bool applyExactly(SQLite::Database& database, std::span<const std::byte> changeset);

} // namespace loopwright
