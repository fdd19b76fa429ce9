// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/paint.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include <functional>

namespace loopwright {
namespace {

const Look& look = lightLook();

QImage painted(QSize size, const std::function<void(QPainter&)>& draw) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(look.sheet);
    QPainter painter(&image);
    draw(painter);
    return image;
}

int pixels(const QImage& image, const QColor& colour, int fromX = 0, int toX = -1) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = fromX; x < (toX < 0 ? image.width() : toX); ++x)
            count += image.pixelColor(x, y) == colour;
    return count;
}

constexpr int width = 60, height = 18, limit = 40; // two thirds of the width

QImage marginBar(std::optional<double> margin) {
    return painted({width, height}, [&](QPainter& painter) {
        drawMarginBar(painter, {0, 0, width, height}, margin, look.fails, look);
    });
}

TEST(MarginBar, IsSolidUpToTheValueAndHasItsLimitAtTwoThirds) {
    // Half of the limit is used: solid over a third of the bar, 8 high.
    const QImage half = marginBar(0.5);
    EXPECT_EQ(pixels(half, look.fails), limit / 2 * 8);
    EXPECT_EQ(pixels(half, look.fails, limit / 2), 0);
    for (const int y : {0, height / 2, height - 1})
        EXPECT_EQ(half.pixelColor(limit, y), look.ink) << "row " << y;
}

TEST(MarginBar, IsHatchedPastTheLimitAndEndsAtItsPlace) {
    const QImage past = marginBar(-0.25); // 1.25 times the limit: 50 of 60
    EXPECT_EQ(past.pixelColor(20, height / 2), look.fails);
    const int beyond = pixels(past, look.fails, limit + 2, 50), area = (50 - limit - 2) * 8;
    EXPECT_GT(beyond, area / 8) << "an outline is drawn";
    EXPECT_LT(beyond, area) << "and it is not solid";
    EXPECT_EQ(pixels(past, look.fails, 50), 0);
    EXPECT_EQ(marginBar(-5), marginBar(-0.5)) << "what does not fit ends at the bar's end";
}

TEST(MarginBar, ShowsTheTrackAloneWhereNothingIsKnown) {
    const QImage unknown = marginBar(std::nullopt);
    EXPECT_EQ(pixels(unknown, look.ink), 0);
    EXPECT_EQ(pixels(unknown, look.lineStrong), width);
    EXPECT_GT(pixels(marginBar(1), look.ink), 0) << "nothing used is not the same as nothing known";
}

QImage loadBar(double share) {
    return painted({55, 22}, [&](QPainter& painter) { drawLoadBar(painter, {0, 0, 55, 22}, share, look); });
}

TEST(LoadBar, TurnsToFailingOnlyPastTheRating) {
    for (const double share : {0.0, 0.5, 1.0})
        EXPECT_EQ(pixels(loadBar(share), look.fails), 0) << share;
    EXPECT_GT(pixels(loadBar(1.2), look.fails), 0);
    // From 5 to 50 for 1.5 times the rating: 30 to the tick, 15 past it, 2 high; the tick stands on one
    // column.
    EXPECT_EQ(pixels(loadBar(0.5), look.inkSoft), 15 * 2);
    EXPECT_EQ(pixels(loadBar(1.5), look.fails), (15 - 1) * 2);
    EXPECT_EQ(loadBar(9), loadBar(1.5));
}

TEST(FocusRing, IsTwoPixelsInsideTheEdge) {
    const QImage ring =
        painted({30, 20}, [&](QPainter& painter) { drawFocusRing(painter, QRectF(5, 5, 20, 10), look); });
    EXPECT_EQ(pixels(ring, look.focus), 20 * 10 - 16 * 6);
    EXPECT_EQ(ring.pixelColor(4, 10), look.sheet);
    EXPECT_EQ(ring.pixelColor(5, 10), look.focus);
    EXPECT_EQ(ring.pixelColor(7, 10), look.sheet);
}

TEST(Hatches, LeanEitherWayAndStayInside) {
    const auto hatch = [](Hatch direction) {
        return painted({40, 40}, [&](QPainter& painter) {
            drawHatch(painter, QRectF(10, 10, 20, 20), direction, look.ink, 6, 1.5);
        });
    };
    const QImage rising = hatch(Hatch::Rising), falling = hatch(Hatch::Falling);
    // How many dark pixels go on one column to the right and `step` rows down.
    const auto followed = [](const QImage& image, int step) {
        const auto isDark = [&](int x, int y) { return qGray(image.pixel(x, y)) < 128; };
        int count = 0;
        for (int y = 12; y < 28; ++y)
            for (int x = 12; x < 28; ++x)
                count += isDark(x, y) && isDark(x + 1, y + step);
        return count;
    };
    EXPECT_GT(followed(rising, -1), 4 * followed(rising, 1));
    EXPECT_GT(followed(falling, 1), 4 * followed(falling, -1));
    for (int i = 0; i < 40; ++i)
        EXPECT_EQ(rising.pixelColor(i, 9), look.sheet) << "column " << i;
}

TEST(MissingCorners, LeaveTheMiddleEmpty) {
    const QImage corners = painted({54, 22}, [&](QPainter& painter) {
        drawMissingCorners(painter, QRectF(0, 0, 54, 22), look.cannotTell);
    });
    EXPECT_GT(pixels(corners, look.cannotTell), 0);
    EXPECT_EQ(corners.copy(22, 0, 10, 22), painted({10, 22}, [](QPainter&) {}));
}

TEST(KeyCaps, AreAsWideAsTheirText) {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPointSizeF(9);
    EXPECT_GT(keyCapSize(QStringLiteral("Ctrl K"), font).width(),
              keyCapSize(QStringLiteral("F6"), font).width());
    EXPECT_GE(keyCapSize(QStringLiteral("="), font).width(), 16);
}

} // namespace
} // namespace loopwright
