// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/heat_parts.h"

#include "core/working/terms.h"
#include "forms/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Plots", text);
}

/// One edge's state, until it operates. Of one that operates at once there is no line to see.
void drawState(QCPAxisRect& axes, const StateCurve& curve, const QPen& pen, PlotKey& key,
               const QString& name) {
    if (curve.times.size() < 2) return;
    addCurve(axes, curve.times, curve.states, pen);
    key.add(name, pen);
}

} // namespace

void scaleTime(const std::vector<QCPAxisRect*>& axes, Time end, const QString& label,
               const PlotStyle& style) {
    const Unit& unit = end < minutes(3) ? units::second : end < hours(3) ? units::minute : units::hour;
    const double base = unit.toBase(1);
    const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
    for (const double tick : evenTicks(0, end.base() / base))
        ticks->addTick(tick * base, style.words.measure(measure(seconds(tick * base), unit)));
    auto* together = new QCPMarginGroup(axes.front()->parentPlot()); // which owns it
    for (QCPAxisRect* each : axes) {
        QCPAxis& axis = *each->axis(QCPAxis::atBottom);
        axis.setRange(0, end.base());
        axis.setTicker(ticks);
        axis.setTickLabels(each == axes.back());
        each->setMarginGroup(QCP::msLeft | QCP::msRight, together);
    }
    axes.back()->axis(QCPAxis::atBottom)->setLabel(label);
}

void drawConductor(QCPAxisRect& axes, const HeatCurves& curves, Temperature limit, PlotKey& key,
                   const PlotStyle& style) {
    const Look& look = style.look;
    const auto degreesText = [&](Temperature temperature, int decimals) {
        return style.words.measure(measure(temperature, units::celsius, decimals));
    };
    const auto peak = std::ranges::max_element(curves.degrees);
    if (!std::isfinite(*peak)) return;
    QCPAxis& axis = *axes.axis(QCPAxis::atLeft);
    const double lowest = std::floor(std::ranges::min(curves.degrees) / 20) * 20 - 1;
    const double highest = std::max(*peak, limit.base()), span = highest - lowest;
    axis.setRange(lowest, highest + 0.1 * span);
    const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
    for (const double tick : evenTicks(axis.range().lower, axis.range().upper, 20))
        ticks->addTick(tick, degreesText(celsius(tick), 0));
    axis.setTicker(ticks);

    new HatchedArea(axes.axis(QCPAxis::atBottom), &axis, above(curves.times, curves.degrees, limit.base()),
                    Hatch::Falling, look.fails); // the plot owns it
    const QPen line = strokePen(look.accent, 2.4), dashes = strokePen(look.fails, 1.9, Stroke::LongDashed);
    const double end = curves.times.back(), at = curves.times[peak - curves.degrees.begin()];
    addCurve(axes, curves.times, curves.degrees, line);
    addLine(axes, {0, limit.base()}, {end, limit.base()}, dashes);
    // On the peak, or on the limit where a text has no room between the two.
    const double foot = limit.base() - *peak < 0.3 * span ? highest : *peak;
    addLabel(axes, {at, foot}, Qt::AlignBottom | (at > end / 2 ? Qt::AlignRight : Qt::AlignLeft),
             tr("conductor, %1 at most").arg(degreesText(celsius(*peak), 0)), style, look.accent, true);
    key.add(tr("conductor"), line);
    key.add(tr("insulation’s limit %1").arg(degreesText(limit, 0)), dashes);
}

void drawStates(QCPAxisRect& axes, const HeatCurves& curves, const QString& device, PlotKey& key,
                const PlotStyle& style) {
    const Look& look = style.look;
    drawState(axes, curves.earliest, strokePen(look.ink, 1.9, Stroke::Dashed), key,
              tr("earliest %1").arg(device));
    drawState(axes, curves.latest, strokePen(look.ink, 1.9), key, tr("latest %1").arg(device));
    QCPAxis& axis = *axes.axis(QCPAxis::atLeft);
    axis.setRange(0, 1.15);
    const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
    for (const double theta : {0.0, 0.5, 1.0})
        ticks->addTick(theta, QStringLiteral("θ ") + style.words.number(theta, -1));
    axis.setTicker(ticks);
    const double end = axes.axis(QCPAxis::atBottom)->range().upper;
    addLine(axes, {0, 1}, {end, 1}, strokePen(look.ink, 1.4, Stroke::Dotted));
    addLabel(axes, {end, 1}, Qt::AlignBottom | Qt::AlignRight, tr("the %1 operates at θ = 1").arg(device),
             style, look.ink);
}

QString readStates(const QString& device, const EdgeState& earliest, const EdgeState& latest,
                   const Words& words) {
    const auto said = [&](const EdgeState& edge) {
        if (!edge.isLimited) return tr("not known");
        return edge.state ? words.number(*edge.state, 2) : tr("operated");
    };
    return tr("earliest %1 %2, latest %3").arg(device, said(earliest), said(latest));
}

std::vector<QPointF> above(const QVector<double>& keys, const QVector<double>& values, double level) {
    std::vector<QPointF> outline{{keys.front(), level}};
    for (qsizetype i = 0; i < values.size(); ++i)
        outline.emplace_back(keys[i], std::max(values[i], level));
    outline.emplace_back(keys.back(), level);
    return outline;
}

} // namespace loopwright
