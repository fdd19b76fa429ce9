// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/sums/sums_page.h"
#include "tests/app/window/window_fixture.h"

namespace loopwright {
namespace {

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

TEST_F(WindowTest, SumsAreAskedWithoutABookAndLeftForWhereOneWas) {
    window.action(ActionId::Sums).trigger();
    EXPECT_TRUE(window.sums().isVisible());
    picture("window-sums.png");
    key(Qt::Key_Escape);
    EXPECT_FALSE(window.sums().isVisible());
    EXPECT_TRUE(window.startPage().isVisible());

    openDemo();
    window.action(ActionId::ShowReport).trigger();
    window.action(ActionId::Sums).trigger();
    EXPECT_EQ(window.reportPage(), nullptr);
    window.sums().choose("permitted-loop-of-device");
    ASSERT_NE(window.sums().chosen(), nullptr);
    EXPECT_EQ(window.sums().chosen()->key, "permitted-loop-of-device");
    window.action(ActionId::ToSheet).trigger();
    EXPECT_FALSE(window.sums().isVisible());
    EXPECT_TRUE(sheet().hasFocus());
}

} // namespace
} // namespace loopwright
