// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/rows.h"
#include "tests/db/fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>

#include <map>

namespace loopwright {
namespace {

class Schema : public WorkbookTest {
  protected:
    Schema() { create(); }
    SQLite::Database database() { return SQLite::Database(path.string()); }
};

template <class Visitor>
void forEachKind(Visitor&& visit) {
    visit(Site{});
    forEachRowKind(visit);
}

TEST_F(Schema, ColumnsAreTheFieldCatalogue) {
    SQLite::Database file = database();
    forEachKind([&](auto blank) {
        using Record = decltype(blank);
        const std::string table(RecordTraits<Record>::name);
        std::vector<std::string> expected{"id TEXT", "position INTEGER"};
        for (const auto& field : fieldsOf<Record>())
            expected.push_back(columnOf(field.info.key) + " TEXT");
        std::vector<std::string> columns;
        SQLite::Statement select(file, "SELECT name, type FROM pragma_table_info(?)");
        select.bind(1, table);
        while (select.executeStep())
            columns.push_back(select.getColumn(0).getString() + " " + select.getColumn(1).getString());
        EXPECT_THAT(columns, testing::UnorderedElementsAreArray(expected)) << table;
    });
}

TEST_F(Schema, ReferencesAreTheFieldCatalogue) {
    SQLite::Database file = database();
    forEachKind([&](auto blank) {
        using Record = decltype(blank);
        const std::string table(RecordTraits<Record>::name);
        std::vector<std::string> expected;
        for (const auto& field : fieldsOf<Record>())
            if (field.info.kind == FieldKind::Reference)
                expected.push_back(columnOf(field.info.key) + " " +
                                   std::string(recordName(field.info.references)) +
                                   (field.info.isOwner ? " CASCADE" : " SET NULL"));
        std::vector<std::string> references;
        SQLite::Statement select(file,
                                 "SELECT \"from\", \"table\", on_delete FROM pragma_foreign_key_list(?)");
        select.bind(1, table);
        while (select.executeStep())
            references.push_back(select.getColumn(0).getString() + " " + select.getColumn(1).getString() +
                                 " " + select.getColumn(2).getString());
        EXPECT_THAT(references, testing::UnorderedElementsAreArray(expected)) << table;
    });
}

TEST_F(Schema, EveryReferenceHasAnIndex) {
    SQLite::Database file = database();
    SQLite::Statement select(
        file, "SELECT t.name || '.' || f.\"from\" FROM sqlite_schema t, pragma_foreign_key_list(t.name) f "
              "WHERE t.type = 'table' AND t.name <> 'journal' AND NOT EXISTS (SELECT 1 FROM "
              "pragma_index_list(t.name) i, pragma_index_info(i.name) c WHERE c.name = f.\"from\")");
    EXPECT_FALSE(select.executeStep()) << "no index on " << select.getColumn(0).getString();
}

TEST_F(Schema, EveryTableIsStrict) {
    SQLite::Database file = database();
    SQLite::Statement select(file,
                             "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                             "AND NOT strict AND name NOT LIKE 'sqlite_%'");
    EXPECT_FALSE(select.executeStep()) << select.getColumn(0).getString() << " is not strict";
}

TEST_F(Schema, JournalIsOnlyEverAddedTo) {
    must(open().add(workshop(ids), takenIn));
    SQLite::Database file(path.string(), SQLite::OPEN_READWRITE);
    EXPECT_THROW(file.exec("UPDATE journal SET who = 'somebody else'"), SQLite::Exception);
    EXPECT_THROW(file.exec("DELETE FROM journal"), SQLite::Exception);
    EXPECT_EQ(must(open().journal()).at(0).who, "A. Tester");
}

} // namespace
} // namespace loopwright
