// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/pictures.h"
#include "forms/plots/plot_style.h"

namespace loopwright {

/// Time against current on logarithmic scales: the band in which a sound device may operate, and the load,
/// the start, the fault and the conductor's limit on it. Draws into an empty plot.
void drawTimeCurrent(QCustomPlot& plot, const overload::TimeCurrentPicture& picture, const PlotStyle& style);

/// What the band says at one current, in words: "48 A: not before 12 min, may never operate".
QString readTimeCurrent(const overload::TimeCurrentPicture& picture, Current current, const Words& words);

} // namespace loopwright
