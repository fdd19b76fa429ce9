// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/icons.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QImage>

#include <algorithm>

namespace loopwright {
namespace {

QImage imageOf(const QIcon& icon, QIcon::Mode mode = QIcon::Normal, int side = 24) {
    return icon.pixmap(QSize(side, side), mode).toImage().convertToFormat(QImage::Format_ARGB32);
}

/// The colour of what is fully inked, which must be one colour all over; invalid if nothing is.
QColor inkOf(const QImage& image) {
    QColor ink;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            const QColor pixel = image.pixelColor(x, y);
            if (pixel.alpha() < 255) continue;
            if (ink.isValid() && ink != pixel) return {};
            ink = pixel;
        }
    return ink;
}

TEST(Icons, EveryDrawingOfTheFolderHasANameAndEveryNameADrawing) {
    QStringList files = QDir(QStringLiteral(LOOPWRIGHT_SOURCE_DIR "/resources/icons"))
                            .entryList({QStringLiteral("*.svg")}, QDir::Files, QDir::Name);
    files.removeOne(QStringLiteral("loopwright.svg"));
    QStringList named;
    for (const std::string_view name : iconNames())
        named << QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())) + QStringLiteral(".svg");
    EXPECT_EQ(files.join(u' ').toStdString(), named.join(u' ').toStdString());
}

TEST(Icons, EveryIconIsDrawnInTheInksOfItsLook) {
    for (const Look* look : {&lightLook(), &darkLook()}) {
        const Icons icons(*look);
        for (std::size_t i = 0; i < iconNames().size(); ++i) {
            const QIcon icon = icons.icon(Icon(i));
            EXPECT_EQ(inkOf(imageOf(icon, QIcon::Normal, 48)), look->ink) << iconNames()[i];
            EXPECT_EQ(inkOf(imageOf(icon, QIcon::Disabled, 48)), look->inkFaint) << iconNames()[i];
        }
    }
}

TEST(Icons, CanBeAskedForInAnotherRole) {
    const Icons icons(lightLook());
    EXPECT_EQ(inkOf(imageOf(icons.icon(Icon::Issue, &Look::accentInk), QIcon::Normal, 48)),
              lightLook().accentInk);
    EXPECT_EQ(inkOf(imageOf(icons.icon(Icon::Issue), QIcon::Normal, 48)), lightLook().ink);
}

TEST(Icons, AreDrawnOnce) {
    const Icons icons(lightLook());
    EXPECT_EQ(icons.icon(Icon::Board).cacheKey(), icons.icon(Icon::Board).cacheKey());
    EXPECT_NE(icons.icon(Icon::Board).cacheKey(), icons.icon(Icon::Circuit).cacheKey());
}

TEST(WindowIcon, KeepsItsColours) {
    const QImage image = imageOf(windowIcon(), QIcon::Normal, 64);
    ASSERT_EQ(image.width(), 64);
    bool copper = false, dark = false;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) {
            copper |= image.pixelColor(x, y) == QColor(0xD9, 0x8F, 0x5A);
            dark |= image.pixelColor(x, y) == QColor(0x1C, 0x20, 0x25);
        }
    EXPECT_TRUE(copper);
    EXPECT_TRUE(dark);
}

} // namespace
} // namespace loopwright
