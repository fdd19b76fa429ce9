// SPDX-License-Identifier: GPL-3.0-or-later
#include "../bench.h"
#include "forms/look/mark.h"
#include "forms/reasons/reason_layout.h"
#include "forms/reasons/reasons_panel.h"
#include "forms/words/notation.h"
#include "forms/words/working_text.h"

#include <gmock/gmock.h>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QPainter>
#include <QTest>

using namespace loopwright;

namespace {

class ReasonsTest : public testing::Test {
  protected:
    ReasonsTest() {
        panel.resize(372, 600);
        show("14");
        panel.setVisible(true);
        panel.setFocus();
    }
    void show(const char* way) { panel.show(bench.view(), {RecordKind::Circuit, bench.circuit(way)}); }
    std::string said(int row, int role = Qt::DisplayRole) {
        return panel.model().index(row).data(role).toString().toStdString();
    }

    Bench bench;
    ReasonsPanel panel{bench.appearance};
    QAbstractItemModelTester tester{&panel.model(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(ReasonsTest, WhatNeedsAPersonComesFirstAndTheRestIsFolded) {
    ASSERT_EQ(panel.model().rowCount(), 2);
    ASSERT_NE(panel.model().findingAt(0), nullptr);
    EXPECT_EQ(panel.model().findingAt(0)->verdict, Verdict::CannotTell);
    EXPECT_EQ(said(1), "2 more checks hold, 1 doesn’t apply");
}

TEST_F(ReasonsTest, UnfoldingShowsEveryCheckOnce) {
    panel.toggleFold();
    ASSERT_EQ(panel.model().rowCount(), 5);
    for (int row = 1; row < 4; ++row)
        EXPECT_GE(panel.model().findingAt(row)->verdict, panel.model().findingAt(row - 1)->verdict)
            << "row " << row;
    panel.toggleFold();
    EXPECT_EQ(panel.model().rowCount(), 2);
}

TEST_F(ReasonsTest, EnterOpensOneRowAtATime) {
    panel.toggleFold();
    panel.list().setCurrentIndex(panel.model().index(0));
    QTest::keyClick(&panel.list(), Qt::Key_Return);
    EXPECT_TRUE(panel.model().isOpen(0));
    QTest::keyClick(&panel.list(), Qt::Key_Down);
    QTest::keyClick(&panel.list(), Qt::Key_Return);
    EXPECT_FALSE(panel.model().isOpen(0));
    EXPECT_TRUE(panel.model().isOpen(1));
    QTest::keyClick(&panel.list(), Qt::Key_Return);
    EXPECT_FALSE(panel.model().isOpen(1));
}

TEST_F(ReasonsTest, TheOpenRowStaysOpenAfterAChangeAndShutsForAnotherCircuit) {
    panel.model().toggle(0);
    show("14");
    EXPECT_TRUE(panel.model().isOpen(0));
    show("12");
    EXPECT_FALSE(panel.model().isOpen(0));
    show("14");
    EXPECT_FALSE(panel.model().isOpen(0));
}

TEST_F(ReasonsTest, AnOpenRowIsHigherByItsWorking) {
    show("6");
    const Finding& finding = *panel.model().findingAt(0);
    const ReasonLayout shut(bench.appearance, finding, false, 372);
    const ReasonLayout open(bench.appearance, finding, true, 372);
    EXPECT_GE(shut.height(), 30);
    EXPECT_GT(open.height(), shut.height() + 60) << "formula, two terms, result";
}

TEST_F(ReasonsTest, NothingIsDrawnOutsideItsRowAtAnyWidth) {
    show("6");
    const Finding& finding = *panel.model().findingAt(0);
    for (const int width : {240, 320, 372, 600}) {
        const ReasonLayout layout(bench.appearance, finding, true, width);
        constexpr int margin = 40;
        const int height = static_cast<int>(layout.height());
        QImage picture(width + 2 * margin, height + 2 * margin, QImage::Format_RGB32);
        picture.fill(Qt::magenta);
        QPainter painter(&picture);
        layout.draw(painter, {margin, margin});
        painter.end();
        const QRect row(margin, margin, width, height);
        for (int y = 0; y < picture.height(); ++y)
            for (int x = 0; x < picture.width(); ++x)
                ASSERT_TRUE(row.contains(x, y) || picture.pixelColor(x, y) == QColor(Qt::magenta))
                    << "at " << x << ", " << y << ", width " << width;
    }
}

TEST_F(ReasonsTest, ScreenReadersHearVerdictSentenceAndMargin) {
    show("F1");
    const std::string heard = said(0, Qt::AccessibleTextRole);
    EXPECT_THAT(heard, testing::StartsWith("fails: "));
    EXPECT_THAT(heard, testing::HasSubstr("Margin −39\u00A0%"));
}

TEST(Notation, SymbolsOfASentenceAreSetOrSpoken) {
    const QString sentence = QStringLiteral("Z_s 0.54 Ω is within Z_{s,max} <0.87 Ω>");
    EXPECT_EQ(plainNotation(sentence), "Zs 0.54 Ω is within Zs,max <0.87 Ω>");
    EXPECT_EQ(richNotation(sentence),
              "<i>Z</i><sub>s</sub> 0.54 Ω is within <i>Z</i><sub>s,max</sub> &lt;0.87 Ω&gt;");
    EXPECT_EQ(plainNotation("a_b"), "ab");
    EXPECT_EQ(plainNotation("R_1+R_2 of lamp_2"), "R1+R2 of lamp_2") << "a name stays as it was typed";
    EXPECT_EQ(plainNotation("plain, with 5 % and (brackets)"), "plain, with 5 % and (brackets)");
    EXPECT_EQ(plainNotation("external loop Z_e, or R_A."), "external loop Ze, or RA.");
    EXPECT_EQ(plainNotation("ΔU_max, ΔU_{s,total}"), "ΔUmax, ΔUs,total") << "a difference is one symbol";
    EXPECT_EQ(richNotation("ΔU_0"), "Δ<i>U</i><sub>0</sub>");
}

TEST(WorkingText, ASentenceBeginsInUpperCase) {
    const Words words(QLocale::c());
    Finding finding;
    finding.sentence = {
        "check.plug-fuse.fails",
        {std::string("jacketed kettle"), Measure{12.5, units::ampere, 1}, Measure{10, units::ampere, 0}}};
    EXPECT_TRUE(findingText(finding, words).startsWith("Jacketed kettle draws 12.5\u00A0A"))
        << findingText(finding, words).toStdString();
    finding.sentence = {"check.ring.spur", {Measure{0.5, units::ohm, 1}, Measure{0.3, units::ohm, 1}}};
    EXPECT_TRUE(findingText(finding, words).startsWith("R_1+R_2 reads"));
}

TEST(WorkingText, MarginsAreSharesOfTheLimit) {
    const Words words(QLocale::c());
    Finding finding;
    EXPECT_EQ(marginText(finding, words), "");
    finding.margin = -0.39;
    EXPECT_EQ(marginText(finding, words), "−39\u00A0%");
    finding.margin = 0.043;
    EXPECT_EQ(marginText(finding, words), "+4\u00A0%");
    finding.margin = 0.001;
    EXPECT_EQ(marginText(finding, words), "0\u00A0%");
    finding.margin = -1e9;
    EXPECT_EQ(marginText(finding, words), "");
}

TEST(WorkingText, ATermSaysWhereItCameFrom) {
    const Words words(QLocale::c());
    Working working;
    working.terms = {{"I_b", {41.7, units::ampere, 1}, TermOrigin::Computed, {}, {}},
                     {"τ", {22, units::minute, 0}, TermOrigin::Assumed, {}, {}},
                     {"Z_max", {0.87, units::ohm, 2}, TermOrigin::Table, {}, {"a table", "seen", true}},
                     {"Z_s", {0.54, units::ohm, 2}, TermOrigin::Read, {}, {}}};
    working.result = Measure{41.7, units::ampere, 1};
    working.limit = Measure{30, units::ampere, 0};
    working.resultSymbol = "I_b";
    working.restsOnAssumption = true;
    const auto lines = termLines(working, words);
    EXPECT_EQ(lines[0].from, "= computed");
    EXPECT_EQ(lines[1].from, "~ assumed");
    EXPECT_EQ(lines[2].from, "a table (from memory)");
    EXPECT_EQ(lines[3].from, "read");
    EXPECT_EQ(resultLine(working, words), (WorkingLine{"I_b", "~41.7\u00A0A", "at most 30\u00A0A"}));
}

} // namespace
