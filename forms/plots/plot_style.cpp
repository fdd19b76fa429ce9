// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/plot_style.h"

#include <qcustomplot.h>

namespace loopwright {
namespace {

QFont inPixels(QFont font, double points) {
    constexpr double pixelsPerPoint = 96.0 / 72.0;
    font.setPixelSize(qRound(points * pixelsPerPoint));
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

} // namespace

PlotStyle screenPlotStyle(const Appearance& appearance) {
    return {appearance.look(), appearance.words, appearance.type.screen(ScreenText::Note),
            appearance.type.screen(ScreenText::Note, Weight::Semibold)};
}

PlotStyle paperPlotStyle(const Words& words) {
    const Type type;
    const QFont text = type.page(PageText::Foot), strong = type.page(PageText::Foot, Weight::Semibold);
    return {printLook(), words, inPixels(text, text.pointSizeF()), inPixels(strong, strong.pointSizeF())};
}

QPicture recorded(QCustomPlot& plot, const QSizeF& size) {
    QPicture picture;
    QCPPainter painter(&picture);
    painter.setMode(QCPPainter::pmVectorized);
    painter.setMode(QCPPainter::pmNoCaching);
    plot.toPainter(&painter, qRound(size.width()), qRound(size.height()));
    painter.end();
    return picture;
}

} // namespace loopwright
