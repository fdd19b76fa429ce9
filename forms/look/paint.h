// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/look.h"

#include <QFont>
#include <QRectF>
#include <QString>

#include <optional>

class QPainter;

/// Small drawings that several screens and the report share. Lengths follow the rectangle they are given, so
/// that the same painter serves pixels and millimetres.
namespace loopwright {

/// How much of a limit is used: solid up to the value, a tick for the limit at two thirds, hatched past it.
/// `margin` is a finding's: the share of the limit still free, below 0 past the limit. Nothing known: the
/// track alone. The bar is 8 high in a place 18 high, and keeps that proportion.
void drawMarginBar(QPainter& painter, const QRectF& place, std::optional<double> margin, const QColor& colour,
                   const Look& look);
inline constexpr QSizeF marginBarSize{58, 18};

/// The bar at the foot of a load cell, from no load to 1.5 times the rating, with a tick at the rating; what
/// is past the tick is drawn as failing. `share` is load by rating.
void drawLoadBar(QPainter& painter, const QRectF& cell, double share, const Look& look);

/// Four corners round an empty place: a reading that is missing and needed.
void drawMissingCorners(QPainter& painter, const QRectF& cell, const QColor& colour);

/// A key's name in a thin rounded frame: "Ctrl K".
QSizeF keyCapSize(const QString& text, const QFont& font);
void drawKeyCap(QPainter& painter, const QRectF& place, const QString& text, const QFont& font,
                const Look& look);

/// The ring that shows where the keyboard is: 2 px, inside the edge.
void drawFocusRing(QPainter& painter, const QRectF& edge, const Look& look, double radius = 0);

/// Closely set parallel lines at 45 degrees, clipped to the rectangle; falling lines lean the other way.
enum class Hatch : std::uint8_t { Rising, Falling };
void drawHatch(QPainter& painter, const QRectF& area, Hatch direction, const QColor& colour, double pitch,
               double width);

} // namespace loopwright
