// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"
#include "forms/plots/plot_items.h"

#include <algorithm>
#include <optional>
#include <vector>

/// Panels of heat against time, one below the other, as every plot that has them shows them.
namespace loopwright {

/// A thermal state over time. It ends where the device has operated, which is at 1 even where a step leads
/// beyond.
struct StateCurve {
    QVector<double> times; ///< s
    QVector<double> states;
    void add(double time, const std::optional<Ratio>& state) {
        if (!state) return;
        times << time;
        states << std::min(*state, 1.0);
    }
};

struct HeatCurves {
    QVector<double> times;   ///< s
    QVector<double> degrees; ///< of the conductor, as many; count only where they are drawn
    StateCurve earliest;
    StateCurve latest;
};

/// Lets all panels show the time from 0 to `end`, side by side, and says below the last what time it is.
void scaleTime(const std::vector<QCPAxisRect*>& axes, Time end, const QString& label, const PlotStyle& style);

/// The conductor's temperature and the limit of its insulation; hatched above it.
void drawConductor(QCPAxisRect& axes, const HeatCurves& curves, Temperature limit, PlotKey& key,
                   const PlotStyle& style);

/// The thermal states of the earliest and the latest device of that name, which operate at 1.
void drawStates(QCPAxisRect& axes, const HeatCurves& curves, const QString& device, PlotKey& key,
                const PlotStyle& style);

/// One edge at one moment.
struct EdgeState {
    std::optional<Ratio> state; ///< nothing once it has operated
    bool isLimited = false;     ///< something says how warm it gets; otherwise nothing is known of it
};

/// "earliest fuse 0.84, latest 0.37"; "operated" or "not known" in the place of a state.
QString readStates(const QString& device, const EdgeState& earliest, const EdgeState& latest,
                   const Words& words);

/// What lies above a level, as one outline along it.
std::vector<QPointF> above(const QVector<double>& keys, const QVector<double>& values, double level);

} // namespace loopwright
