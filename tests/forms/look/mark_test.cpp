// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/mark.h"

#include "core/phrases/phrases.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include <cstdlib>

namespace loopwright {
namespace {

constexpr int black = 0, white = 255;

QImage drawn(Mark mark, int side) {
    QImage image(side, side, QImage::Format_Grayscale8);
    image.fill(white);
    QPainter painter(&image);
    drawMark(painter, QRectF(0, 0, side, side), mark, Qt::black);
    return image;
}

/// Mean difference of their pixels, as a share of black against white.
double difference(const QImage& first, const QImage& second) {
    double sum = 0;
    for (int y = 0; y < first.height(); ++y)
        for (int x = 0; x < first.width(); ++x)
            sum += std::abs(qGray(first.pixel(x, y)) - qGray(second.pixel(x, y)));
    return sum / (white - black) / (first.width() * first.height());
}

double inked(const QImage& image) {
    QImage blank(image.size(), QImage::Format_Grayscale8);
    blank.fill(white);
    return difference(image, blank);
}

class Sides : public testing::TestWithParam<int> {};
INSTANTIATE_TEST_SUITE_P(Mark, Sides,
                         testing::Values(static_cast<int>(mark_size::cell),
                                         static_cast<int>(mark_size::pageOne)));

TEST_P(Sides, EveryTwoMarksDifferWithoutColour) {
    // The nearest two, ring and half-full ring, differ by the half disc: half of pi 5.25² / 4 of 16², about a
    // tenth.
    constexpr double least = 0.08;
    for (int a = 0; a < markCount; ++a)
        for (int b = a + 1; b < markCount; ++b)
            EXPECT_GE(difference(drawn(Mark(a), GetParam()), drawn(Mark(b), GetParam())), least)
                << "marks " << a << " and " << b << " at " << GetParam() << " px";
}

TEST_P(Sides, MarksStayInsideTheirPlaceAndAreNotEmpty) {
    for (int mark = 0; mark < markCount; ++mark) {
        EXPECT_TRUE(QRectF(0, 0, 16, 16).contains(markPath(Mark(mark)).boundingRect())) << "mark " << mark;
        EXPECT_GE(inked(drawn(Mark(mark), GetParam())), 0.04) << "mark " << mark;
    }
}

TEST(Marks, KeepTheirHoles) {
    constexpr int side = 64, middle = side / 2, perUnit = side / 16;
    EXPECT_EQ(qGray(drawn(Mark::Holds, side).pixel(middle, middle)), white);
    EXPECT_EQ(qGray(drawn(Mark::Close, side).pixel(middle, middle - 2 * perUnit)), white);
    EXPECT_EQ(qGray(drawn(Mark::Close, side).pixel(middle, middle + 2 * perUnit)), black);
    EXPECT_EQ(qGray(drawn(Mark::CannotTell, side).pixel(middle, middle)), black);
    EXPECT_EQ(qGray(drawn(Mark::CannotTell, side).pixel(middle, middle - 3 * perUnit)), white);
    EXPECT_EQ(qGray(drawn(Mark::Fails, side).pixel(middle, middle)), white);
    EXPECT_EQ(qGray(drawn(Mark::LookFurther, side).pixel(middle, middle)), black);
    EXPECT_EQ(qGray(drawn(Mark::MakeSafe, side).pixel(middle, middle)), white);
}

TEST(Marks, AreDrawnSquareAndCentredInAWidePlace) {
    QImage image(60, 20, QImage::Format_Grayscale8);
    image.fill(white);
    QPainter painter(&image);
    drawMark(painter, image.rect(), Mark::MakeSafe, Qt::black);
    painter.end();
    EXPECT_EQ(qGray(image.pixel(30, 5)), black);
    for (const int x : {0, 15, 45, 59})
        EXPECT_EQ(qGray(image.pixel(x, 5)), white) << "column " << x;
}

TEST(Faces, EveryVerdictAndGradeHasItsOwnMarkAndAWord) {
    std::vector<Mark> seen;
    std::vector<std::string_view> words;
    for (const Verdict verdict :
         {Verdict::Fails, Verdict::CannotTell, Verdict::Close, Verdict::Holds, Verdict::DoesNotApply}) {
        seen.push_back(markOf(verdict));
        words.push_back(wordKey(verdict));
    }
    for (const Choice& choice : choicesOf<Grade>().choices) {
        seen.push_back(markOf(Grade(choice.value)));
        words.push_back(wordKey(Grade(choice.value)));
        EXPECT_EQ(wordKey(Grade(choice.value)), "choice.grade." + std::string(choice.key));
    }
    std::ranges::sort(seen);
    EXPECT_EQ(std::ranges::adjacent_find(seen), seen.end()) << "two of them share a mark";
    EXPECT_EQ(seen.size(), std::size_t{markCount});
    for (const std::string_view word : words)
        EXPECT_TRUE(phrase(word)) << word;
}

TEST(Faces, WhatHoldsIsQuiet) {
    EXPECT_EQ(washOf(Verdict::Holds), nullptr);
    EXPECT_EQ(washOf(Grade::WorthImproving), nullptr);
    EXPECT_FALSE(isLoud(Verdict::Holds));
    for (const Verdict verdict : {Verdict::Fails, Verdict::CannotTell, Verdict::Close}) {
        EXPECT_TRUE(isLoud(verdict));
        EXPECT_NE(washOf(verdict), nullptr);
    }
}

} // namespace
} // namespace loopwright
