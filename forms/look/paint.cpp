// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/look/paint.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

constexpr double limitPlace = 2.0 / 3.0; ///< of the margin bar: where the limit's tick stands
constexpr double loadSpan = 1.5;         ///< times the rating: the right end of the load bar

constexpr double focusWidth = 2;
constexpr double controlRadius = 3;

/// Crisp fills and lines: antialiasing would smear bars of two pixels.
class Crisp {
  public:
    explicit Crisp(QPainter& painter)
      : painter_(painter) {
        painter_.save();
        painter_.setRenderHint(QPainter::Antialiasing, false);
        painter_.setPen(Qt::NoPen);
    }
    ~Crisp() { painter_.restore(); }
    Crisp(const Crisp&) = delete;
    Crisp& operator=(const Crisp&) = delete;

  private:
    QPainter& painter_;
};

QRectF wholePixels(const QRectF& rect) {
    return rect.toRect().toRectF();
}

/// An unfilled frame of this width inside the rectangle.
void fillFrame(QPainter& painter, const QRectF& outer, double width, const QColor& colour) {
    QPainterPath frame;
    frame.setFillRule(Qt::OddEvenFill);
    frame.addRect(outer);
    frame.addRect(outer.adjusted(width, width, -width, -width));
    painter.fillPath(frame, colour);
}

} // namespace

void drawHatch(QPainter& painter, const QRectF& area, Hatch direction, const QColor& colour, double pitch,
               double width) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(area, Qt::IntersectClip);
    painter.setPen(QPen(colour, width));
    const double lean = area.height();
    const double from = direction == Hatch::Rising ? area.bottom() : area.top();
    const double to = direction == Hatch::Rising ? area.top() : area.bottom();
    const int lines = static_cast<int>(std::ceil((area.width() + lean) / pitch));
    for (int i = 0; i <= lines; ++i) {
        const double x = area.left() - lean + i * pitch;
        painter.drawLine(QPointF(x, from), QPointF(x + lean, to));
    }
    painter.restore();
}

void drawMarginBar(QPainter& painter, const QRectF& place, std::optional<double> margin, const QColor& colour,
                   const Look& look) {
    const double unit = place.height() / marginBarSize.height(); // a pixel of the look in the painter's units
    const QRectF bar(place.left(), place.center().y() - 4 * unit, place.width(), 8 * unit);
    const double limit = place.left() + place.width() * limitPlace;
    const Crisp crisp(painter);
    painter.fillRect(QRectF(bar.left(), bar.center().y() - unit / 2, bar.width(), unit), look.lineStrong);
    if (!margin) return;
    const double used = std::clamp(1 - *margin, 0.0, 1 / limitPlace);
    const double end = place.left() + place.width() * limitPlace * used;
    painter.fillRect(QRectF(bar.topLeft(), QPointF(std::min(end, limit), bar.bottom())), colour);
    if (end > limit) {
        const QRectF past(QPointF(limit, bar.top()), QPointF(end, bar.bottom()));
        drawHatch(painter, past, Hatch::Rising, colour, 5 * unit, unit);
        fillFrame(painter, past, unit, colour);
    }
    painter.fillRect(QRectF(limit - unit, place.top(), 2 * unit, place.height()), look.ink);
}

void drawLoadBar(QPainter& painter, const QRectF& cell, double share, const Look& look) {
    constexpr double side = 5, thickness = 2, tickHeight = 4, foot = 1;
    const QRectF track = wholePixels(
        QRectF(cell.left() + side, cell.bottom() - foot - thickness, cell.width() - 2 * side, thickness));
    const double tick = track.left() + track.width() / loadSpan;
    const double end = track.left() + track.width() * std::clamp(share / loadSpan, 0.0, 1.0);
    const Crisp crisp(painter);
    painter.fillRect(track, look.line);
    painter.fillRect(QRectF(track.topLeft(), QPointF(std::min(end, tick), track.bottom())), look.inkSoft);
    if (end > tick)
        painter.fillRect(QRectF(QPointF(tick, track.top()), QPointF(end, track.bottom())), look.fails);
    painter.fillRect(QRectF(std::floor(tick), track.bottom() - tickHeight, 1, tickHeight), look.ink);
}

void drawMissingCorners(QPainter& painter, const QRectF& cell, const QColor& colour) {
    constexpr double width = 1.5, arm = 4, wide = 22, high = 10;
    const QPointF centre = wholePixels(cell).center();
    const QRectF box(centre.x() - wide / 2, centre.y() - high / 2, wide, high);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    for (const bool right : {false, true})
        for (const bool low : {false, true}) {
            const QPointF corner(right ? box.right() : box.left(), low ? box.bottom() : box.top());
            painter.drawPolyline(QPolygonF{
                {corner + QPointF(right ? -arm : arm, 0), corner, corner + QPointF(0, low ? -arm : arm)}});
        }
    painter.restore();
}

QSizeF keyCapSize(const QString& text, const QFont& font) {
    constexpr double besides = 6, minimum = 16;
    const QFontMetricsF metrics(font);
    return {std::max(minimum, std::ceil(metrics.horizontalAdvance(text)) + 2 * besides),
            std::ceil(metrics.height()) + 2};
}

void drawKeyCap(QPainter& painter, const QRectF& place, const QString& text, const QFont& font,
                const Look& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(look.lineStrong, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(wholePixels(place).adjusted(.5, .5, -.5, -.5), controlRadius, controlRadius);
    painter.setPen(look.inkSoft);
    painter.setFont(font);
    painter.drawText(place, Qt::AlignCenter, text);
    painter.restore();
}

void drawFocusRing(QPainter& painter, const QRectF& edge, const Look& look, double radius) {
    constexpr double inset = focusWidth / 2;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, radius > 0);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.focus, focusWidth, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawRoundedRect(edge.adjusted(inset, inset, -inset, -inset), std::max(0.0, radius - inset),
                            std::max(0.0, radius - inset));
    painter.restore();
}

} // namespace loopwright
