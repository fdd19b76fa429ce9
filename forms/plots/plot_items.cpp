// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/plot_items.h"

#include <QGlyphRun>
#include <QPainterPath>
#include <QTextLayout>

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

constexpr QMargins labelPadding(3, 2, 3, 3);

/// Axes at the left and below only.
void styleAxes(QCPAxisRect& axes, const PlotStyle& style) {
    constexpr int side = 15;    // half of the last tick's label stands out
    constexpr int rounding = 2; // of an axis's upper end to a pixel
    const int label = QFontMetrics(style.strong).height() + labelPadding.top() + labelPadding.bottom();
    axes.setMinimumMargins({side, label + rounding, side, 0});
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

namespace {

/// The letters of one line; the origin is its upper left corner.
QPainterPath outlineOf(const QString& text, const QFont& font) {
    QTextLayout layout(text, font);
    layout.beginLayout();
    layout.createLine().setNumColumns(static_cast<int>(text.size()));
    layout.endLayout();
    QPainterPath outline;
    for (const QGlyphRun& run : layout.glyphRuns())
        for (qsizetype i = 0; i < run.glyphIndexes().size(); ++i)
            outline.addPath(
                run.rawFont().pathForGlyph(run.glyphIndexes().at(i)).translated(run.positions().at(i)));
    return outline;
}

/// One line of text with a halo in the colour of the ground.
class HaloText final : public QCPItemText {
  public:
    HaloText(QCustomPlot& plot, const QColor& ground)
      : QCPItemText(&plot)
      , halo_(ground, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin) {}

  protected:
    void draw(QCPPainter* painter) override {
        const QPointF corner = topLeft->pixelPosition() + QPointF(padding().left(), padding().top());
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        painter->strokePath(outlineOf(text(), font()).translated(corner), halo_);
        painter->restore();
        QCPItemText::draw(painter);
    }

  private:
    static constexpr double width = 4; // half of it within the letters' outlines
    QPen halo_;
};

} // namespace

void addLabel(QCPAxisRect& axes, const QPointF& at, Qt::Alignment anchor, const QString& text,
              const PlotStyle& style, const QColor& colour, bool strong) {
    auto* label = new HaloText(*axes.parentPlot(), style.look.sheet); // the plot owns its items
    label->setLayer(QStringLiteral("legend"));                        // no point or line covers it
    label->setClipToAxisRect(false);
    label->position->setAxes(axes.axis(QCPAxis::atBottom), axes.axis(QCPAxis::atLeft));
    label->position->setCoords(at);
    label->setPositionAlignment(anchor);
    label->setText(text);
    label->setTextAlignment(Qt::AlignLeft);
    label->setFont(strong ? style.strong : style.text);
    label->setColor(colour);
    label->setPadding(labelPadding);
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

/// Shortens its name to the room that it is given.
class KeyEntry final : public QCPPlottableLegendItem {
  public:
    using QCPPlottableLegendItem::QCPPlottableLegendItem;

  protected:
    QSize minimumOuterSizeHint() const override {
        return QCPPlottableLegendItem::minimumOuterSizeHint() + QSize(2, 2); // metrics are rounded
    }
    void draw(QCPPainter* painter) override {
        const QString name = mPlottable->name();
        const int room = mRect.width() - mParentLegend->iconSize().width() - mParentLegend->iconTextPadding();
        mPlottable->setName(QFontMetrics(getFont()).elidedText(name, Qt::ElideRight, room));
        QCPPlottableLegendItem::draw(painter);
        mPlottable->setName(name);
    }
};

/// A grid below all that the plot has, as low as it can be; the plot owns it.
QCPLayoutGrid& addLines(QCustomPlot& plot) {
    auto* lines = new QCPLayoutGrid;
    const int row = plot.plotLayout()->rowCount();
    plot.plotLayout()->addElement(row, 0, lines);
    plot.plotLayout()->setRowStretchFactor(row, 0.001);
    lines->setMargins(QMargins(0, 4, 0, 4));
    lines->setRowSpacing(1);
    return *lines;
}

} // namespace

PlotKey::PlotKey(QCPAxisRect& axes, const PlotStyle& style)
  : axes_(axes)
  , style_(style)
  , lines_(addLines(*axes.parentPlot()))
  , pairs_(addLegend(2)) {}

QCPLegend& PlotKey::addLegend(int columns) {
    auto* legend = new QCPLegend;
    lines_.addElement(lines_.rowCount(), 0, legend); // which owns it
    legend->setLayer(QStringLiteral("legend"));
    legend->setFillOrder(QCPLayoutGrid::foColumnsFirst);
    legend->setWrap(columns);
    legend->setBorderPen(Qt::NoPen);
    legend->setBrush(Qt::NoBrush);
    legend->setFont(style_.text);
    legend->setTextColor(style_.look.inkSoft);
    legend->setIconSize(26, QFontMetrics(style_.text).height());
    legend->setMargins(QMargins());
    legend->setColumnSpacing(14);
    legend->setRowSpacing(1);
    return *legend;
}

void PlotKey::add(const QString& text, const QPen& pen) {
    addTo(pairs_, text, pen);
}

void PlotKey::addLong(const QString& text, const QPen& pen) {
    addTo(addLegend(1), text, pen);
}

void PlotKey::addTo(QCPLegend& legend, const QString& text, const QPen& pen) {
    // A graph without data stands in for lines that are items, which a legend does not take.
    QCPGraph& graph = addCurve(axes_, {}, {}, pen);
    graph.setName(text);
    legend.addItem(new KeyEntry(&legend, &graph)); // the legend owns it
}

} // namespace loopwright
