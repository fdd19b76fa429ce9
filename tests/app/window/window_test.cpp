// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/window/window_fixture.h"

namespace loopwright {
namespace {

TEST_F(WindowTest, AReadingTypedIntoTheSheetIsJudgedAtOnceAndKeptInTheFile) {
    openDemo();
    const Id circuit = soundCircuit().id;
    go(circuit, SheetColumnId::Loop);
    ASSERT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::Holds);
    press("99.9");
    key(Qt::Key_Return);
    EXPECT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::Fails);
    const Installation fromFile = inFile();
    const auto* kept = readingOf(fromFile, circuit);
    ASSERT_NE(kept, nullptr);
    EXPECT_DOUBLE_EQ(in(kept->loopImpedance.value, units::ohm), 99.9);

    go(circuit, SheetColumnId::Loop);
    ReasonsModel& reasons = window.area().reasons().model();
    ASSERT_NE(reasons.findingAt(0), nullptr);
    EXPECT_EQ(reasons.findingAt(0)->verdict, Verdict::Fails);
    EXPECT_EQ(reasons.subject().id, circuit);
}

TEST_F(WindowTest, WhatIsBeingTypedIsKeptWhenTheWindowCloses) {
    openDemo();
    const Id circuit = soundCircuit().id;
    go(circuit, SheetColumnId::Loop);
    press("99.9");
    window.close();
    const Installation fromFile = inFile();
    const auto* kept = readingOf(fromFile, circuit);
    ASSERT_NE(kept, nullptr);
    EXPECT_DOUBLE_EQ(in(kept->loopImpedance.value, units::ohm), 99.9);
}

TEST_F(WindowTest, WhatCannotBeAValueIsRefusedInItsCell) {
    openDemo();
    const Id circuit = soundCircuit().id;
    const auto before = readingOf(site(), circuit)->loopImpedance;
    go(circuit, SheetColumnId::Loop);
    press("abc");
    key(Qt::Key_Return);
    auto* editor = sheet().findChild<CellEditor*>();
    ASSERT_NE(editor, nullptr);
    EXPECT_THAT(editor->refusal().toStdString(), testing::HasSubstr("“abc” is not a figure"));
    picture("window-refused.png");
    key(Qt::Key_Escape);
    EXPECT_EQ(readingOf(site(), circuit)->loopImpedance, before);
    const Installation fromFile = inFile();
    EXPECT_EQ(readingOf(fromFile, circuit)->loopImpedance, before);
}

TEST_F(WindowTest, UndoAndRedoByKeyboard) {
    openDemo();
    const Id circuit = soundCircuit().id;
    go(circuit, SheetColumnId::Loop);
    press("99.9");
    key(Qt::Key_Return);
    ASSERT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::Fails);
    EXPECT_THAT(window.action(ActionId::Undo).text().toStdString(), testing::HasSubstr("99.9\u00A0Ω"));
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::Holds);
    key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::Fails);
    EXPECT_FALSE(window.action(ActionId::Redo).isEnabled());
}

TEST_F(WindowTest, KeysMoveAmongPlacesSheetAndReasons) {
    openDemo();
    window.area().toSheet();
    key(Qt::Key_F2);
    EXPECT_EQ(QApplication::focusWidget(), &window.area().places().tree());
    key(Qt::Key_F6);
    EXPECT_EQ(QApplication::focusWidget(), &window.area().reasons().list());
    key(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), &sheet());
    key(Qt::Key_K, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), &window.goToField());
    press("kiln");
    picture("window-go-to.png");
    key(Qt::Key_Return);
    EXPECT_FALSE(window.goToField().hasFocus());
}

TEST_F(WindowTest, DeleteClearsAndInsertAddsAWay) {
    openDemo();
    const Id circuit = soundCircuit().id;
    go(circuit, SheetColumnId::Loop);
    key(Qt::Key_Delete);
    EXPECT_TRUE(readingOf(site(), circuit)->loopImpedance.isMissing());
    EXPECT_EQ(window.book()->view()->assessment.worst(circuit), Verdict::CannotTell);
    const std::size_t before = site().circuits.size();
    key(Qt::Key_Insert);
    EXPECT_EQ(site().circuits.size(), before + 1);
    EXPECT_EQ(sheet().currentCircuit(), site().circuits.back().id);
}

TEST_F(WindowTest, ARecordOpensInItsFormAndEscLeadsBack) {
    openDemo();
    window.action(ActionId::OpenCircuit).trigger();
    EXPECT_FALSE(window.area().isSheetShown());
    EXPECT_EQ(window.area().form().kind(), RecordKind::Circuit);
    picture("window-circuit.png");
    const auto look = [&](RecordKind kind, Id id, const char* name) {
        window.area().goTo({kind, id});
        picture(name);
    };
    look(RecordKind::Supply, site().supplies.front().id, "window-supply.png");
    look(RecordKind::Visit, site().visits.back().id, "window-visit.png");
    look(RecordKind::Equipment, site().equipment.front().id, "window-equipment.png");
    look(RecordKind::Observation, site().observations.back().id, "window-observation.png");
    look(RecordKind::Instrument, site().instruments.back().id, "window-instrument.png");
    window.action(ActionId::OpenBoard).trigger();
    picture("window-board.png");
    window.action(ActionId::ToSheet).trigger();
    EXPECT_TRUE(window.area().isSheetShown());
    window.action(ActionId::OpenSite).trigger();
    EXPECT_EQ(window.area().form().kind(), RecordKind::Site);
    picture("window-site.png");
}

TEST_F(WindowTest, AnObservationIsNotedAndOpened) {
    openDemo();
    const std::size_t before = site().observations.size();
    window.action(ActionId::NoteObservation).trigger();
    EXPECT_EQ(site().observations.size(), before + 1);
    EXPECT_EQ(window.area().form().kind(), RecordKind::Observation);
}

TEST_F(WindowTest, AnInspectionIsTypedKeptAndUndone) {
    openDemo();
    key(Qt::Key_I, Qt::ControlModifier);
    ASSERT_TRUE(window.area().isInspectionShown());
    EXPECT_EQ(QApplication::focusWidget(), &window.area().inspection().list());
    const auto first = inFile().inspectionOutcomes;
    const auto ofVisit = [&](const InspectionOutcome& outcome) {
        return outcome.visit == window.book()->view()->visit && outcome.item == "intake-sound";
    };
    ASSERT_EQ(std::ranges::find_if(first, ofVisit)->result, InspectionResult::InOrder);
    press("3");
    const auto changed = inFile().inspectionOutcomes;
    EXPECT_EQ(std::ranges::find_if(changed, ofVisit)->result, InspectionResult::Limited);
    picture("window-inspection.png");
    key(Qt::Key_Z, Qt::ControlModifier);
    const auto undone = inFile().inspectionOutcomes;
    EXPECT_EQ(std::ranges::find_if(undone, ofVisit)->result, InspectionResult::InOrder);
    key(Qt::Key_Escape);
    EXPECT_TRUE(window.area().isSheetShown());
}

TEST_F(WindowTest, ANewBookHasASiteToBeginWith) {
    window.action(ActionId::NewBook).trigger();
    ASSERT_NE(window.book(), nullptr);
    EXPECT_EQ(site().boards.size(), 1U);
    EXPECT_EQ(site().visits.size(), 1U);
    picture("window-new.png");
    window.area().toSheet();
    key(Qt::Key_Insert);
    EXPECT_EQ(site().circuits.size(), 1U);
}

TEST_F(WindowTest, WhatIsNoWorkbookIsSaidOnTheStartPage) {
    const QString path = folder.filePath(QStringLiteral("notes.txt"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("not a workbook");
    file.close();
    EXPECT_FALSE(window.openBook(path));
    EXPECT_EQ(window.book(), nullptr);
    EXPECT_TRUE(window.startPage().isVisible());
    picture("window-start-refused.png");
}

TEST_F(WindowTest, WalkingThroughPlacesKeepsTheKeyboardThereAndReasonsFollows) {
    openDemo();
    key(Qt::Key_F2);
    ReasonsModel& reasons = window.area().reasons().model();
    EXPECT_EQ(reasons.subject(), (Subject{RecordKind::Board, window.area().board()}));
    key(Qt::Key_Up);
    EXPECT_EQ(QApplication::focusWidget(), &window.area().places().tree());
    EXPECT_EQ(reasons.subject(), (Subject{RecordKind::Supply, site().supplies.front().id}));
    EXPECT_EQ(window.area().form().kind(), RecordKind::Supply);
    key(Qt::Key_Down);
    EXPECT_TRUE(window.area().isSheetShown());
    key(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), &sheet());
    EXPECT_EQ(reasons.subject(), (Subject{RecordKind::Circuit, sheet().currentCircuit()}));
}

TEST_F(WindowTest, GoingToACircuitTakesPlacesAndTheStripAlong) {
    openDemo();
    const Circuit& last = site().circuits.back();
    ASSERT_NE(last.board, window.area().board());
    go(last.id, SheetColumnId::Loop);
    EXPECT_EQ(window.area().board(), last.board);
    const auto* place = static_cast<const PlacesModel*>(window.area().places().tree().model());
    EXPECT_EQ(place->subjectAt(window.area().places().tree().currentIndex()),
              (Subject{RecordKind::Board, last.board}));
    EXPECT_EQ(window.area().reasons().model().subject(), (Subject{RecordKind::Circuit, last.id}));
}

TEST_F(WindowTest, EscapeLeavesAFormOnceThereIsNothingToTakeBack) {
    openDemo();
    key(Qt::Key_E, Qt::ControlModifier);
    ASSERT_FALSE(window.area().isSheetShown());
    press("x");
    key(Qt::Key_Escape);
    EXPECT_FALSE(window.area().isSheetShown()) << "the first takes back what was typed";
    key(Qt::Key_Escape);
    EXPECT_TRUE(window.area().isSheetShown());
    EXPECT_EQ(QApplication::focusWidget(), &sheet());
}

} // namespace
} // namespace loopwright
