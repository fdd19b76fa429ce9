// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/look/paint.h"
#include "forms/plots/plot_style.h"

#include <qcustomplot.h>

#include <vector>

/// Parts that plots are put together from.
namespace loopwright {

/// How a line tells itself from others without colour.
enum class Stroke : std::uint8_t { Solid, Dashed, LongDashed, Dotted };
QPen strokePen(const QColor& colour, double width, Stroke stroke = Stroke::Solid);

/// An area whose outline is given in the plot's coordinates, filled with lines at 45 degrees.
class HatchedArea final : public QCPAbstractItem {
    Q_OBJECT
  public:
    HatchedArea(QCPAxis* key, QCPAxis* value, std::vector<QPointF> outline, Hatch hatch,
                const QColor& colour);

    double selectTest(const QPointF& pos, bool onlySelectable, QVariant* details = nullptr) const override;

  protected:
    void draw(QCPPainter* painter) override;

  private:
    QCPAxis* key_;
    QCPAxis* value_;
    std::vector<QPointF> outline_;
    Hatch hatch_;
    QColor colour_;
};

/// Empties the plot and gives it `count` axis rectangles, one below the other, styled. Above each there is
/// room for a label.
std::vector<QCPAxisRect*> makeAxes(QCustomPlot& plot, int count, const PlotStyle& style);

/// Round values between two others, some six of them and `leastStep` apart or more; none where there is no
/// room.
std::vector<double> evenTicks(double from, double to, double leastStep = 0);

/// A line through points whose key rises; its graph belongs to the plot.
QCPGraph& addCurve(QCPAxisRect& axes, const QVector<double>& keys, const QVector<double>& values,
                   const QPen& pen);

/// A label beside a point, its letters rimmed by the sheet's colour so that lines do not run through them. It
/// may stand out above its axis rectangle.
void addLabel(QCPAxisRect& axes, const QPointF& at, Qt::Alignment anchor, const QString& text,
              const PlotStyle& style, const QColor& colour, bool strong = false);

/// A straight line between two points of the plot.
void addLine(QCPAxisRect& axes, const QPointF& from, const QPointF& to, const QPen& pen);

/// A key in words below everything: what each line is. A plot without it could not be read in grey.
class PlotKey {
  public:
    PlotKey(QCPAxisRect& axes, const PlotStyle& style);
    void add(const QString& text, const QPen& pen);
    /// In a line of its own, for a name that may be long. It is shortened where the plot is narrower still.
    void addLong(const QString& text, const QPen& pen);

  private:
    QCPLegend& addLegend(int columns);
    void addTo(QCPLegend& legend, const QString& text, const QPen& pen);

    QCPAxisRect& axes_;
    const PlotStyle& style_;
    QCPLayoutGrid& lines_;
    QCPLegend& pairs_;
};

} // namespace loopwright
