// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/pictures.h"
#include "forms/plots/plot_style.h"

namespace loopwright {

/// Temperature of the conductor against time, and below it the heat in the earliest and the latest sound
/// device; shaded while the load runs. Draws into an empty plot.
void drawHeat(QCustomPlot& plot, const overload::HeatPicture& picture, const PlotStyle& style);

/// What the curves say at one moment, in words: "1 h 12 min: conductor 88 °C; fuse 0.84 and 0.37 of 1".
QString readHeat(const overload::HeatPicture& picture, Time time, const Words& words);

} // namespace loopwright
