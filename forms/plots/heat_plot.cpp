// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/heat_plot.h"

#include "core/working/terms.h"
#include "forms/plots/heat_parts.h"
#include "forms/words/overload_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Plots", text);
}

class HeatDrawing {
  public:
    HeatDrawing(QCustomPlot& plot, const overload::HeatPicture& picture, const PlotStyle& style)
      : plot_(plot)
      , picture_(picture)
      , style_(style)
      , axes_(makeAxes(plot, picture.limit ? 2 : 1, style)) {}

    void draw() {
        if (picture_.moments.empty()) return;
        PlotKey key(*axes_.back(), style_);
        scaleTime(axes_, picture_.moments.back().time, tr("time from cold; shaded while it runs"), style_);
        shade();
        HeatCurves curves;
        for (const overload::HeatPicture::Moment& moment : picture_.moments) {
            const double time = moment.time.base();
            curves.times << time;
            curves.degrees << moment.conductor.base();
            curves.earliest.add(time, moment.earliest);
            curves.latest.add(time, moment.latest);
        }
        if (picture_.limit) drawConductor(*axes_.front(), curves, *picture_.limit, key, style_);
        drawStates(*axes_.back(), curves, style_.words.word(picture_.device), key, style_);
        if (picture_.limit) plot_.plotLayout()->setRowStretchFactor(0, 1.5);
    }

  private:
    void shade() {
        for (QCPAxisRect* axes : axes_)
            for (const overload::HeatPicture::Run& run : picture_.runs) {
                auto* on = new QCPItemRect(&plot_); // the plot owns its items
                on->setLayer(QStringLiteral("background"));
                on->setClipAxisRect(axes);
                for (QCPItemPosition* corner : {on->topLeft, on->bottomRight}) {
                    corner->setAxisRect(axes);
                    corner->setAxes(axes->axis(QCPAxis::atBottom), axes->axis(QCPAxis::atLeft));
                    corner->setTypeY(QCPItemPosition::ptAxisRectRatio);
                }
                on->topLeft->setCoords(run.from.base(), 0);
                on->bottomRight->setCoords(run.to.base(), 1);
                on->setPen(Qt::NoPen);
                on->setBrush(style_.look.accentWash);
            }
    }

    QCustomPlot& plot_;
    const overload::HeatPicture& picture_;
    const PlotStyle& style_;
    std::vector<QCPAxisRect*> axes_;
};

} // namespace

void drawHeat(QCustomPlot& plot, const overload::HeatPicture& picture, const PlotStyle& style) {
    HeatDrawing(plot, picture, style).draw();
}

QString readHeat(const overload::HeatPicture& picture, Time time, const Words& words) {
    const auto moment =
        std::ranges::lower_bound(picture.moments, time, {}, &overload::HeatPicture::Moment::time);
    if (moment == picture.moments.end()) return {};
    QString said = spokenTime(time, words) + QStringLiteral(": ");
    if (picture.limit)
        said += tr("conductor %1; ").arg(words.measure(measure(moment->conductor, units::celsius, 0)));
    // From cold a state is known at the beginning wherever it is limited at all.
    const overload::HeatPicture::Moment& first = picture.moments.front();
    return said + readStates(words.word(picture.device), {moment->earliest, first.earliest.has_value()},
                             {moment->latest, first.latest.has_value()}, words);
}

} // namespace loopwright
