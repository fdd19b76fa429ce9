// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/frame/appearance.h"

#include <QFont>
#include <QPicture>
#include <QSizeF>

class QCustomPlot;

namespace loopwright {

/// What a plot is drawn with. Lengths are pixels of the look (1/96 inch on paper).
struct PlotStyle {
    const Look& look;
    const Words& words;
    QFont text;   ///< of axes and labels
    QFont strong; ///< of what the plot is about
};

/// For the screen, by the appearance that is in force now.
PlotStyle screenPlotStyle(const Appearance& appearance);
/// For paper. Its fonts are sized in pixels, so that they stay what they are when a page is scaled.
PlotStyle paperPlotStyle(const Words& words);

/// The plot as vectors, `size` in pixels of the look.
QPicture recorded(QCustomPlot& plot, const QSizeF& size);

} // namespace loopwright
