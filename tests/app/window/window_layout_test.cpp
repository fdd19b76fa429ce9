// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/window/window_fixture.h"

namespace loopwright {
namespace {

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
    EXPECT_EQ(strip.geometry().bottom() + 1, strip.parentWidget()->height()) << "nothing stands below it";
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
    const auto* menus = other.findChild<QMenuBar*>();
    ASSERT_NE(menus, nullptr);
    EXPECT_GE(menus->width(), menus->sizeHint().width()) << "no menu is put away";
    for (const auto* button : other.findChildren<QToolButton*>())
        if (button->isVisible() && button->toolButtonStyle() == Qt::ToolButtonTextBesideIcon) {
            EXPECT_GE(button->width(), button->sizeHint().width()) << qPrintable(button->text());
        }
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
