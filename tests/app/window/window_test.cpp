// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/main_window.h"
#include "app/window/report_page.h"
#include "forms/frame/start_page.h"
#include "forms/frame/work_area.h"
#include "forms/inspection/inspection_page.h"
#include "forms/inspection/inspection_view.h"
#include "forms/look/style.h"
#include "forms/observations/observation_strip.h"
#include "forms/places/go_to.h"
#include "forms/places/places_panel.h"
#include "forms/reasons/reasons_panel.h"
#include "forms/records/record_form.h"
#include "forms/sheet/cell_editor.h"
#include "forms/sheet/sheet_view.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QListView>
#include <QProcess>
#include <QScrollBar>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>
#include <QTreeView>

namespace loopwright {
namespace {

const QString demoFile = QStringLiteral(LOOPWRIGHT_SOURCE_DIR "/resources/demo/oakum-row.site.json");

/// Answers in the place of the system's dialogs.
struct Answers final : Questions {
    QString book, newBook, siteFile, pdf, picture;
    QString whichBook(QWidget*) override { return book; }
    QString whereNewBook(QWidget*) override { return newBook; }
    QString whichSiteFile(QWidget*) override { return siteFile; }
    QString wherePdf(QWidget*, const QString&) override { return pdf; }
    QString whichPicture(QWidget*) override { return picture; }
    bool whichPrinter(QWidget*, QPrinter&, int) override { return false; }
};

/// The demo site in a workbook of its own, open in the window.
class WindowTest : public testing::Test {
  protected:
    WindowTest() {
        answers.newBook = folder.filePath(QStringLiteral("oakum-row.loopwright"));
        answers.siteFile = demoFile;
        window.resize(1366, 768);
        window.show();
        window.activateWindow();
    }
    void openDemo() {
        window.action(ActionId::TakeIn).trigger();
        ASSERT_NE(window.book(), nullptr);
        ASSERT_NE(window.book()->view(), nullptr);
        QCoreApplication::processEvents();
    }
    const Installation& site() const { return window.book()->view()->installation; }
    SheetView& sheet() { return window.area().sheet(); }
    /// A circuit of the demo with a loop reading that holds.
    const Circuit& soundCircuit() const {
        for (const Circuit& circuit : site().circuits) {
            const auto found = window.book()->view()->assessment.about(circuit.id);
            const bool holds = !found.empty() && found.front()->verdict == Verdict::Holds;
            const auto* reading = readingOf(site(), circuit.id);
            if (holds && reading && reading->loopImpedance.hasFigure()) return circuit;
        }
        ADD_FAILURE() << "the demo has no circuit that holds";
        return site().circuits.front();
    }
    const CircuitReading* readingOf(const Installation& installation, Id circuit) const {
        return findReading(installation.circuitReadings, window.book()->view()->visit,
                           &CircuitReading::circuit, circuit);
    }
    /// What another program finds in the file.
    Installation inFile() {
        auto other = Workbook::open(answers.newBook.toStdString(), {{"reader"}, clock, ids});
        EXPECT_TRUE(other.has_value());
        return other->load(site().site.id).value();
    }
    static void press(const char* keys) {
        for (const QChar key : QString::fromUtf8(keys))
            QTest::keyClicks(QApplication::focusWidget(), key);
    }
    static void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
        QCoreApplication::processEvents();
    }
    void go(Id circuit, SheetColumnId column) {
        window.area().goTo({RecordKind::Circuit, circuit});
        sheet().setCurrentIndex(sheet().currentIndex().siblingAtColumn(indexOf(column)));
    }
    static std::string textOfPdf(const QString& path) {
        QProcess process;
        process.start(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
        EXPECT_TRUE(process.waitForFinished());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
        return QString::fromUtf8(process.readAllStandardOutput()).simplified().toStdString();
    }
    void picture(const char* name) {
        const QDir directory(QStringLiteral(LOOPWRIGHT_PICTURES_DIR));
        directory.mkpath(QStringLiteral("."));
        QCoreApplication::processEvents();
        EXPECT_TRUE(window.grab().save(directory.filePath(QString::fromLatin1(name))));
    }

    QTemporaryDir folder;
    Appearance appearance{QLocale::c()};
    Knowledge knowledge;
    FixedClock clock{std::chrono::sys_days{std::chrono::year{2026} / 3 / 10}};
    RandomIds ids;
    Answers answers;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    MainWindow window{{appearance, knowledge, clock, ids, {"Inspector 1"}, answers, settings}};
};

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

TEST_F(WindowTest, ANarrowWindowLaysReasonsAndPlacesOverTheSheet) {
    openDemo();
    window.resize(900, 700);
    QCoreApplication::processEvents();
    EXPECT_FALSE(window.area().reasons().isVisible());
    EXPECT_FALSE(window.area().places().isVisible());
    window.area().toSheet();
    key(Qt::Key_F6);
    EXPECT_TRUE(window.area().reasons().isVisible());
    picture("window-narrow.png");
    key(Qt::Key_Escape);
    EXPECT_FALSE(window.area().reasons().isVisible());
    window.resize(1366, 768);
    QCoreApplication::processEvents();
    EXPECT_TRUE(window.area().reasons().isVisible());
    EXPECT_TRUE(window.area().places().isVisible());
}

TEST_F(WindowTest, VeryNarrowTheStripIsItsCountUntilItIsUsed) {
    openDemo();
    window.resize(860, 700);
    QCoreApplication::processEvents();
    ObservationStrip& strip = window.area().strip();
    EXPECT_TRUE(strip.isFolded());
    EXPECT_LE(strip.height(), 40);
    picture("window-very-narrow.png");
    window.area().toSheet();
    key(Qt::Key_F5);
    EXPECT_FALSE(strip.isFolded());
    EXPECT_EQ(QApplication::focusWidget(), &strip.list());
    key(Qt::Key_Escape);
    EXPECT_TRUE(strip.isFolded());
    window.resize(1366, 768);
    QCoreApplication::processEvents();
    EXPECT_FALSE(strip.isFolded());
}

TEST_F(WindowTest, ThePanelsAreAsWideAsTheLookHasThemHoweverTheBookCameIn) {
    QCoreApplication::processEvents(); // the start page is laid out first
    openDemo();
    EXPECT_EQ(window.area().places().width(), 200);
    EXPECT_EQ(window.area().reasons().width(), 372);
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

TEST_F(WindowTest, TheReportIsShownAndWritten) {
    openDemo();
    window.action(ActionId::ShowReport).trigger();
    ASSERT_NE(window.reportPage(), nullptr);
    EXPECT_GT(window.reportPage()->preview().pageCount(), 4);
    picture("window-report.png");
    answers.pdf = folder.filePath(QStringLiteral("report.pdf"));
    window.action(ActionId::WritePdf).trigger();
    QFile pdf(answers.pdf);
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.read(5) == "%PDF-");
    key(Qt::Key_Escape);
    EXPECT_EQ(window.reportPage(), nullptr);
    EXPECT_TRUE(window.area().isVisible());
}

TEST_F(WindowTest, LabelsOfTheLocalSchemeArePrintedBesideOursAndKept) {
    openDemo();
    window.action(ActionId::ShowReport).trigger();
    ASSERT_NE(window.reportPage(), nullptr);
    QLineEdit& field = window.reportPage()->labels().field(Grade::PutRight);
    EXPECT_FALSE(field.isVisible());
    for (auto* button : window.reportPage()->findChildren<QToolButton*>())
        if (button->isCheckable()) button->click();
    ASSERT_TRUE(field.isVisible());
    field.setFocus();
    press("second class ");
    picture("window-report-labels.png");
    key(Qt::Key_Tab);
    EXPECT_EQ(officeLabelsIn(settings)[static_cast<std::size_t>(Grade::PutRight)], "second class");

    answers.pdf = folder.filePath(QStringLiteral("labelled.pdf"));
    window.action(ActionId::WritePdf).trigger();
    EXPECT_THAT(textOfPdf(answers.pdf), testing::HasSubstr("The local scheme says: second class."));
}

TEST_F(WindowTest, LargerTypeTakesItsRoomFromThePanels) {
    Appearance large{QLocale::c(), 1.3};
    MainWindow other{{large, knowledge, clock, ids, {"Inspector 1"}, answers, settings}};
    other.resize(1366, 768);
    other.show();
    other.action(ActionId::TakeIn).trigger();
    ASSERT_NE(other.book(), nullptr);
    QCoreApplication::processEvents();
    EXPECT_FALSE(other.area().reasons().isVisible()) << "1366 px are less than 1200 px of this type";
    EXPECT_EQ(other.area().sheet().horizontalScrollBar()->maximum(), 0);
    const QDir directory(QStringLiteral(LOOPWRIGHT_PICTURES_DIR));
    directory.mkpath(QStringLiteral("."));
    EXPECT_TRUE(other.grab().save(directory.filePath(QStringLiteral("window-large.png"))));
    other.action(ActionId::Inspect).trigger();
    QCoreApplication::processEvents();
    EXPECT_TRUE(other.grab().save(directory.filePath(QStringLiteral("window-large-inspection.png"))));
    applyLook(*qApp, appearance.look(), appearance.type);
}

TEST_F(WindowTest, LooksLightAndDark) {
    picture("window-start.png");
    openDemo();
    ReasonsModel& reasons = window.area().reasons().model();
    for (const Circuit& circuit : site().circuits)
        if (window.book()->view()->assessment.worst(circuit.id) == Verdict::Fails) {
            go(circuit.id, SheetColumnId::Load);
            break;
        }
    reasons.toggle(0);
    picture("window-light.png");
    window.action(ActionId::DarkLook).trigger();
    picture("window-dark.png");
    EXPECT_EQ(appearance.look().sheet, darkLook().sheet);
    window.action(ActionId::DarkLook).trigger();
    EXPECT_EQ(appearance.look().sheet, lightLook().sheet);
}

} // namespace
} // namespace loopwright
