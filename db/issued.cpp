// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/issued.h"

#include "core/model/fields.h"
#include "db/changeset.h"
#include "db/rows.h"

#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <map>
#include <unordered_set>

namespace loopwright {
namespace {

/// The field that leads from a kind of record to the visit it is recorded in, if it is recorded in one.
const FieldInfo* wayToVisit(RecordKind kind) {
    const FieldInfo* way = nullptr;
    withRecordOf(kind, [&](auto blank) {
        for (const auto& field : fieldsOf<decltype(blank)>()) {
            if (way || !field.info.isOwner) continue;
            if (field.info.references == RecordKind::Visit || wayToVisit(field.info.references))
                way = &field.info;
        }
    });
    return way;
}

std::optional<RecordKind> kindOf(std::string_view table) {
    std::optional<RecordKind> kind;
    forEachRowKind([&](auto blank) {
        if (RecordTraits<decltype(blank)>::name == table) kind = RecordTraits<decltype(blank)>::kind;
    });
    return kind;
}

/// Finds the visits that the rows of a changeset are recorded in.
class VisitsTouched {
  public:
    explicit VisitsTouched(SQLite::Database& database)
      : database_(database) {}

    void add(const ChangedRow& row) {
        const auto kind = kindOf(row.table);
        if (!kind) return;
        if (*kind == RecordKind::Visit) {
            const Id visit = idIn(*kind, row, "id", row.what == ChangedRow::What::Inserted);
            touched_.insert(visit);
            if (row.what == ChangedRow::What::Deleted) removed_.insert(visit);
        } else if (const FieldInfo* way = wayToVisit(*kind)) {
            addOwner(*kind, *way, row);
        }
    }

    const std::unordered_set<Id>& touched() const { return touched_; }
    const std::unordered_set<Id>& removed() const { return removed_; }

  private:
    /// Before and after, where the changeset holds them; otherwise as the row is now.
    void addOwner(RecordKind kind, const FieldInfo& way, const ChangedRow& row) {
        const Id before = idIn(kind, row, columnOf(way.key), false);
        const Id after = idIn(kind, row, columnOf(way.key), true);
        for (const Id& owner : {before, after})
            if (!owner.isNone()) addVisitOf(way.references, owner);
        if (!before.isNone() || !after.isNone()) return;
        const Id self = idIn(kind, row, "id", false);
        if (const auto owner = referenceIn(database_, kind, self, way.key))
            addVisitOf(way.references, *owner);
    }

    /// Nothing to add when the record is gone: its own removal is in the changeset too.
    void addVisitOf(RecordKind kind, Id id) {
        if (kind == RecordKind::Visit) {
            touched_.insert(id);
            return;
        }
        const FieldInfo* way = wayToVisit(kind);
        if (const auto owner = referenceIn(database_, kind, id, way->key))
            addVisitOf(way->references, *owner);
    }

    Id idIn(RecordKind kind, const ChangedRow& row, const std::string& column, bool after) {
        const std::vector<std::string>& values = after ? row.after : row.before;
        const std::size_t index = columnIndex(kind, column);
        return index < values.size() ? Id::parse(values[index]).value_or(Id{}) : Id{};
    }

    std::size_t columnIndex(RecordKind kind, const std::string& column) {
        const auto known = columnIndexes_.find({kind, column});
        if (known != columnIndexes_.end()) return known->second;
        const SQLite::Statement select(database_, "SELECT * FROM \"" + std::string(recordName(kind)) + "\"");
        const auto index = static_cast<std::size_t>(select.getColumnIndex(column.c_str()));
        return columnIndexes_.emplace(std::pair(kind, column), index).first->second;
    }

    SQLite::Database& database_;
    std::map<std::pair<RecordKind, std::string>, std::size_t> columnIndexes_;
    std::unordered_set<Id> touched_;
    std::unordered_set<Id> removed_;
};

} // namespace

std::vector<IssuedVisit> issuedVisits(SQLite::Database& database) {
    SQLite::Statement select(database, "SELECT id, label FROM visit WHERE state = ?");
    select.bind(1, std::string(choiceKey(VisitState::Issued)));
    std::vector<IssuedVisit> issued;
    while (select.executeStep())
        issued.push_back(
            {Id::parse(select.getColumn(0).getString()).value_or(Id{}), select.getColumn(1).getString()});
    return issued;
}

const IssuedVisit* issuedVisitTouched(SQLite::Database& database, std::span<const IssuedVisit> issued,
                                      std::span<const std::byte> changeset, bool mayGoWhole) {
    if (issued.empty()) return nullptr;
    VisitsTouched visits(database);
    forEachRow(changeset, [&](const ChangedRow& row) { visits.add(row); });
    const auto found = std::ranges::find_if(issued, [&](const IssuedVisit& visit) {
        return visits.touched().contains(visit.id) && !(mayGoWhole && visits.removed().contains(visit.id));
    });
    return found == issued.end() ? nullptr : &*found;
}

} // namespace loopwright
