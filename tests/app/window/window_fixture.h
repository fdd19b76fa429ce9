// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

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
#include <QMenuBar>
#include <QProcess>
#include <QScrollBar>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QToolButton>
#include <QTreeView>

namespace loopwright {

inline const QString demoFile = QStringLiteral(LOOPWRIGHT_SOURCE_DIR "/resources/demo/oakum-row.site.json");

/// Answers in the place of the system's dialogs.
struct Answers final : Questions {
    QString book, newBook, siteFile, pdf, picture, log;
    QString whichBook(QWidget*) override { return book; }
    QString whereNewBook(QWidget*) override { return newBook; }
    QString whichSiteFile(QWidget*) override { return siteFile; }
    QString wherePdf(QWidget*, const QString&) override { return pdf; }
    QString whichPicture(QWidget*) override { return picture; }
    QString whichLog(QWidget*) override { return log; }
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

} // namespace loopwright
