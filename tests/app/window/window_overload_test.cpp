// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/frame/labels.h"
#include "forms/overload/log_card.h"
#include "forms/overload/logged_part.h"
#include "forms/overload/overload_page.h"
#include "forms/overload/remedy_list.h"
#include "forms/overload/shift_table.h"
#include "forms/overload/trial_panel.h"
#include "forms/plots/plot_view.h"
#include "forms/records/field_editor.h"
#include "tests/app/window/window_fixture.h"

#include <QComboBox>
#include <QMouseEvent>
#include <QPushButton>
#include <QScrollArea>

namespace loopwright {
namespace {

/// Moves the pointer there, whatever lies over the plot on this desktop.
void pointAt(PlotView& plot, const QPoint& at) {
    QMouseEvent move(QEvent::MouseMove, at, plot.mapToGlobal(at), Qt::NoButton, Qt::NoButton, {});
    QCoreApplication::sendEvent(&plot, &move);
}

class WindowOverload : public WindowTest {
  protected:
    OverloadPage& page() { return window.area().overload(); }
    TrialPanel& trial() { return page().trial(); }

    /// The first circuit whose check fails though its wiring gets too warm as well: all that the page can
    /// show.
    Id failing(std::string_view check) const {
        for (const Finding& finding : window.book()->view()->assessment.findings)
            if (finding.check == check && finding.verdict == Verdict::Fails &&
                finding.subject.kind == RecordKind::Circuit &&
                verdictOf(finding.subject.id, "conductor-heat") == Verdict::Fails)
                return finding.subject.id;
        ADD_FAILURE() << "the demo has no circuit that fails " << check;
        return {};
    }
    void openPage(Id circuit) {
        window.area().goTo({RecordKind::Circuit, circuit});
        window.action(ActionId::LoadOverTime).trigger();
        QCoreApplication::processEvents();
        ASSERT_TRUE(window.area().isOverloadShown());
        ASSERT_EQ(page().circuit(), circuit);
    }
    Verdict verdictOf(Id circuit, std::string_view check) const {
        for (const Finding* finding : window.book()->view()->assessment.about(circuit))
            if (finding->check == check) return finding->verdict;
        ADD_FAILURE() << "nothing was found by " << check;
        return Verdict::DoesNotApply;
    }
};

TEST_F(WindowOverload, ShowsWhatGoesOnUnnoticed) {
    openDemo();
    const Id circuit = failing("hidden-overload");
    openPage(circuit);
    const QString said = page().spoken();
    const Circuit& row = *find(site().circuits, circuit);
    EXPECT_TRUE(said.contains(text(row.name))) << qPrintable(said);
    EXPECT_TRUE(said.contains(QStringLiteral("need never operate"))) << qPrintable(said);
    EXPECT_TRUE(said.contains(QStringLiteral("(estimate)"))) << qPrintable(said);
    EXPECT_TRUE(said.contains(QStringLiteral("competent person"))) << qPrintable(said);
    EXPECT_TRUE(page().band().isVisible());
    picture("window-overload.png");
    window.action(ActionId::DarkLook).trigger();
    picture("window-overload-dark.png");
    window.action(ActionId::DarkLook).trigger();
    window.resize(1024, 768);
    QCoreApplication::processEvents();
    picture("window-overload-1024.png");
    auto* room = page().findChild<QScrollArea*>();
    room->ensureWidgetVisible(&trial());
    picture("window-overload-below.png");
    key(Qt::Key_Escape);
    EXPECT_TRUE(window.area().isSheetShown()) << "Esc leads back to the sheet";
}

TEST_F(WindowOverload, ReadsValuesWhereThePointerIs) {
    openDemo();
    openPage(failing("hidden-overload"));
    QString reading;
    QObject::connect(&page().band(), &PlotView::pointedAt, [&](const QString& said) { reading = said; });
    const QPoint middle = page().band().axisRect(0)->rect().center();
    pointAt(page().band(), middle);
    EXPECT_TRUE(reading.contains(QStringLiteral("\u00a0A: "))) << qPrintable(reading);
}

TEST_F(WindowOverload, TriesARemedyOnACopyAndTakesIt) {
    openDemo();
    const Id circuit = failing("hidden-overload");
    openPage(circuit);
    ASSERT_FALSE(page().remedies().remedies().empty());
    EXPECT_FALSE(trial().takeButton().isEnabled()) << "nothing is on trial yet";
    const Installation before = site();
    emit page().remedies().tryWanted(page().remedies().remedies().front().change);
    QCoreApplication::processEvents();
    EXPECT_TRUE(
        trial().table().spoken().join(u'\n').contains(QStringLiteral("Hidden overload: fails, then ")))
        << qPrintable(trial().table().spoken().join(u'\n'));
    const QWidget& seen = *page().findChild<QScrollArea*>()->viewport();
    EXPECT_GE(trial().mapTo(&seen, QPoint()).y(), 0) << "the whole trial is in sight";
    EXPECT_LT(trial().table().mapTo(&seen, QPoint()).y(), seen.height() - 3 * trial().fontMetrics().height())
        << "and so is what comes of it";
    EXPECT_EQ(site(), before) << "a trial writes nothing";
    picture("window-overload-trial.png");
    QTest::mouseClick(&trial().takeButton(), Qt::LeftButton);
    QCoreApplication::processEvents();
    EXPECT_NE(site(), before);
    EXPECT_EQ(inFile(), site()) << "what was taken is in the file";
    EXPECT_NE(verdictOf(circuit, "hidden-overload"), Verdict::Fails);
    window.action(ActionId::Undo).trigger();
    EXPECT_EQ(site(), before) << "one step of Undo takes it back";
}

TEST_F(WindowOverload, GivesAPieceACircuitOfItsOwn) {
    openDemo();
    const auto forge = std::ranges::find_if(site().circuits, [&](const Circuit& circuit) {
        return pathOf(site(), circuit) == "Board D / 3"; // a forge heater and a welder
    });
    ASSERT_NE(forge, site().circuits.end());
    const Id circuit = forge->id;
    openPage(circuit);
    const auto& remedies = page().remedies().remedies();
    const auto own = std::ranges::find(remedies, RemedyKind::SeparateCircuit, &Remedy::kind);
    ASSERT_NE(own, remedies.end()) << qPrintable(page().spoken());
    EXPECT_TRUE(page().spoken().contains(QStringLiteral("To find out once it is there: ")))
        << qPrintable(page().spoken());
    const Installation before = site();
    emit page().remedies().tryWanted(Change(own->change));
    QCoreApplication::processEvents();
    EXPECT_TRUE(trial().table().spoken().join(u'\n').contains(QStringLiteral(": Device and wiring: ")))
        << qPrintable(trial().table().spoken().join(u'\n'));
    EXPECT_EQ(site(), before) << "a trial writes nothing";
    EXPECT_TRUE(trial().proposal().isVisible());
    EXPECT_TRUE(trial().proposal().notation().contains(QStringLiteral("Give a circuit of its own to ")))
        << qPrintable(trial().proposal().notation());
    picture("window-overload-own-circuit.png");
    QTest::mouseClick(&trial().takeButton(), Qt::LeftButton);
    QCoreApplication::processEvents();
    const auto piecesOn = [&](const Installation& installation) {
        return std::ranges::count(installation.equipment, circuit, &Equipment::circuit);
    };
    EXPECT_EQ(piecesOn(site()), piecesOn(before) - 1);
    EXPECT_EQ(site().equipment.size(), before.equipment.size()) << "it hangs on another circuit now";
    EXPECT_EQ(inFile(), site()) << "what was taken is in the file";
    window.action(ActionId::Undo).trigger();
    EXPECT_EQ(site(), before) << "one step of Undo takes it back";
}

TEST_F(WindowOverload, TriesAFigureThatIsTyped) {
    openDemo();
    const Id circuit = failing("hidden-overload");
    openPage(circuit);
    FieldEditor* load = trial().editor(RecordKind::Circuit, circuit, "load_A");
    ASSERT_NE(load, nullptr);
    emit load->entered(QStringLiteral("nonsense"));
    EXPECT_TRUE(trial().change().edits.empty()) << "refused, so nothing is on trial";
    emit load->entered(QStringLiteral("5"));
    EXPECT_TRUE(
        trial().table().spoken().join(u'\n').contains(QStringLiteral("Load and device: fails, then holds")))
        << qPrintable(trial().table().spoken().join(u'\n'));
    emit load->entered(QStringLiteral("6"));
    ASSERT_EQ(trial().change().edits.size(), 1U) << "the same figure again replaces the one before";
    EXPECT_EQ(trial().change().edits.front().values.size(), 1U);
}

class WindowLogs : public WindowOverload {
  protected:
    LoggedPart& logged() { return page().logged(); }
    /// Makes it the file that the person chooses next.
    void choose(const char* name, const QByteArray& bytes) {
        answers.log = folder.filePath(QString::fromLatin1(name));
        QFile file(answers.log);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(bytes), bytes.size());
    }
    void takeIn() {
        QTest::mouseClick(&logged().takeInButton(), Qt::LeftButton);
        QCoreApplication::processEvents();
    }
    /// A circuit that nothing has been logged of.
    Id unlogged() const {
        const CircuitReading* logged = find(site().circuitReadings, site().currentLogs.at(0).reading);
        for (const Finding& finding : window.book()->view()->assessment.findings)
            if (finding.check == "hidden-overload" && finding.verdict == Verdict::Fails &&
                finding.subject.kind == RecordKind::Circuit && finding.subject.id != logged->circuit)
                return finding.subject.id;
        ADD_FAILURE() << "the demo has no other circuit that fails";
        return {};
    }
};

TEST_F(WindowLogs, TheDemosLogIsShownAndSaysWhatItFound) {
    openDemo();
    const CircuitReading* reading = find(site().circuitReadings, site().currentLogs.at(0).reading);
    openPage(reading->circuit);
    ASSERT_EQ(logged().cards().size(), 1U);
    LogCard& card = *logged().cards().front();
    EXPECT_TRUE(card.plot().isVisibleTo(&page()));
    EXPECT_EQ(card.channels().currentText(), QStringLiteral("line [A]"));
    const QString said = page().spoken();
    for (const char* part :
         {"A day of firing", "times the rating", "as warm as", "Nothing was logged for 28"})
        EXPECT_TRUE(said.contains(QString::fromLatin1(part))) << part << " in " << qPrintable(said);
    QString read;
    QObject::connect(&card.plot(), &PlotView::pointedAt, [&](const QString& words) { read = words; });
    auto* room = page().findChild<QScrollArea*>();
    room->ensureWidgetVisible(&logged(), 0, 0);
    QCoreApplication::processEvents();
    pointAt(card.plot(), card.plot().axisRect(0)->rect().center());
    EXPECT_TRUE(read.contains(QStringLiteral("conductor"))) << qPrintable(read);
    picture("window-logged-current.png");
}

TEST_F(WindowLogs, TakesInALogAndTakesItBack) {
    openDemo();
    const Id circuit = unlogged();
    openPage(circuit);
    const Installation before = site();
    choose("Forge, one morning.csv", "time_s;I1 [A];I2 [A]\n0;65;1\n60;65;2\n120;64;1\n180;0;1\n");
    takeIn();
    ASSERT_EQ(logged().cards().size(), 1U);
    ASSERT_EQ(site().currentLogs.size(), before.currentLogs.size() + 1);
    EXPECT_EQ(site().currentLogs.back().name, "Forge, one morning");
    EXPECT_TRUE(page().spoken().contains(QStringLiteral("It went up to 65"))) << qPrintable(page().spoken());
    EXPECT_EQ(inFile(), site()) << "what was taken in is in the file";

    QComboBox& channels = logged().cards().front()->channels();
    ASSERT_EQ(channels.count(), 2);
    channels.setCurrentIndex(1);
    emit channels.activated(1);
    for (int turn = 0; turn < 3; ++turn) // the change is queued, and the new cards are shown after it
        QCoreApplication::processEvents();
    EXPECT_EQ(site().currentLogs.back().channel, "I2 [A]");
    EXPECT_TRUE(page().spoken().contains(QStringLiteral("It went up to 2.0\u00a0A")))
        << qPrintable(page().spoken());

    QTest::mouseClick(&logged().cards().front()->removeButton(), Qt::LeftButton);
    QCoreApplication::processEvents();
    EXPECT_EQ(logged().cards().size(), 0U);
    for (int step = 0; step < 3; ++step)
        window.action(ActionId::Undo).trigger();
    EXPECT_EQ(site(), before) << "removing, the channel and the log, a step of Undo each";
}

TEST_F(WindowLogs, ABadFileSaysWhyAndChangesNothing) {
    openDemo();
    openPage(unlogged());
    const Installation before = site();
    choose("backwards.csv", "0;5\n10;5\n5;5\n");
    takeIn();
    EXPECT_TRUE(page().spoken().contains(QStringLiteral("In line 3 time does not go on.")))
        << qPrintable(page().spoken());
    EXPECT_TRUE(logged().cards().empty());
    EXPECT_EQ(site(), before);
    EXPECT_EQ(inFile(), before);
    answers.log = folder.filePath(QStringLiteral("away.csv"));
    takeIn();
    EXPECT_TRUE(page().spoken().contains(QStringLiteral("away.csv cannot be read.")))
        << qPrintable(page().spoken());
    answers.log.clear();
    takeIn();
    EXPECT_EQ(site(), before) << "the person thought better of it";
}

TEST_F(WindowLogs, ThoseOfAnIssuedVisitStayAsTheyAre) {
    openDemo();
    const CurrentLog log = site().currentLogs.at(0);
    const Id circuit = find(site().circuitReadings, log.reading)->circuit;
    const Id visit = window.book()->view()->visit;
    auto other = Workbook::open(answers.newBook.toStdString(), {{"office"}, clock, ids});
    ASSERT_TRUE(other);
    ASSERT_TRUE(other->commit({Message{"change.added", {std::string("seal")}},
                               {setField(RecordKind::Visit, visit, "state", "issued")}}));
    ASSERT_TRUE(window.openBook(answers.newBook));
    emit window.area().visitWanted(visit);
    openPage(circuit);
    EXPECT_FALSE(logged().takeInButton().isEnabled());
    ASSERT_EQ(logged().cards().size(), 1U);
    EXPECT_FALSE(logged().cards().front()->removeButton().isEnabled());
}

} // namespace
} // namespace loopwright
