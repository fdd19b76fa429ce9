// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/fixture.h"

namespace loopwright {
namespace {

/// A site with one visit that is issued and one that is open.
class IssuedTest : public WorkbookTest {
  protected:
    IssuedTest() { must(book.add(site, takenIn)); }

    Installation withSecondVisit() {
        Installation made = workshop(ids);
        made.visits[0].state = VisitState::Issued;
        made.visits.push_back({.id = ids.next(), .site = made.site.id, .label = "2031, periodic"});
        return made;
    }
    Visit& open() { return site.visits[1]; }
    std::string refusalOf(Edit edit) { return refusal(book.commit({takenIn, {std::move(edit)}})); }

    Installation site = withSecondVisit();
    Workbook book = create();
};

TEST_F(IssuedTest, NothingInItChanges) {
    const auto outcome = book.commit(setting(RecordKind::Visit, site.visits[0].id, "notes", "later"));
    ASSERT_EQ(refusal(outcome), "workbook.issued");
    EXPECT_EQ(outcome.error(), (Message{"workbook.issued", {std::string("2026, periodic")}}));
    forEachRowKind([&](auto blank) {
        using Record = decltype(blank);
        constexpr RecordKind kind = RecordTraits<Record>::kind;
        if (kind < RecordKind::Visit) return; // of the place, not of a visit
        Record row = (site.*RecordTraits<Record>::rows)[0];
        const auto& field = fieldsOf<Record>().back();
        const std::string other = field.info.kind == FieldKind::Day      ? "2040-01-01"
                                  : field.info.kind == FieldKind::Figure ? "7"
                                                                         : "later";
        EXPECT_EQ(refusalOf(setField(kind, row.id, std::string(field.info.key), other)), "workbook.issued")
            << recordName(kind);
        EXPECT_EQ(refusalOf(removeRecord(kind, row.id)), "workbook.issued") << recordName(kind);
        row.id = ids.next();
        if (kind == RecordKind::Visit) return; // a further visit may well be added
        EXPECT_EQ(refusalOf(insertRecord(row)), "workbook.issued") << recordName(kind);
    });
    EXPECT_EQ(must(book.load(site.site.id)), site);
    EXPECT_EQ(must(book.journal()).size(), 1u);
}

TEST_F(IssuedTest, NothingMovesOutOfItOrIntoIt) {
    const Id reading = site.circuitReadings[0].id;
    EXPECT_EQ(refusalOf(setField(RecordKind::CircuitReading, reading, "visit", open().id.text())),
              "workbook.issued");
    CircuitReading added{.id = ids.next(), .visit = open().id, .circuit = site.circuits[1].id};
    ASSERT_EQ(refusalOf(insertRecord(added)), "");
    EXPECT_EQ(refusalOf(setField(RecordKind::CircuitReading, added.id, "visit", site.visits[0].id.text())),
              "workbook.issued");
}

TEST_F(IssuedTest, NothingInItGoesWithWhatItSpeaksOf) {
    EXPECT_EQ(refusalOf(removeRecord(RecordKind::Circuit, site.circuits[1].id)), "workbook.issued");
    EXPECT_EQ(refusalOf(removeRecord(RecordKind::Board, site.boards[0].id)), "workbook.issued");
    EXPECT_EQ(refusalOf(removeRecord(RecordKind::Site, site.site.id)), "workbook.issued");
}

TEST_F(IssuedTest, OpenVisitAndThePlaceItselfGoOnChanging) {
    EXPECT_EQ(refusalOf(setField(RecordKind::Visit, open().id, "notes", "later")), "");
    EXPECT_EQ(refusalOf(setField(RecordKind::Circuit, site.circuits[1].id, "name", "Kiln, glaze room")), "");
    EXPECT_EQ(refusalOf(insertRecord(Observation{.id = ids.next(), .visit = open().id})), "");
}

TEST_F(IssuedTest, IssuingEndsUndo) {
    ASSERT_EQ(refusalOf(setField(RecordKind::Visit, open().id, "notes", "last words")), "");
    ASSERT_EQ(refusalOf(setField(RecordKind::Visit, open().id, "state",
                                 std::string(choiceKey(VisitState::Issued)))),
              "");
    const Installation issued = must(book.load(site.site.id));
    EXPECT_EQ(refusal(book.undo()), "workbook.issued");
    EXPECT_EQ(must(book.load(site.site.id)), issued);
}

TEST_F(IssuedTest, VisitThatCameInIssuedGoesWhenItsComingInIsTakenBack) {
    must(book.undo());
    EXPECT_TRUE(must(book.sites()).empty());
    must(book.redo());
    EXPECT_EQ(must(book.load(site.site.id)), site);
}

} // namespace
} // namespace loopwright
