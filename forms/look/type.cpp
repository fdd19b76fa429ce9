// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/type.h"

#include <QFontDatabase>
#include <QStringList>

#include <cmath>

namespace loopwright {
namespace {

const QString preferredFamily = QStringLiteral("Open Sans");
const QString fallbackFamily = QStringLiteral("DejaVu Sans");

/// A pixel of the look is a pixel of a 96 dpi screen. Points keep its half pixels, which pixel sizes of QFont
/// cannot.
constexpr double pointsPerPixel = 72.0 / 96.0;

double pixelsOf(ScreenText role) {
    switch (role) {
    case ScreenText::PageTitle:
        return 17;
    case ScreenText::PanelTitle:
        return 15;
    case ScreenText::Body:
        return 13;
    case ScreenText::Figure:
        return 12.5;
    case ScreenText::Note:
        break;
    }
    return 11.5;
}

double pointsOf(PageText role) {
    switch (role) {
    case PageText::Title:
        return 22;
    case PageText::Answer:
        return 16;
    case PageText::WorkingTitle:
        return 18;
    case PageText::Subject:
        return 12.5;
    case PageText::Body:
        return 9.5;
    case PageText::Table:
        return 9;
    case PageText::Schedule:
        return 8.2;
    case PageText::Foot:
        return 8;
    case PageText::Head:
        break;
    }
    return 7.6;
}

bool isTitle(ScreenText role) {
    return role == ScreenText::PageTitle || role == ScreenText::PanelTitle;
}
bool isTitle(PageText role) {
    return role == PageText::Title || role == PageText::Answer || role == PageText::WorkingTitle ||
           role == PageText::Subject;
}

QFont made(double points, bool semibold) {
    QFont font;
    font.setFamilies({preferredFamily, fallbackFamily});
    font.setPointSizeF(points);
    font.setWeight(semibold ? QFont::DemiBold : QFont::Normal);
    return font;
}

} // namespace

Type::Type(double factor)
  : factor_(factor)
  , usesFallback_(!QFontDatabase::hasFamily(preferredFamily)) {}

QFont Type::screen(ScreenText role, Weight weight) const {
    return made(pixelsOf(role) * pointsPerPixel * factor_, isTitle(role) || weight == Weight::Semibold);
}

QFont Type::page(PageText role, Weight weight) const {
    return made(pointsOf(role), isTitle(role) || weight == Weight::Semibold);
}

int Type::scaled(double pixels) const {
    return static_cast<int>(std::lround(pixels * factor_));
}

QFont italic(QFont font) {
    font.setItalic(true);
    return font;
}

} // namespace loopwright
