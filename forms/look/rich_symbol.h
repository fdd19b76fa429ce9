// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QString>

#include <vector>

class QPaintDevice;
class QPainter;

/// Formula symbols. core writes them as plain text: `_` before a subscript, `^` before a superscript, braces
/// around one of several parts: "Z_s ≤ 0.8 · Z_s,max", "R_1+R_2", "e^{-t/τ}". Quantities are set italic,
/// numbers, words, units and subscripts upright (ISO 80000-1, 7.1).
namespace loopwright {

struct SymbolRun {
    enum class Level : std::uint8_t { Line, Below, Above };
    QString text;
    Level level = Level::Line;
    bool italic = false;
    friend bool operator==(const SymbolRun&, const SymbolRun&) = default;
};

/// The runs of one style each, in order; hyphens become minus signs.
std::vector<SymbolRun> symbolRuns(QStringView notation);

/// For labels and documents that read HTML.
QString richSymbol(QStringView notation);
/// Sets sub and sup of an HTML text in `font` at the size that drawSymbol gives them. Left alone, Qt takes
/// two thirds, in whole points: too small on a screen.
QString withScriptSize(QString html, const QFont& font);

/// Whether lone letters are taken for quantities. In the heads of a table they are units: "m", "A".
enum class Slant : std::uint8_t { Quantities, Upright };

/// How wide drawSymbol draws it. `device` is what it will be drawn on; null: the screen.
double symbolWidth(QStringView notation, const QFont& font, QPaintDevice* device = nullptr,
                   Slant slant = Slant::Quantities);

/// Draws it with the painter's pen, from the left end of the base line; returns the width used.
double drawSymbol(QPainter& painter, const QPointF& baseLine, QStringView notation, const QFont& font,
                  Slant slant = Slant::Quantities);

} // namespace loopwright
