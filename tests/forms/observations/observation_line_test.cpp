// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/mark.h"
#include "forms/observations/observation_strip.h"

#include <gtest/gtest.h>

#include <QFontMetrics>

namespace loopwright {
namespace {

class ObservationLines : public testing::TestWithParam<double> {
  protected:
    ObservationLine lineWith(const char* place) const {
        return observationLine(appearance, {0, 0, 790, 22}, QString::fromUtf8(place));
    }
    Appearance appearance{QLocale::c(), GetParam()};
};

INSTANTIATE_TEST_SUITE_P(Factors, ObservationLines, testing::Values(1, 1.15, 1.3));

TEST_P(ObservationLines, EveryGradeIsPartedFromItsSentence) {
    const ObservationLine line = lineWith("way 5");
    const QFontMetrics metrics(appearance.type.screen(ScreenText::Figure, Weight::Semibold));
    for (const Choice& choice : choicesOf<Grade>().choices) {
        const QString word = appearance.words.word(wordKey(static_cast<Grade>(choice.value)));
        const int end = line.grade.left() + metrics.horizontalAdvance(word);
        EXPECT_GE(line.sentence.left() - end, 10) << qPrintable(word);
    }
}

TEST_P(ObservationLines, TheSentenceHasWhatThePlaceLeaves) {
    const ObservationLine near = lineWith("way 5");
    const ObservationLine far = lineWith("Main switchboard, west wall of the intake room");
    const QFontMetrics metrics(appearance.type.screen(ScreenText::Figure));
    EXPECT_GE(near.place.width(), metrics.horizontalAdvance(QStringLiteral("way 5"))) << "nothing is cut";
    EXPECT_LE(far.place.width(), appearance.type.scaled(130) + 1);
    EXPECT_GT(near.sentence.width(), far.sentence.width());
    for (const ObservationLine& line : {near, far})
        EXPECT_EQ(line.place.left() - line.sentence.right(), 10);
}

} // namespace
} // namespace loopwright
