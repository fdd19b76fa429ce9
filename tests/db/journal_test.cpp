// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"

#include <algorithm>

namespace loopwright {
namespace {

/// A workbook with one site in it.
class JournalTest : public WorkbookTest {
  protected:
    JournalTest() { must(book.add(before, takenIn)); }
    Installation loaded() { return must(book.load(before.site.id)); }
    Change reading(std::string text) {
        return setting(RecordKind::CircuitReading, before.circuitReadings[0].id, "loopImpedance_ohm",
                       std::move(text));
    }
    /// What core makes of the change, which the workbook must come to as well.
    static Installation after(Installation installation, const Change& change) {
        must(apply(installation, change));
        return installation;
    }

    const Installation before = workshop(ids);
    Workbook book = create();
};

TEST_F(JournalTest, ChangeIsStoredWithWhoWhenAndWhat) {
    const Change change = reading("0.54");
    const auto entry = must(book.commit(change));
    ASSERT_TRUE(entry);
    EXPECT_EQ(entry->who, "A. Tester");
    EXPECT_EQ(entry->at, testInstant);
    EXPECT_EQ(entry->label, change.label);
    EXPECT_EQ(entry->action, JournalAction::Change);
    EXPECT_EQ(loaded(), after(before, change));
    const auto entries = must(open("B. Tester").journal());
    ASSERT_EQ(entries.size(), 2u);
    EXPECT_EQ(entries[1], *entry);
    EXPECT_LT(entries[0].sequence, entries[1].sequence);
}

TEST_F(JournalTest, ChangeThatChangesNothingIsNoEntry) {
    must(book.commit(reading("0.54")));
    EXPECT_FALSE(must(book.commit(reading("0.54"))));
    EXPECT_FALSE(must(book.commit({{"change.field-cleared", {}}, {}})));
    EXPECT_EQ(must(book.journal()).size(), 2u);
}

TEST_F(JournalTest, InsertThatIsTakenBackInTheSameChangeIsNoEntry) {
    const Equipment lamp{.id = ids.next(), .circuit = before.circuits[1].id, .name = "Lamp"};
    EXPECT_FALSE(
        must(book.commit({takenIn, {insertRecord(lamp), removeRecord(RecordKind::Equipment, lamp.id)}})));
}

TEST_F(JournalTest, UndoTakesBackAndRedoDoesAgain) {
    const auto entry = must(book.commit(reading("0.54")));
    const Installation changed = loaded();
    ASSERT_EQ(must(book.undoable()), entry);
    const auto undone = must(book.undo());
    ASSERT_TRUE(undone);
    EXPECT_EQ(undone->action, JournalAction::Undo);
    EXPECT_EQ(undone->reverses, entry->id);
    EXPECT_EQ(undone->label, entry->label);
    EXPECT_EQ(loaded(), before);
    EXPECT_EQ(must(book.redoable()), undone);
    const auto redone = must(book.redo());
    ASSERT_TRUE(redone);
    EXPECT_EQ(redone->action, JournalAction::Redo);
    EXPECT_EQ(redone->reverses, undone->id);
    EXPECT_EQ(loaded(), changed);
    EXPECT_EQ(must(book.journal()).size(), 4u) << "undo and redo are entries of their own";
}

TEST_F(JournalTest, UndoOutlivesTheProgram) {
    must(book.commit(reading("0.54")));
    book = open("B. Tester");
    const auto undone = must(book.undo());
    ASSERT_TRUE(undone);
    EXPECT_EQ(undone->who, "B. Tester");
    EXPECT_EQ(loaded(), before);
}

TEST_F(JournalTest, NewChangeClearsRedo) {
    must(book.commit(reading("0.54")));
    must(book.undo());
    must(book.commit(reading("0.61")));
    EXPECT_FALSE(must(book.redoable()));
    EXPECT_FALSE(must(book.redo()));
    EXPECT_EQ(loaded(), after(before, reading("0.61")));
}

TEST_F(JournalTest, TakingInASiteCanBeTakenBack) {
    must(book.undo());
    EXPECT_TRUE(must(book.sites()).empty());
    must(book.redo());
    EXPECT_EQ(loaded(), before);
}

TEST_F(JournalTest, RemovedBoardTakesItsBelongingsAndUndoBringsThemBackWhereTheyStood) {
    const Change removal{{"change.removed", {std::string("Board A")}},
                         {removeRecord(RecordKind::Board, before.boards[0].id)}};
    must(book.commit(removal));
    EXPECT_EQ(loaded(), after(before, removal));
    EXPECT_TRUE(loaded().boards[0].fedFrom.isNone()) << "Board B was fed from the board that is gone";
    must(book.undo());
    EXPECT_EQ(loaded(), before);
    must(book.redo());
    EXPECT_EQ(loaded(), after(before, removal));
}

TEST_F(JournalTest, StepsMayComeInAnyOrder) {
    const Board added{.id = ids.next(), .site = before.site.id, .name = "Board C"};
    const Circuit circuit{.id = ids.next(), .board = added.id, .way = "1"};
    const Change change{takenIn, {insertRecord(circuit), insertRecord(added)}};
    must(book.commit(change));
    EXPECT_EQ(loaded(), after(before, change));
}

TEST_F(JournalTest, RefusesWhatTheCatalogueDoesNotAllow) {
    const Id circuit = before.circuits[1].id;
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::Circuit, circuit, "wiring.colour", "red"))),
              "change.unknown-field");
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::Circuit, circuit, "wiring.lineSize_mm2", "-4"))),
              "entry.negative");
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::Circuit, circuit, "use", "laundry"))),
              "field.unknown-option");
    EXPECT_EQ(refusal(book.commit(setting(RecordKind::Circuit, ids.next(), "name", "Kiln"))),
              "change.no-such-record");
    EXPECT_EQ(refusal(book.commit({takenIn, {removeRecord(RecordKind::Visit, ids.next())}})),
              "change.no-such-record");
    EXPECT_EQ(refusal(book.commit({takenIn, {insertRecord(before.circuits[1])}})), "change.already-there");
    EXPECT_EQ(loaded(), before);
    EXPECT_EQ(must(book.journal()).size(), 1u);
}

TEST_F(JournalTest, RefusesReferencesToNothing) {
    const Id board = before.boards[1].id;
    const auto outcome = book.commit(setting(RecordKind::Board, board, "fedFrom", ids.next().text()));
    ASSERT_EQ(refusal(outcome), "workbook.dangling-reference");
    EXPECT_EQ(shown(outcome.error()), "workbook.dangling-reference [record.board] [record.circuit]");
    EXPECT_EQ(refusal(book.commit({takenIn, {insertRecord(Circuit{.id = ids.next()})}})),
              "workbook.owner-missing");
    EXPECT_EQ(loaded(), before);
}

TEST_F(JournalTest, RefusedChangeLeavesNothingOfItsEarlierSteps) {
    Change change = reading("0.54");
    change.edits.push_back(setField(RecordKind::Circuit, before.circuits[1].id, "wiring.length_m", "long"));
    EXPECT_NE(refusal(book.commit(change)), "");
    EXPECT_EQ(loaded(), before);
}

TEST_F(JournalTest, SecondProgramSeesWhatIsCommittedAndMayTakeItBack) {
    Workbook second = open("B. Tester");
    must(book.commit(reading("0.54")));
    EXPECT_EQ(must(second.load(before.site.id)), after(before, reading("0.54")));
    must(second.commit(reading("0.61")));
    must(book.undo());
    must(second.undo());
    EXPECT_EQ(loaded(), before);
    const auto entries = must(book.journal());
    std::vector<std::string> who;
    std::ranges::transform(entries, std::back_inserter(who), &JournalEntry::who);
    EXPECT_EQ(who,
              (std::vector<std::string>{"A. Tester", "A. Tester", "B. Tester", "A. Tester", "B. Tester"}));
}

TEST_F(JournalTest, CopyIsAWorkbookOfItsOwn) {
    must(book.commit(reading("0.54")));
    must(book.copyTo(folder / "copy.loopwright"));
    must(book.undo());
    Workbook copy = must(Workbook::open(folder / "copy.loopwright", surroundings()));
    EXPECT_EQ(must(copy.load(before.site.id)), after(before, reading("0.54")));
    EXPECT_EQ(must(copy.journal()).size(), 2u);
    EXPECT_EQ(refusal(book.copyTo(folder / "copy.loopwright")), "workbook.already-there");
}

} // namespace
} // namespace loopwright
