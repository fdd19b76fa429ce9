// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/log_plot.h"

#include "core/working/terms.h"
#include "forms/plots/heat_parts.h"
#include "forms/words/overload_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright {
namespace {

using Column = overload::LogPicture::Column;

QString tr(const char* text) {
    return QCoreApplication::translate("Plots", text);
}

Time middleOf(const Column& column) {
    return (column.from + column.to) / 2;
}

class LogDrawing {
  public:
    LogDrawing(QCustomPlot& plot, const overload::LogPicture& picture, const PlotStyle& style)
      : plot_(plot)
      , picture_(picture)
      , style_(style)
      , look_(style.look)
      , axes_(makeAxes(plot, picture.limit ? 3 : 2, style)) {}

    void draw() {
        if (picture_.columns.empty()) return;
        PlotKey key(*axes_.back(), style_);
        scaleTime(axes_, picture_.columns.back().to,
                  tr("time since the log began, from cold; open where nothing was logged"), style_);
        drawCurrent(key);
        const HeatCurves curves = heat();
        if (picture_.limit) drawConductor(*axes_[1], curves, *picture_.limit, key, style_);
        drawStates(*axes_.back(), curves, style_.words.word(picture_.device), key, style_);
        markOperations();
        plot_.plotLayout()->setRowStretchFactor(0, 1.3);
    }

  private:
    HeatCurves heat() const {
        HeatCurves curves;
        for (const Column& column : picture_.columns) {
            const double time = middleOf(column).base();
            curves.times << time;
            curves.degrees << column.conductor.base();
            curves.earliest.add(time, column.earliest);
            curves.latest.add(time, column.latest);
        }
        return curves;
    }

    void drawCurrent(PlotKey& key) {
        QCPAxisRect& axes = *axes_.front();
        const double rated = picture_.rated.base(), end = picture_.columns.back().to.base();
        const double top = 1.25 * std::max(rated, highest());
        QCPAxis& axis = *axes.axis(QCPAxis::atLeft);
        axis.setRange(0, top);
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (const double multiple : {0.0, 0.5, 1.0, 2.0, 5.0, 10.0})
            if (multiple * rated <= top)
                ticks->addTick(multiple * rated,
                               style_.words.measure(measure(amperes(multiple * rated), units::ampere)));
        axis.setTicker(ticks);
        const QPen line = strokePen(look_.accent, 1.6),
                   dashes = strokePen(look_.ink, 1.4, Stroke::LongDashed);
        addStrokes(axes, line);
        addLine(axes, {0, rated}, {end, rated}, dashes);
        key.add(tr("logged current"), line);
        key.add(tr("rated %1").arg(style_.words.measure(measure(picture_.rated, units::ampere))), dashes);
    }

    double highest() const {
        double most = 0;
        for (const Column& column : picture_.columns)
            if (column.isLogged) most = std::max(most, column.most.base());
        return most;
    }

    /// A stroke from the least to the most of each column, the end nearer to the column before first.
    void addStrokes(QCPAxisRect& axes, const QPen& pen) {
        QVector<double> times, currents;
        double last = std::numeric_limits<double>::quiet_NaN();
        for (const Column& column : picture_.columns) {
            const double time = middleOf(column).base();
            double first = column.least.base(), second = column.most.base();
            if (!column.isLogged) first = second = std::numeric_limits<double>::quiet_NaN(); // leaves it open
            if (std::abs(second - last) < std::abs(first - last)) std::swap(first, second);
            times << time << time;
            currents << first << second;
            last = second;
        }
        addCurve(axes, times, currents, pen);
    }

    void markOperations() {
        const QString device = style_.words.word(picture_.device);
        const double end = picture_.columns.back().to.base();
        // One label above the panel and one below its upper edge: the two may be close together in time.
        const auto mark = [&](const std::optional<Time>& operated, Stroke stroke, const QString& said,
                              Qt::Alignment anchor) {
            if (!operated) return;
            const double at = operated->base();
            const bool isAtOnce = *operated <= picture_.columns.front().to; // a line would lie on the axis
            if (!isAtOnce) markTime(at, strokePen(look_.fails, 1.4, stroke));
            addLabel(*axes_.front(), {at, axes_.front()->axis(QCPAxis::atLeft)->range().upper},
                     anchor | (at > end / 2 ? Qt::AlignRight : Qt::AlignLeft),
                     isAtOnce ? tr("%1 at once").arg(said) : said, style_, look_.fails);
        };
        mark(picture_.earliestOperated, Stroke::Dashed, tr("the earliest %1 would have operated").arg(device),
             Qt::AlignBottom);
        mark(picture_.latestOperated, Stroke::Solid, tr("every sound %1 would have operated").arg(device),
             Qt::AlignTop);
    }

    void markTime(double at, const QPen& pen) {
        for (QCPAxisRect* axes : axes_) {
            const QCPRange range = axes->axis(QCPAxis::atLeft)->range();
            addLine(*axes, {at, range.lower}, {at, range.upper}, pen);
        }
    }

    QCustomPlot& plot_;
    const overload::LogPicture& picture_;
    const PlotStyle& style_;
    const Look& look_;
    std::vector<QCPAxisRect*> axes_;
};

} // namespace

void drawLog(QCustomPlot& plot, const overload::LogPicture& picture, const PlotStyle& style) {
    LogDrawing(plot, picture, style).draw();
}

QString readLog(const overload::LogPicture& picture, Time time, const Words& words) {
    const auto column = std::ranges::lower_bound(picture.columns, time, {}, &Column::to);
    if (column == picture.columns.end() || time < Time()) return {};
    const auto current = [&](Current value, int decimals) {
        return words.measure(measure(value, units::ampere, decimals));
    };
    QString said = spokenTime(time, words) + QStringLiteral(": ");
    if (!column->isLogged)
        said += tr("nothing logged");
    else if (column->least == column->most)
        said += current(column->most, 1);
    else
        said += tr("%1 to %2").arg(words.number(column->least.base(), 1), current(column->most, 1));
    said += QStringLiteral("; ");
    if (picture.limit)
        said += tr("conductor %1; ").arg(words.measure(measure(column->conductor, units::celsius, 0)));
    // From cold a state is known at the beginning wherever it is limited at all.
    const Column& first = picture.columns.front();
    return said + readStates(words.word(picture.device), {column->earliest, first.earliest.has_value()},
                             {column->latest, first.latest.has_value()}, words);
}

} // namespace loopwright
