// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/plot_view.h"

#include "forms/plots/heat_plot.h"
#include "forms/plots/log_plot.h"
#include "forms/plots/plot_items.h"
#include "forms/plots/time_current_plot.h"

namespace loopwright {

PlotView::PlotView(const Appearance& appearance, QWidget* parent)
  : QCustomPlot(parent)
  , appearance_(appearance) {
    setMouseTracking(true);
    setInteractions(QCP::Interactions());
    empty();
}

void PlotView::show(overload::TimeCurrentPicture picture) {
    picture_ = std::move(picture);
    refresh();
}

void PlotView::show(overload::HeatPicture picture) {
    picture_ = std::move(picture);
    refresh();
}

void PlotView::show(overload::LogPicture picture) {
    picture_ = std::move(picture);
    refresh();
}

void PlotView::empty() {
    picture_ = std::monostate();
    refresh();
}

void PlotView::refresh() {
    const PlotStyle style = screenPlotStyle(appearance_);
    if (const auto* timeCurrent = std::get_if<overload::TimeCurrentPicture>(&picture_))
        drawTimeCurrent(*this, *timeCurrent, style);
    else if (const auto* heat = std::get_if<overload::HeatPicture>(&picture_))
        drawHeat(*this, *heat, style);
    else if (const auto* log = std::get_if<overload::LogPicture>(&picture_))
        drawLog(*this, *log, style);
    else
        makeAxes(*this, 0, style);
    replot();
}

QSize PlotView::sizeHint() const {
    return {appearance_.type.scaled(420), appearance_.type.scaled(380)};
}

QSize PlotView::minimumSizeHint() const {
    return {appearance_.type.scaled(300), appearance_.type.scaled(260)};
}

void PlotView::mouseMoveEvent(QMouseEvent* event) {
    QCustomPlot::mouseMoveEvent(event);
    const QCPAxisRect* axes = axisRectAt(event->position());
    if (!axes || !axes->rect().contains(event->position().toPoint())) return emit pointedAt({});
    const double at = axes->axis(QCPAxis::atBottom)->pixelToCoord(event->position().x());
    if (const auto* timeCurrent = std::get_if<overload::TimeCurrentPicture>(&picture_))
        emit pointedAt(readTimeCurrent(*timeCurrent, amperes(at), appearance_.words));
    else if (const auto* heat = std::get_if<overload::HeatPicture>(&picture_))
        emit pointedAt(readHeat(*heat, seconds(at), appearance_.words));
    else if (const auto* log = std::get_if<overload::LogPicture>(&picture_))
        emit pointedAt(readLog(*log, seconds(at), appearance_.words));
}

void PlotView::leaveEvent(QEvent* event) {
    QCustomPlot::leaveEvent(event);
    emit pointedAt({});
}

} // namespace loopwright
