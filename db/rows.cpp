// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/rows.h"

#include "core/phrases/phrases.h"

#include <SQLiteCpp/Statement.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>

namespace loopwright {
namespace {

void bindField(SQLite::Statement& statement, int place, const std::string& text) {
    if (text.empty())
        statement.bind(place);
    else
        statement.bind(place, text);
}

std::string_view textIn(const SQLite::Column& column) {
    const char* text = column.getText();
    return {text, static_cast<std::size_t>(column.getBytes())};
}

/// ", "device_family", "device_ratedCurrent_A", ..." in the order of the catalogue.
template <class Record>
std::string columnList() {
    std::string list;
    for (const Field<Record>& field : fieldsOf<Record>())
        list += fmt::format(", \"{}\"", columnOf(field.info.key));
    return list;
}

/// The condition that a row belongs to the site that is bound to the statement's first place.
std::string belongsToSite(RecordKind kind) {
    std::string condition = "id = ?1";
    withRecordOf(kind, [&](auto blank) {
        const auto fields = fieldsOf<decltype(blank)>();
        const auto owner = std::ranges::find_if(fields, [](const auto& field) { return field.info.isOwner; });
        if (owner == fields.end()) return;
        condition = fmt::format("\"{}\" IN (SELECT id FROM \"{}\" WHERE {})", columnOf(owner->info.key),
                                recordName(owner->info.references), belongsToSite(owner->info.references));
    });
    return condition;
}

/// Says which value of which field this program cannot read.
template <class Record>
Message unreadable(const FieldInfo& field, std::string_view text) {
    const auto name = phrase(fmt::format("field.{}.{}", RecordTraits<Record>::name, field.key));
    const auto record = phrase(fmt::format("record.{}", RecordTraits<Record>::name));
    return {"workbook.unreadable-value",
            {Word{record ? record->key : std::string_view()}, Word{name ? name->key : std::string_view()},
             std::string(text)}};
}

template <class Record>
tl::expected<std::vector<Record>, Message> readRows(SQLite::Database& database, Id site) {
    SQLite::Statement select(database, fmt::format("SELECT id{} FROM \"{}\" WHERE {} ORDER BY position, id",
                                                   columnList<Record>(), RecordTraits<Record>::name,
                                                   belongsToSite(RecordTraits<Record>::kind)));
    select.bind(1, site.text());
    const auto fields = fieldsOf<Record>();
    std::vector<Record> rows;
    while (select.executeStep()) {
        Record& row = rows.emplace_back();
        row.id = Id::parse(textIn(select.getColumn(0))).value_or(Id{});
        for (std::size_t i = 0; i < fields.size(); ++i) {
            const std::string_view text = textIn(select.getColumn(static_cast<int>(i) + 1));
            if (!text.empty() && !fields[i].set(row, text))
                return tl::unexpected(unreadable<Record>(fields[i].info, text));
        }
    }
    return rows;
}

/// Inserts rows of one kind below all that are there.
template <class Record>
class Inserter {
  public:
    explicit Inserter(SQLite::Database& database)
      : insert_(database, statement()) {
        position_ = database
                        .execAndGet(fmt::format("SELECT coalesce(max(position), 0) FROM \"{}\"",
                                                RecordTraits<Record>::name))
                        .getInt64();
    }

    void insert(const Record& record) {
        insert_.reset();
        insert_.bind(1, record.id.text());
        insert_.bind(2, ++position_);
        int place = 2;
        for (const Field<Record>& field : fieldsOf<Record>())
            bindField(insert_, ++place, field.get(record));
        insert_.exec();
    }

  private:
    static std::string statement() {
        std::string places = "?, ?";
        for (std::size_t i = 0; i < fieldsOf<Record>().size(); ++i)
            places += ", ?";
        return fmt::format("INSERT INTO \"{}\" (id, position{}) VALUES ({})", RecordTraits<Record>::name,
                           columnList<Record>(), places);
    }

    SQLite::Statement insert_;
    std::int64_t position_ = 0;
};

Message naming(std::string_view key, Id id) {
    return {key, {id.text()}};
}

bool isThere(SQLite::Database& database, RecordKind kind, Id id) {
    SQLite::Statement select(database, fmt::format("SELECT 1 FROM \"{}\" WHERE id = ?", recordName(kind)));
    select.bind(1, id.text());
    return select.executeStep();
}

template <class Record>
tl::expected<void, Message> insertRow(SQLite::Database& database, const Edit& edit) {
    Record record{};
    record.id = edit.id;
    if (auto done = setFields(record, edit.values); !done) return done;
    Inserter<Record>(database).insert(record);
    return {};
}

template <class Record>
tl::expected<void, Message> setColumns(SQLite::Database& database, const Edit& edit) {
    Record scratch{};
    if (auto done = setFields(scratch, edit.values); !done) return done;
    for (const Field<Record>& field : fieldsOf<Record>()) {
        if (std::ranges::find(edit.values, field.info.key, &Edit::Value::key) == edit.values.end()) continue;
        SQLite::Statement update(database, fmt::format("UPDATE \"{}\" SET \"{}\" = ? WHERE id = ?",
                                                       RecordTraits<Record>::name, columnOf(field.info.key)));
        bindField(update, 1, field.get(scratch));
        update.bind(2, edit.id.text());
        update.exec();
    }
    return {};
}

void removeRow(SQLite::Database& database, const Edit& edit) {
    SQLite::Statement remove(database, fmt::format("DELETE FROM \"{}\" WHERE id = ?", recordName(edit.kind)));
    remove.bind(1, edit.id.text());
    remove.exec();
}

} // namespace

std::string columnOf(std::string_view fieldKey) {
    std::string column(fieldKey);
    std::ranges::replace(column, '.', '_');
    return column;
}

std::optional<Id> referenceIn(SQLite::Database& database, RecordKind kind, Id row,
                              std::string_view fieldKey) {
    SQLite::Statement select(database, fmt::format("SELECT \"{}\" FROM \"{}\" WHERE id = ?",
                                                   columnOf(fieldKey), recordName(kind)));
    select.bind(1, row.text());
    if (!select.executeStep()) return std::nullopt;
    return Id::parse(textIn(select.getColumn(0)));
}

tl::expected<Installation, Message> readInstallation(SQLite::Database& database, Id site) {
    const auto found = readRows<Site>(database, site);
    if (!found) return tl::unexpected(found.error());
    if (found->empty()) return tl::unexpected(naming("workbook.no-such-site", site));
    Installation installation;
    installation.site = found->front();
    std::optional<Message> refusal;
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        if (refusal) return;
        auto rows = readRows<Record>(database, site);
        if (rows)
            installation.*RecordTraits<Record>::rows = std::move(*rows);
        else
            refusal = rows.error();
    });
    if (refusal) return tl::unexpected(*refusal);
    return installation;
}

void insertInstallation(SQLite::Database& database, const Installation& installation) {
    Inserter<Site>(database).insert(installation.site);
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        Inserter<Record> inserter(database);
        for (const Record& row : installation.*RecordTraits<Record>::rows)
            inserter.insert(row);
    });
}

tl::expected<void, Message> applyEdit(SQLite::Database& database, const Edit& edit) {
    const bool there = isThere(database, edit.kind, edit.id);
    if (edit.step == Edit::Step::Insert && there)
        return tl::unexpected(naming("change.already-there", edit.id));
    if (edit.step != Edit::Step::Insert && !there)
        return tl::unexpected(naming("change.no-such-record", edit.id));
    if (edit.step == Edit::Step::Remove) {
        removeRow(database, edit);
        return {};
    }
    tl::expected<void, Message> outcome;
    withRecordOf(edit.kind, [&](auto blank) {
        using Record = decltype(blank);
        outcome = edit.step == Edit::Step::Insert ? insertRow<Record>(database, edit)
                                                  : setColumns<Record>(database, edit);
    });
    return outcome;
}

} // namespace loopwright
