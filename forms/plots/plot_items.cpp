// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/plot_items.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace loopwright {

QPen strokePen(const QColor& colour, double width, Stroke stroke) {
    QPen pen(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    // Qt counts dashes in widths of the line.
    if (stroke == Stroke::Dashed) pen.setDashPattern({6 / width, 3 / width});
    if (stroke == Stroke::LongDashed) pen.setDashPattern({9 / width, 3 / width});
    if (stroke == Stroke::Dotted) pen.setDashPattern({1.5 / width, 2.5 / width});
    return pen;
}

HatchedArea::HatchedArea(QCPAxis* key, QCPAxis* value, std::vector<QPointF> outline, Hatch hatch,
                         const QColor& colour)
  : QCPAbstractItem(key->parentPlot())
  , key_(key)
  , value_(value)
  , outline_(std::move(outline))
  , hatch_(hatch)
  , colour_(colour) {
    setClipAxisRect(key->axisRect());
}

double HatchedArea::selectTest(const QPointF&, bool, QVariant*) const {
    return -1;
}

void HatchedArea::draw(QCPPainter* painter) {
    QPolygonF polygon;
    for (const QPointF& point : outline_)
        polygon << QPointF(key_->coordToPixel(point.x()), value_->coordToPixel(point.y()));
    QPainterPath path;
    path.addPolygon(polygon);
    painter->save();
    painter->setClipPath(path, Qt::IntersectClip);
    constexpr double pitch = 6, width = 0.7;
    const QRectF seen = polygon.boundingRect().intersected(QRectF(key_->axisRect()->rect()));
    drawHatch(*painter, seen, hatch_, colour_, pitch, width);
    painter->restore();
}

namespace {

/// Axes at the left and below only.
void styleAxes(QCPAxisRect& axes, const PlotStyle& style) {
    for (const QCPAxis::AxisType type : {QCPAxis::atLeft, QCPAxis::atBottom}) {
        QCPAxis& axis = *axes.addAxis(type);
        axis.setLayer(QStringLiteral("axes"));
        axis.grid()->setLayer(QStringLiteral("grid"));
        axis.setBasePen(QPen(style.look.inkSoft, 1));
        axis.setTickPen(Qt::NoPen);
        axis.setSubTickPen(Qt::NoPen);
        axis.setTickLabelFont(style.text);
        axis.setLabelFont(style.text);
        axis.setTickLabelColor(style.look.inkSoft);
        axis.setLabelColor(style.look.inkSoft);
        axis.setTickLabelPadding(4);
        axis.setLabelPadding(2);
        axis.grid()->setVisible(true);
        axis.grid()->setPen(QPen(style.look.line, 1));
        axis.grid()->setZeroLinePen(Qt::NoPen);
        axis.grid()->setSubGridVisible(false);
    }
}

} // namespace

std::vector<QCPAxisRect*> makeAxes(QCustomPlot& plot, int count, const PlotStyle& style) {
    plot.clearItems();
    plot.clearPlottables();
    plot.plotLayout()->clear();
    plot.setAutoAddPlottableToLegend(false);
    plot.setBackground(style.look.sheet);
    std::vector<QCPAxisRect*> all;
    for (int row = 0; row < count; ++row) {
        auto* axes = new QCPAxisRect(&plot, false); // the layout owns it
        styleAxes(*axes, style);
        plot.plotLayout()->addElement(row, 0, axes);
        all.push_back(axes);
    }
    return all;
}

std::vector<double> evenTicks(double from, double to, double leastStep) {
    constexpr double wanted = 6;
    if (!std::isfinite(from) || !std::isfinite(to) || !(from < to)) return {};
    const double least = std::max(leastStep, (to - from) / wanted);
    const double decade = std::pow(10, std::floor(std::log10(least)));
    double step = least;
    for (const double nice : {10.0, 5.0, 2.0, 1.0})
        if (nice * decade >= least * (1 - 1e-9)) step = nice * decade;
    std::vector<double> ticks;
    for (int i = 0; i <= 2 * static_cast<int>(wanted); ++i) {
        const double tick = (std::ceil(from / step - 1e-9) + i) * step;
        if (tick <= to + step * 1e-9) ticks.push_back(tick);
    }
    return ticks;
}

QCPGraph& addCurve(QCPAxisRect& axes, const QVector<double>& keys, const QVector<double>& values,
                   const QPen& pen) {
    QCPGraph* graph = axes.parentPlot()->addGraph(axes.axis(QCPAxis::atBottom), axes.axis(QCPAxis::atLeft));
    graph->setData(keys, values, true);
    graph->setPen(pen);
    graph->setAdaptiveSampling(false);
    return *graph;
}

void addLabel(QCPAxisRect& axes, const QPointF& at, Qt::Alignment anchor, const QString& text,
              const PlotStyle& style, const QColor& colour, bool strong) {
    auto* label = new QCPItemText(axes.parentPlot()); // the plot owns its items
    label->setClipAxisRect(&axes);
    label->position->setAxes(axes.axis(QCPAxis::atBottom), axes.axis(QCPAxis::atLeft));
    label->position->setCoords(at);
    label->setPositionAlignment(anchor);
    label->setText(text);
    label->setTextAlignment(Qt::AlignLeft);
    label->setFont(strong ? style.strong : style.text);
    label->setColor(colour);
    label->setPadding(QMargins(3, 1, 3, 1));
    label->setBrush(style.look.sheet);
}

void addLine(QCPAxisRect& axes, const QPointF& from, const QPointF& to, const QPen& pen) {
    auto* line = new QCPItemLine(axes.parentPlot());
    line->setClipAxisRect(&axes);
    for (QCPItemPosition* end : {line->start, line->end})
        end->setAxes(axes.axis(QCPAxis::atBottom), axes.axis(QCPAxis::atLeft));
    line->start->setCoords(from);
    line->end->setCoords(to);
    line->setPen(pen);
}

namespace {

/// What has room in one of two columns of the smallest plot, in pixels of the look.
constexpr int longestKey = 118;

} // namespace

PlotKey::PlotKey(QCPAxisRect& axes, const PlotStyle& style)
  : axes_(axes)
  , legend_(new QCPLegend) {
    QCPLayoutGrid& layout = *axes.parentPlot()->plotLayout();
    const int row = layout.rowCount();
    layout.addElement(row, 0, legend_);
    layout.setRowStretchFactor(row, 0.001); // as low as it can be
    legend_->setLayer(QStringLiteral("legend"));
    legend_->setFillOrder(QCPLayoutGrid::foColumnsFirst);
    legend_->setWrap(2);
    legend_->setBorderPen(Qt::NoPen);
    legend_->setBrush(Qt::NoBrush);
    legend_->setFont(style.text);
    legend_->setTextColor(style.look.inkSoft);
    legend_->setIconSize(26, 8);
    legend_->setMargins(QMargins(0, 4, 0, 4));
    legend_->setColumnSpacing(14);
    legend_->setRowSpacing(1);
}

void PlotKey::add(const QString& text, const QPen& pen) {
    // A graph without data stands in for lines that are items, which a legend does not take.
    QCPGraph& graph = addCurve(axes_, {}, {}, pen);
    graph.setName(QFontMetrics(legend_->font()).elidedText(text, Qt::ElideRight, longestKey));
    legend_->addItem(new QCPPlottableLegendItem(legend_, &graph)); // the legend owns it
}

} // namespace loopwright
