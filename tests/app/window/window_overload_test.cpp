// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/overload/overload_page.h"
#include "forms/overload/remedy_list.h"
#include "forms/overload/shift_table.h"
#include "forms/overload/trial_panel.h"
#include "forms/plots/plot_view.h"
#include "forms/records/field_editor.h"
#include "tests/app/window/window_fixture.h"

#include <QPushButton>
#include <QScrollArea>

namespace loopwright {
namespace {

class WindowOverload : public WindowTest {
  protected:
    OverloadPage& page() { return window.area().overload(); }
    TrialPanel& trial() { return page().trial(); }

    /// The first circuit whose check fails.
    Id failing(std::string_view check) const {
        for (const Finding& finding : window.book()->view()->assessment.findings)
            if (finding.check == check && finding.verdict == Verdict::Fails &&
                finding.subject.kind == RecordKind::Circuit)
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
    QTest::mouseMove(&page().band(), middle);
    EXPECT_TRUE(reading.contains(QStringLiteral(" A: "))) << qPrintable(reading);
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

} // namespace
} // namespace loopwright
