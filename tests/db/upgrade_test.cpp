// SPDX-License-Identifier: GPL-3.0-or-later
// Workbooks that an older program has written: made here from the script of version 1.
#include "db/changeset.h"
#include "db/rows.h"
#include "db/schema.h"
#include "tests/db/fixture.h"
#include "tests/support/without_privileges.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <fstream>
#include <sstream>

namespace loopwright {
namespace {

std::string scriptOf(int version) {
    std::ifstream file(std::string(LOOPWRIGHT_SOURCE_DIR "/db/schema/") + std::to_string(version) + ".sql");
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

class UpgradeTest : public WorkbookTest {
  protected:
    UpgradeTest() {
        old().exec("PRAGMA journal_mode = WAL");
        old().exec(scriptOf(1));
        old().exec("PRAGMA application_id = " + std::to_string(workbookApplicationId) +
                   "; PRAGMA user_version = 1");
        site.currentLogs.clear(); // which version 1 did not know
        site.visits[0].state = VisitState::Issued;
        site.visits.push_back({.id = ids.next(), .site = site.site.id, .label = "2031, periodic"});
        record([&] { insertSite(); });
    }

    SQLite::Database old() {
        return SQLite::Database(path.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    }

    template <class Record>
    void insert(SQLite::Database& file, const Record& row) {
        const std::string table(RecordTraits<Record>::name);
        std::string columns = "id, position",
                    values = "'" + row.id.text() + "', " + std::to_string(++position);
        for (const auto& field : fieldsOf<Record>()) {
            const std::string text = field.get(row);
            SQLite::Statement known(file, "SELECT 1 FROM pragma_table_info(?) WHERE name = ?");
            known.bind(1, table);
            known.bind(2, columnOf(field.info.key));
            if (!known.executeStep() || text.empty()) continue;
            columns += ", \"" + columnOf(field.info.key) + "\"";
            values += ", '" + text + "'";
        }
        file.exec("INSERT INTO " + table + " (" + columns + ") VALUES (" + values + ")");
    }
    void insertSite() {
        insert(*recorded, site.site);
        forEachRowKind([&](auto blank) {
            for (const auto& row : site.*RecordTraits<decltype(blank)>::rows)
                insert(*recorded, row);
        });
    }

    /// Does `work` on `recorded` as the program of version 1 did, with its journal entry.
    void record(const std::function<void()>& work) {
        SQLite::Database file = old();
        recorded = &file;
        std::vector<std::string> tables{"site"};
        forEachRowKind([&](auto blank) { tables.emplace_back(RecordTraits<decltype(blank)>::name); });
        SQLite::Transaction transaction(file);
        const Recording recording(file, tables);
        work();
        const Changeset changes = recording.changeset();
        SQLite::Statement entry(file, "INSERT INTO journal (id, at, who, action, label_key, label_arguments, "
                                      "changeset) VALUES (?, '2026-03-10T09:00:00Z', 'A. Tester', 'change', "
                                      "'change.added', '[\"Net loft\"]', ?)");
        entry.bind(1, ids.next().text());
        entry.bind(2, changes.bytes().data(), static_cast<int>(changes.bytes().size()));
        entry.exec();
        transaction.commit();
    }

    int versionOfFile() { return old().execAndGet("PRAGMA user_version").getInt(); }
    Id kiln() const { return site.circuits[1].id; }

    Installation site = workshop(ids);
    SQLite::Database* recorded = nullptr;
    int position = 0;
};

TEST_F(UpgradeTest, OlderWorkbookIsBroughtUpToDateAndHoldsWhatItHeld) {
    EXPECT_EQ(versionOfFile(), 1);
    EXPECT_EQ(must(open().load(site.site.id)), site);
    EXPECT_EQ(versionOfFile(), latestSchemaVersion());
    EXPECT_EQ(must(open().load(site.site.id)), site);
    EXPECT_EQ(must(open().journal()).size(), 1u);
}

TEST_F(UpgradeTest, EveryFieldCanBeWrittenAfterwards) {
    Workbook book = open();
    must(book.commit(setting(RecordKind::Circuit, kiln(), "device.thermalSetting_A", "80")));
    must(book.commit(setting(RecordKind::Equipment, site.equipment[0].id, "kind", "space-heating")));
    const Installation loaded = must(book.load(site.site.id));
    EXPECT_EQ(loaded.circuits[1].device.thermalSetting, Entry<Current>::of(amperes(80), 0));
    EXPECT_EQ(loaded.equipment[0].kind, EquipmentKind::SpaceHeating);
}

TEST_F(UpgradeTest, AWorkbookOfVersionThreeLearnsHowWarmItIsAroundDevices) {
    for (const int version : {2, 3})
        old().exec(scriptOf(version));
    old().exec("PRAGMA user_version = 3");
    {
        SQLite::Database file = old();
        SQLite::Statement known(file, "SELECT 1 FROM pragma_table_info('board') WHERE name = 'ambient_degC'");
        ASSERT_FALSE(known.executeStep()) << "version 3 has no such column";
    }
    Workbook book = open();
    EXPECT_EQ(versionOfFile(), latestSchemaVersion());
    EXPECT_EQ(must(book.load(site.site.id)), site);
    must(book.commit(setting(RecordKind::Board, site.boards[0].id, "ambient_degC", "45")));
    EXPECT_EQ(must(book.load(site.site.id)).boards[0].ambient, Entry<Temperature>::of(celsius(45), 0));
    must(book.undo());
    EXPECT_EQ(must(book.load(site.site.id)), site);
}

TEST_F(UpgradeTest, LogsCanBeKeptAfterwards) {
    Workbook book = open();
    const std::string_view text = "0;5\n1;6\n";
    const CircuitReading reading{.id = ids.next(), .visit = site.visits[1].id, .circuit = kiln()};
    const CurrentLog log{.id = ids.next(),
                         .reading = reading.id,
                         .digest = must(book.putAttachment(std::as_bytes(std::span(text)), "text/csv")),
                         .mediaType = "text/csv"};
    must(book.commit({takenIn, {insertRecord(reading), insertRecord(log)}}));
    EXPECT_EQ(must(open().load(site.site.id)).currentLogs, std::vector{log});
    must(book.undo());
    EXPECT_TRUE(must(open().load(site.site.id)).currentLogs.empty());
}

TEST_F(UpgradeTest, ChangeOfTheOlderProgramIsTakenBackAndDoneAgain) {
    record([&] { recorded->exec("UPDATE circuit SET name = 'Forge' WHERE id = '" + kiln().text() + "'"); });
    Workbook book = open();
    must(book.commit(setting(RecordKind::Circuit, kiln(), "takenOut", "true")));
    ASSERT_TRUE(must(book.undo())); // of the newer program
    ASSERT_TRUE(must(book.undo())); // of the older one
    EXPECT_EQ(must(book.load(site.site.id)), site);
    ASSERT_TRUE(must(book.redo()));
    EXPECT_EQ(must(book.load(site.site.id)).circuits[1].name, "Forge");
}

TEST_F(UpgradeTest, RowThatTheOlderProgramRemovedComesBackAndGoesAgain) {
    const std::string heater = site.equipment[0].id.text();
    record([&] { recorded->exec("DELETE FROM equipment WHERE id = '" + heater + "'"); });
    Workbook book = open();
    EXPECT_TRUE(must(book.load(site.site.id)).equipment.empty());
    ASSERT_TRUE(must(book.undo()));
    EXPECT_EQ(must(book.load(site.site.id)), site);
    ASSERT_TRUE(must(book.redo()));
    EXPECT_TRUE(must(book.load(site.site.id)).equipment.empty());
}

TEST_F(UpgradeTest, WholeSiteOfTheOlderProgramGoesAndComesBack) {
    Workbook book = open();
    must(book.undo());
    EXPECT_TRUE(must(book.sites()).empty());
    must(book.redo());
    EXPECT_EQ(must(book.load(site.site.id)), site);
}

TEST_F(UpgradeTest, IssuedVisitStaysAsItWasAndItsCircuitMayBeTakenOut) {
    Workbook book = open();
    const Id reading = site.circuitReadings[0].id;
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::CircuitReading, reading, "residualHalf", "correct"))),
              "workbook.issued");
    EXPECT_EQ(refusal(book.commit(
                  setting(RecordKind::Instrument, site.instruments[0].id, "loopUncertainty_percent", "5"))),
              "workbook.issued");
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::Circuit, kiln(), "takenOut", "true"))), "");
    EXPECT_EQ(must(book.load(site.site.id)).circuitReadings, site.circuitReadings);
}

TEST_F(UpgradeTest, UpgradeThatIsRefusedLeavesTheFileAsItWas) {
    old().exec("ALTER TABLE circuit_reading ADD COLUMN residualHalf TEXT"); // the last step of version 2
    EXPECT_NE(refusal(Workbook::open(path, surroundings())), "");
    EXPECT_EQ(versionOfFile(), 1);
    SQLite::Database file = old();
    SQLite::Statement added(file, "SELECT 1 FROM pragma_table_info('equipment') WHERE name = 'kind'");
    EXPECT_FALSE(added.executeStep()) << "half of version 2 is there";
}

TEST_F(UpgradeTest, FullDiskLeavesTheFileAsItWas) {
    Surroundings full = surroundings();
    full.mostPages = 1;
    // The pages that are there count whatever the bound is, so that only what must grow is refused.
    const auto outcome = Workbook::open(path, full);
    if (!outcome) {
        EXPECT_EQ(refusal(outcome), "workbook.disk-full");
        EXPECT_EQ(versionOfFile(), 1);
    }
    EXPECT_EQ(must(open().load(site.site.id)), site);
}

TEST_F(UpgradeTest, OlderFileThatMayOnlyBeReadIsRefusedAndStaysOld) {
    std::filesystem::permissions(path, std::filesystem::perms::owner_read);
    {
        const WithoutPrivileges bound;
        EXPECT_EQ(refusal(Workbook::open(path, surroundings())), "workbook.read-only");
    }
    EXPECT_EQ(versionOfFile(), 1);
}

TEST_F(UpgradeTest, TwoProgramsMayOpenAnOlderFileAtOnce) {
    Workbook first = open(), second = open("B. Tester");
    must(first.commit(setting(RecordKind::Circuit, kiln(), "demand_A", "12")));
    EXPECT_EQ(must(second.load(site.site.id)).circuits[1].demand, Entry<Current>::of(amperes(12), 0));
}

} // namespace
} // namespace loopwright
