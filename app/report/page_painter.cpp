// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/page_painter.h"

#include "app/report/typeset.h"
#include "forms/look/rich_symbol.h"

#include <QPainter>

#include <cmath>
#include <numbers>

namespace loopwright::report {
namespace {

class InkPainter {
  public:
    InkPainter(QPainter& painter, const Look& look)
      : painter_(painter)
      , look_(look) {}

    void operator()(const TextInk& ink) const {
        const QFont font = fontOf(ink.style);
        const QFontMetricsF metrics(font);
        const double width = metrics.horizontalAdvance(ink.text);
        painter_.setFont(font);
        painter_.setPen(look_.*ink.style.ink);
        painter_.drawText(startOf(ink.place, width, ink.align, metrics), ink.text);
    }

    void operator()(const SymbolInk& ink) const {
        const QFont font = fontOf(ink.style);
        const QFontMetricsF metrics(font);
        painter_.setPen(look_.*ink.style.ink);
        drawSymbol(painter_, startOf(ink.place, symbolWidth(ink.notation, font), ink.align, metrics),
                   ink.notation, font);
    }

    void operator()(const LineInk& ink) const {
        painter_.setPen(QPen(look_.*ink.ink, ink.width, Qt::SolidLine, Qt::FlatCap));
        painter_.drawLine(ink.from, ink.to);
    }

    void operator()(const FillInk& ink) const { painter_.fillRect(ink.place, look_.*ink.ink); }

    void operator()(const FrameInk& ink) const {
        const double inset = ink.width / 2;
        painter_.setPen(QPen(look_.*ink.ink, ink.width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawRect(ink.place.adjusted(inset, inset, -inset, -inset));
    }

    void operator()(const MarkInk& ink) const { drawMark(painter_, ink.place, ink.mark, look_.*ink.ink); }

    void operator()(const CornersInk& ink) const {
        const double arm = ink.place.height() * 0.35;
        painter_.setPen(
            QPen(look_.*ink.ink, ink.place.height() * 0.13, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        for (const double right : {-1.0, 1.0})
            for (const double low : {-1.0, 1.0}) {
                const QPointF corner(right < 0 ? ink.place.left() : ink.place.right(),
                                     low < 0 ? ink.place.top() : ink.place.bottom());
                painter_.drawPolyline(
                    QPolygonF{{corner - QPointF(right * arm, 0), corner, corner - QPointF(0, low * arm)}});
            }
    }

    void operator()(const PictureInk& ink) const {
        const QSizeF size = QSizeF(ink.picture.size()).scaled(ink.place.size(), Qt::KeepAspectRatio);
        const QPointF corner = ink.place.center() - QPointF(size.width() / 2, size.height() / 2);
        painter_.setRenderHint(QPainter::SmoothPixmapTransform);
        painter_.drawImage(QRectF(corner, size), ink.picture);
    }

    void operator()(const PlotInk& ink) const {
        // QPicture scales by the dots per inch of the device against its own; the page is in millimetres.
        const double dots = ink.drawing.logicalDpiX() / double(painter_.device()->logicalDpiX());
        painter_.save();
        painter_.translate(ink.place.topLeft());
        painter_.scale(dots * ink.place.width() / ink.size.width(),
                       dots * ink.place.height() / ink.size.height());
        painter_.drawPicture(0, 0, ink.drawing);
        painter_.restore();
    }

    void operator()(const RingInk& ink) const {
        constexpr int ticks = 64;
        const double radius = ink.place.width() / 2;
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(QPen(look_.ink, radius * 0.035));
        painter_.drawEllipse(ink.place.center(), radius * 0.62, radius * 0.62);
        painter_.setPen(QPen(look_.ink, radius * 0.045, Qt::SolidLine, Qt::FlatCap));
        for (int tick = 0; tick < ticks; ++tick) {
            const double angle = 2 * std::numbers::pi * tick / ticks - std::numbers::pi / 2;
            const QPointF direction(std::cos(angle), std::sin(angle));
            const double outer = isLong(ink, tick) ? 1.0 : 0.9;
            const double inner = isLong(ink, ticks + tick) ? 0.72 : 0.8;
            painter_.drawLine(ink.place.center() + direction * radius * inner,
                              ink.place.center() + direction * radius * outer);
        }
    }

  private:
    static QPointF startOf(const QRectF& place, double width, Align align, const QFontMetricsF& metrics) {
        const double x = align == Align::Right    ? place.right() - width
                         : align == Align::Centre ? place.center().x() - width / 2
                                                  : place.left();
        return {x, place.top() + baseLineOf(metrics, place.height())};
    }

    static bool isLong(const RingInk& ink, int bit) {
        if (!ink.digest) return false;
        const auto byte = (*ink.digest)[static_cast<std::size_t>(bit / 8)];
        return (byte >> (7 - bit % 8) & 1) != 0;
    }

    QPainter& painter_;
    const Look& look_;
};

} // namespace

void paintInks(QPainter& painter, std::span<const Ink> inks, const Look& look) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const InkPainter one(painter, look);
    for (const Ink& ink : inks)
        std::visit(one, ink);
    painter.restore();
}

} // namespace loopwright::report
