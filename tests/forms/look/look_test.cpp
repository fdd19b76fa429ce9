// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/look.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

// WCAG 2.1, success criteria 1.4.3 (text, 4.5) and 1.4.11 (what is not text, 3).
constexpr double leastForText = 4.5;
constexpr double leastForEdges = 3.0;

struct Case {
    const char* name;
    const Look& look;
    std::span<const RolePair> texts;
    double smallest; ///< of the texts, to two decimals: a change of a colour must be noticed
};

std::ostream& operator<<(std::ostream& out, const Case& theme) {
    return out << theme.name;
}

class Contrast : public testing::TestWithParam<Case> {};

INSTANTIATE_TEST_SUITE_P(Look, Contrast,
                         testing::Values(Case{"light", lightLook(), screenTextPairs(), 4.51},
                                         Case{"dark", darkLook(), screenTextPairs(), 4.65},
                                         Case{"print", printLook(), printTextPairs(), 4.61}),
                         [](const auto& theme) { return std::string(theme.param.name); });

TEST_P(Contrast, EveryTextCanBeReadOnEverySurfaceItMayStandOn) {
    const Look& look = GetParam().look;
    double smallest = 21;
    for (const RolePair& pair : GetParam().texts) {
        const double ratio = contrast(look.*pair.drawn, look.*pair.surface);
        EXPECT_GE(ratio, leastForText)
            << (look.*pair.drawn).name().toStdString() << " on " << (look.*pair.surface).name().toStdString();
        smallest = std::min(smallest, ratio);
    }
    EXPECT_NEAR(smallest, GetParam().smallest, 0.005);
}

TEST_P(Contrast, EdgesAndTheFocusRingCanBeSeen) {
    const Look& look = GetParam().look;
    for (const RolePair& pair : edgePairs())
        EXPECT_GE(contrast(look.*pair.drawn, look.*pair.surface), leastForEdges)
            << (look.*pair.drawn).name().toStdString() << " on " << (look.*pair.surface).name().toStdString();
}

TEST_P(Contrast, EveryRoleHasAColour) {
    const Look& look = GetParam().look;
    const auto* colours = reinterpret_cast<const QColor*>(&look);
    for (std::size_t role = 0; role < sizeof(Look) / sizeof(QColor); ++role)
        EXPECT_TRUE(colours[role].isValid()) << "role number " << role;
}

// WCAG 2.1, definition of contrast ratio: black on white is 21, a colour on itself 1, and the order does not
// matter.
TEST(ContrastRatio, AgreesWithTheStandardsOwnValues) {
    EXPECT_DOUBLE_EQ(contrast(Qt::black, Qt::white), 21);
    EXPECT_DOUBLE_EQ(contrast(Qt::white, Qt::black), 21);
    EXPECT_DOUBLE_EQ(contrast(Qt::red, Qt::red), 1);
    // WCAG 2.1, technique G18: #767676 is about the lightest grey that passes on white.
    EXPECT_NEAR(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.54, 0.01);
}

TEST(Palette, SaysWhatIsOffInFaintInkAndSelectsRowsInInk) {
    for (const Look* look : {&lightLook(), &darkLook()}) {
        const QPalette colours = palette(*look);
        EXPECT_EQ(colours.color(QPalette::Active, QPalette::HighlightedText), look->ink);
        EXPECT_EQ(colours.color(QPalette::Disabled, QPalette::Text), look->inkFaint);
        EXPECT_EQ(colours.color(QPalette::Inactive, QPalette::Highlight), look->selection);
        EXPECT_EQ(selectedTextPalette(*look).color(QPalette::Highlight), look->accent);
    }
}

} // namespace
} // namespace loopwright
