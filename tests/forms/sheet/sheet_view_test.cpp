// SPDX-License-Identifier: GPL-3.0-or-later
#include "../bench.h"
#include "forms/look/style.h"
#include "forms/sheet/cell_editor.h"
#include "forms/sheet/sheet_view.h"

#include <gmock/gmock.h>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QLabel>
#include <QScrollBar>
#include <QTest>

using namespace loopwright;

namespace {

class SheetTest : public testing::Test {
  protected:
    SheetTest() {
        bench.changed = [this](SiteViewPtr view) { model.show(view, bench.board); };
        model.show(bench.view(), bench.board);
        sheet.resize(794, 500);
        sheet.show();
        sheet.setFocus();
        QCoreApplication::processEvents();
    }
    QModelIndex cell(const char* way, SheetColumnId column) const {
        return model.index(model.rowOf(bench.circuit(way)), indexOf(column));
    }
    SheetCell at(const char* way, SheetColumnId column) const {
        return cell(way, column).data(SheetModel::CellRole).value<SheetCell>();
    }
    void go(const char* way, SheetColumnId column) { sheet.setCurrentIndex(cell(way, column)); }
    /// Each key to whatever has the keyboard by then: the first one opens the editor.
    static void press(const char* keys) {
        for (const QChar key : QString::fromUtf8(keys))
            QTest::keyClicks(QApplication::focusWidget(), key);
    }
    void type(const char* keys, Qt::Key end = Qt::Key_Return) {
        press(keys);
        QTest::keyClick(QApplication::focusWidget(), end);
        QCoreApplication::processEvents();
    }
    CellEditor* editor() const { return sheet.findChild<CellEditor*>(); }

    Bench bench;
    SheetModel model{bench.appearance, bench.ids, bench.door()};
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
    SheetView sheet{bench.appearance, model};
};

TEST_F(SheetTest, ATypedReadingChangesTheVerdictOfItsRowAtOnce) {
    ASSERT_EQ(at("1", SheetColumnId::Verdict).verdict, Verdict::Holds);
    go("1", SheetColumnId::Loop);
    type("9.99");
    EXPECT_EQ(at("1", SheetColumnId::Loop).text, "9.99");
    EXPECT_EQ(at("1", SheetColumnId::Loop).verdict, Verdict::Fails);
    EXPECT_EQ(at("1", SheetColumnId::Verdict).verdict, Verdict::Fails);
    ASSERT_EQ(bench.changes.size(), 1U);
    EXPECT_EQ(bench.changes[0].label.arguments[0], Argument(std::string("Board C / 1")));
    EXPECT_EQ(bench.changes[0].label.arguments[2], Argument(std::string("9.99\u00A0Ω")));
}

TEST_F(SheetTest, EnterGoesDownToTheNextCircuitAndPassesHeadingsAndSpareWays) {
    go("14", SheetColumnId::Loop);
    type("0.4");
    EXPECT_EQ(sheet.currentIndex(), cell("F1", SheetColumnId::Loop));
    type("0.5");
    EXPECT_EQ(sheet.currentIndex(), cell("1", SheetColumnId::ResidualTime)) << "round to the next column";
}

TEST_F(SheetTest, TabGoesAcrossPastWhatNobodyTypes) {
    go("1", SheetColumnId::Loop);
    type("1.5", Qt::Key_Tab);
    EXPECT_EQ(sheet.currentIndex(), cell("1", SheetColumnId::ResidualTime)) << "the limit is not typed";
    QTest::keyClick(&sheet, Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(sheet.currentIndex(), cell("1", SheetColumnId::Loop));
}

TEST_F(SheetTest, ARefusedTextStaysInItsCellWithTheReasonAndTheOldValueComesBack) {
    go("1", SheetColumnId::Loop);
    type("abc");
    ASSERT_NE(editor(), nullptr);
    EXPECT_TRUE(editor()->isRefused());
    EXPECT_THAT(editor()->refusal().toStdString(), testing::HasSubstr("“abc” is not a figure"));
    auto* panel = sheet.findChild<QLabel*>("refusal");
    ASSERT_NE(panel, nullptr);
    EXPECT_TRUE(panel->isVisible());
    EXPECT_EQ(panel->text(), editor()->refusal());
    EXPECT_GE(panel->width(), panel->sizeHint().width()) << "nothing of the sentence is cut";
    EXPECT_TRUE(sheet.viewport()->rect().contains(panel->geometry()));
    const QImage box = panel->grab().toImage();
    EXPECT_EQ(box.pixelColor(0, 0), bench.appearance.look().fails) << "a frame";
    EXPECT_EQ(box.pixelColor(2, 2), bench.appearance.look().failsWash) << "a fill";
    EXPECT_TRUE(bench.changes.empty());

    QTest::keyClick(editor(), Qt::Key_Escape);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
    EXPECT_EQ(editor(), nullptr);
    EXPECT_EQ(sheet.findChild<QLabel*>("refusal"), nullptr);
    EXPECT_EQ(at("1", SheetColumnId::Loop).text, "1.52");
}

TEST_F(SheetTest, LeavingACellWithAnImpossibleTextKeepsTheOldValueAndSaysSo) {
    QString said;
    QObject::connect(&sheet, &SheetView::refused, [&](const QString& sentence) { said = sentence; });
    go("1", SheetColumnId::Loop);
    press("abc");
    go("3", SheetColumnId::Loop);
    QCoreApplication::processEvents();
    EXPECT_THAT(said.toStdString(), testing::HasSubstr("abc"));
    EXPECT_EQ(at("1", SheetColumnId::Loop).text, "1.52");
}

TEST_F(SheetTest, ACorrectedTextIsStoredAfterARefusal) {
    go("1", SheetColumnId::Loop);
    type("abc");
    ASSERT_NE(editor(), nullptr);
    editor()->selectAll();
    type("1.60");
    EXPECT_EQ(at("1", SheetColumnId::Loop).text, "1.60");
}

TEST_F(SheetTest, TheFirstReadingOfACircuitMakesTheRowThatHoldsThem) {
    std::erase_if(bench.installation.circuitReadings,
                  [&](const CircuitReading& reading) { return reading.circuit == bench.circuit("1"); });
    bench.refresh();
    model.show(bench.view(), bench.board);
    go("1", SheetColumnId::Continuity);
    type("1.31");
    ASSERT_EQ(bench.changes.size(), 1U);
    EXPECT_EQ(bench.changes[0].edits.size(), 1U);
    EXPECT_EQ(bench.changes[0].edits[0].step, Edit::Step::Insert);
    ASSERT_NE(bench.reading("1"), nullptr);
    EXPECT_EQ(bench.reading("1")->visit, bench.visit);
    EXPECT_DOUBLE_EQ(in(bench.reading("1")->continuity.value, units::ohm), 1.31);
}

TEST_F(SheetTest, TypingTheSameAgainChangesNothing) {
    go("1", SheetColumnId::Loop);
    type("1.52");
    EXPECT_TRUE(bench.changes.empty());
}

TEST_F(SheetTest, ACarriedFigureIsConfirmedAsRead) {
    ASSERT_EQ(at("3", SheetColumnId::CableLength).sign, CellSign::Carried);
    go("3", SheetColumnId::CableLength);
    sheet.confirmAsRead();
    EXPECT_EQ(at("3", SheetColumnId::CableLength).sign, CellSign::None);
    EXPECT_EQ(at("3", SheetColumnId::CableLength).text, "58");
    EXPECT_EQ(sheet.currentIndex(), cell("4", SheetColumnId::CableLength));
}

TEST_F(SheetTest, ClearingEmptiesACell) {
    go("1", SheetColumnId::Loop);
    sheet.clearCell();
    EXPECT_TRUE(bench.reading("1")->loopImpedance.isMissing());
    EXPECT_TRUE(at("1", SheetColumnId::Loop).missing);
    EXPECT_EQ(at("1", SheetColumnId::Verdict).verdict, Verdict::CannotTell);
}

TEST_F(SheetTest, SpaceOpensWhatStandsThereForEditing) {
    go("1", SheetColumnId::Circuit);
    QTest::keyClick(&sheet, Qt::Key_Space);
    ASSERT_NE(editor(), nullptr);
    EXPECT_EQ(editor()->text(), "Lights, long walk east");
}

TEST_F(SheetTest, WayAndCircuitStayInSightWhenTheSheetScrolls) {
    sheet.resize(420, 500);
    QCoreApplication::processEvents();
    EXPECT_FALSE(sheet.frozen().isVisible());
    go("F1", SheetColumnId::Verdict);
    QCoreApplication::processEvents();
    ASSERT_GT(sheet.horizontalScrollBar()->value(), 0);
    ASSERT_TRUE(sheet.frozen().isVisible());
    EXPECT_EQ(sheet.frozen().visualRect(cell("F1", SheetColumnId::Way)).left(), 0);
    EXPECT_EQ(sheet.frozen().visualRect(cell("F1", SheetColumnId::Circuit)).top(),
              sheet.visualRect(cell("F1", SheetColumnId::Verdict)).top());

    // Going back to the left, the current cell is never under the part that stays.
    for (int step = 0; step < 12; ++step) {
        QTest::keyClick(&sheet, Qt::Key_Left);
        const QModelIndex current = sheet.currentIndex();
        if (current.column() < frozenColumns) break;
        EXPECT_GE(sheet.visualRect(current).left(), sheet.frozen().width()) << "column " << current.column();
    }
}

TEST_F(SheetTest, GroupsAreHiddenAndShownAgain) {
    EXPECT_TRUE(sheet.isShown(SheetGroup::Wiring));
    sheet.setShown(SheetGroup::Wiring, false);
    EXPECT_TRUE(sheet.isColumnHidden(indexOf(SheetColumnId::Sizes)));
    EXPECT_TRUE(sheet.isColumnHidden(indexOf(SheetColumnId::CableLength)));
    go("1", SheetColumnId::Device);
    QTest::keyClick(&sheet, Qt::Key_Tab);
    EXPECT_EQ(sheet.currentIndex(), cell("1", SheetColumnId::Load)) << "hidden columns are passed over";
    sheet.setShown(SheetGroup::Wiring, true);
    EXPECT_FALSE(sheet.isColumnHidden(indexOf(SheetColumnId::Sizes)));
}

TEST_F(SheetTest, RingReadingsAreShownWhereThereAreRingsAndRoom) {
    sheet.resize(640, 500);
    QCoreApplication::processEvents();
    EXPECT_FALSE(sheet.isShown(SheetGroup::Ring)) << "no room";
    sheet.resize(1000, 500);
    QCoreApplication::processEvents();
    EXPECT_TRUE(sheet.isShown(SheetGroup::Ring));
    EXPECT_EQ(sheet.horizontalScrollBar()->maximum(), 0) << "closer together, all of it is in sight";
    bench.installation.circuits[2].topology = Topology::Radial;
    bench.refresh();
    model.show(bench.view(), bench.board);
    EXPECT_FALSE(sheet.isShown(SheetGroup::Ring));
}

TEST_F(SheetTest, ColumnsAreNotPressedTogetherWhereThereIsRoom) {
    sheet.setShown(SheetGroup::Ring, false);
    for (const SheetColumnId id : {SheetColumnId::Sizes, SheetColumnId::CableLength, SheetColumnId::Loop})
        EXPECT_GE(sheet.columnWidth(indexOf(id)), sheetColumn(indexOf(id)).width) << indexOf(id);
}

TEST_F(SheetTest, AHiddenGroupIsOfferedInTheHeadAndShownByAClick) {
    auto* header = sheet.horizontalHeader();
    const int right = sheet.columnViewportPosition(indexOf(SheetColumnId::ResidualTime)) +
                      sheet.columnWidth(indexOf(SheetColumnId::ResidualTime));
    QTest::mouseClick(header->viewport(), Qt::LeftButton, {}, {right - 20, 8});
    EXPECT_TRUE(sheet.isShown(SheetGroup::More)) << "the last group stands at the right end";
}

TEST_F(SheetTest, NoFigureIsCutAtAnyWidth) {
    const SheetDelegate delegate(bench.appearance, model);
    go("F1", SheetColumnId::Sizes);
    type("120 / 95.5");
    go("F1", SheetColumnId::Loop);
    type(">1999.99");
    for (const int width : {400, 640, 794, 1200, 1800}) {
        sheet.resize(width, 500);
        QCoreApplication::processEvents();
        for (int row = 0; row < model.rowCount(); ++row)
            for (int column = 0; column < model.columnCount(); ++column) {
                if (model.isHeading(row) || sheet.isColumnHidden(column)) continue;
                if (column == indexOf(SheetColumnId::Circuit)) continue;
                EXPECT_GE(sheet.columnWidth(column), delegate.neededWidth(model.index(row, column)))
                    << "at " << width << " px, row " << row << ", column " << column;
            }
    }
}

TEST_F(SheetTest, TheCircuitStaysCurrentWhenAWayIsAdded) {
    go("F1", SheetColumnId::Loop);
    sheet.addWay();
    ASSERT_EQ(bench.changes.size(), 1U);
    EXPECT_EQ(bench.installation.circuits.back().way, "15");
    EXPECT_EQ(sheet.currentCircuit(), bench.installation.circuits.back().id);
    sheet.removeWay();
    EXPECT_EQ(model.rowOf(bench.ids.next()), -1);
    EXPECT_EQ(bench.installation.circuits.back().way, "F4");
}

TEST_F(SheetTest, TheNextMissingReadingIsFoundFromAnywhere) {
    go("F1", SheetColumnId::Loop);
    EXPECT_TRUE(sheet.goToNextMissing());
    EXPECT_EQ(sheet.currentIndex(), cell("14", SheetColumnId::Loop));
}

TEST_F(SheetTest, EveryStateIsDrawnInBothLooks) {
    for (const Look* look : {&lightLook(), &darkLook()}) {
        bench.appearance.use(*look);
        applyLook(*qApp, *look, bench.appearance.type);
        const QImage picture = sheet.grab().toImage();
        const QRect failing = sheet.visualRect(cell("12", SheetColumnId::InsulationEarth));
        const QPoint corner = failing.topLeft() + QPoint(2, 2) + sheet.viewport()->pos();
        EXPECT_EQ(picture.pixelColor(corner), look->failsWash);
        if (const QString folder = qEnvironmentVariable("LOOPWRIGHT_PICTURES"); !folder.isEmpty())
            picture.save(folder + (look == &lightLook() ? "/sheet-light.png" : "/sheet-dark.png"));
    }
}

} // namespace
