// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/log_picture.h"
#include "forms/plots/plot_style.h"

class QCustomPlot;

namespace loopwright {

/// A logged current against time, with the rated current across it; below it the conductor's temperature and
/// the heat in the earliest and the latest sound device. Where nothing was logged the line is open. Draws
/// into an empty plot.
void drawLog(QCustomPlot& plot, const overload::LogPicture& picture, const PlotStyle& style);

/// What the picture says at one moment, in words: "1 h: 40 to 42 A; conductor 88 °C; earliest fuse 0.84,
/// latest 0.37".
QString readLog(const overload::LogPicture& picture, Time time, const Words& words);

} // namespace loopwright
