// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/type.h"

#include <gtest/gtest.h>

#include <QFontInfo>
#include <QFontMetricsF>
#include <QRawFont>

namespace loopwright {
namespace {

constexpr ScreenText screenTexts[]{ScreenText::PageTitle, ScreenText::PanelTitle, ScreenText::Body,
                                   ScreenText::Figure, ScreenText::Note};

// The project names its font among the packages it needs (./dev), so a test may ask for it.
TEST(Type, FindsItsFont) {
    EXPECT_FALSE(Type().usesFallback());
    for (const ScreenText role : screenTexts)
        EXPECT_EQ(QFontInfo(Type().screen(role)).family().toStdString(), "Open Sans");
}

TEST(Type, SetsFiguresInDigitsOfOneWidth) {
    for (const Weight weight : {Weight::Regular, Weight::Semibold}) {
        const QFontMetricsF metrics(Type().screen(ScreenText::Figure, weight));
        for (char digit = '1'; digit <= '9'; ++digit)
            EXPECT_DOUBLE_EQ(metrics.horizontalAdvance(QLatin1Char(digit)), metrics.horizontalAdvance(u'0'))
                << digit;
    }
}

TEST(Type, HasEverySignThatIsWritten) {
    for (const bool slanted : {false, true}) {
        const QFont figures = Type().screen(ScreenText::Figure);
        const QRawFont font = QRawFont::fromFont(slanted ? italic(figures) : figures);
        for (const QChar sign : QStringLiteral("Ω°²√θτΔ≤≥±×÷·‹~=−’…\u00A0\u2009∞"))
            EXPECT_TRUE(font.supportsCharacter(sign))
                << "U+" << std::hex << static_cast<int>(sign.unicode()) << " slanted " << slanted;
    }
}

TEST(Type, ScalesTheScreenAndNotThePaper) {
    const Type usual, large(1.3);
    for (const ScreenText role : screenTexts)
        EXPECT_NEAR(large.screen(role).pointSizeF(), 1.3 * usual.screen(role).pointSizeF(), 0.01);
    EXPECT_EQ(usual.scaled(22), 22);
    EXPECT_EQ(large.scaled(22), 29); // 28.6
    EXPECT_EQ(large.page(PageText::Body), usual.page(PageText::Body));
    EXPECT_DOUBLE_EQ(usual.page(PageText::Schedule).pointSizeF(), 8.2);
}

TEST(Type, GivesTitlesWeight) {
    EXPECT_EQ(Type().screen(ScreenText::PageTitle).weight(), QFont::DemiBold);
    EXPECT_EQ(Type().screen(ScreenText::Body).weight(), QFont::Normal);
    EXPECT_EQ(Type().screen(ScreenText::Body, Weight::Semibold).weight(), QFont::DemiBold);
    EXPECT_EQ(Type().page(PageText::Subject).weight(), QFont::DemiBold);
    EXPECT_TRUE(italic(Type().screen(ScreenText::Body)).italic());
}

} // namespace
} // namespace loopwright
