// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/heat_plot.h"

#include "core/working/terms.h"
#include "forms/plots/plot_items.h"
#include "forms/words/overload_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

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
      , look_(style.look)
      , axes_(makeAxes(plot, picture.limit ? 2 : 1, style)) {
        for (const overload::HeatPicture::Moment& moment : picture.moments)
            times_ << moment.time.base();
    }

    void draw() {
        if (picture_.moments.empty()) return;
        PlotKey key(*axes_.back(), style_);
        scaleTime();
        shade();
        if (picture_.limit) drawConductor(key);
        drawDevice(key);
        if (picture_.limit) plot_.plotLayout()->setRowStretchFactor(0, 1.5);
    }

  private:
    /// Above, where there is a conductor to speak of.
    QCPAxisRect& conductor() { return *axes_.front(); }
    QCPAxisRect& device() { return *axes_.back(); }
    double end() const { return times_.back(); }

    void scaleTime() {
        const Unit& unit = end() < minutes(3).base() ? units::second
                           : end() < hours(3).base() ? units::minute
                                                     : units::hour;
        const double base = unit.toBase(1);
        const double step = base * niceStep(end() / base / 5);
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (double time = 0; time <= end() * (1 + 1e-9); time += step)
            ticks->addTick(time, style_.words.measure(measure(seconds(time), unit)));
        auto* together = new QCPMarginGroup(&plot_);
        for (QCPAxisRect* axes : axes_) {
            axes->axis(QCPAxis::atBottom)->setRange(0, end());
            axes->axis(QCPAxis::atBottom)->setTicker(ticks);
            axes->setMarginGroup(QCP::msLeft | QCP::msRight, together);
        }
        if (picture_.limit) conductor().axis(QCPAxis::atBottom)->setTickLabels(false);
        device().axis(QCPAxis::atBottom)->setLabel(tr("time from cold; shaded while it runs"));
    }

    static double niceStep(double atLeast) {
        const double decade = std::pow(10, std::floor(std::log10(atLeast)));
        for (const double step : {1.0, 2.0, 5.0, 10.0})
            if (step * decade >= atLeast) return step * decade;
        return atLeast;
    }

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
                on->setBrush(look_.accentWash);
            }
    }

    void drawConductor(PlotKey& key) {
        QVector<double> degrees;
        for (const overload::HeatPicture::Moment& moment : picture_.moments)
            degrees << moment.conductor.base();
        const double limit = picture_.limit->base();
        const auto peak = std::ranges::max_element(degrees);
        QCPAxis& axis = *conductor().axis(QCPAxis::atLeft);
        axis.setRange(std::floor(std::ranges::min(degrees) / 20) * 20 - 1,
                      std::ceil(std::max(*peak, limit) / 20 + 0.4) * 20);
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (double at = std::ceil(axis.range().lower / 20) * 20; at <= axis.range().upper; at += 20)
            ticks->addTick(at, style_.words.measure(measure(celsius(at), units::celsius)));
        axis.setTicker(ticks);

        new HatchedArea(conductor().axis(QCPAxis::atBottom), &axis, above(degrees, limit), Hatch::Falling,
                        look_.fails);
        const QPen line = strokePen(look_.accent, 2.4),
                   dashes = strokePen(look_.fails, 1.9, Stroke::LongDashed);
        addCurve(conductor(), times_, degrees, line);
        addLine(conductor(), {0, limit}, {end(), limit}, dashes);
        const double at = times_[peak - degrees.begin()];
        addLabel(
            conductor(), {at, *peak}, Qt::AlignBottom | (at > end() / 2 ? Qt::AlignRight : Qt::AlignLeft),
            tr("conductor, peak %1").arg(style_.words.measure(measure(celsius(*peak), units::celsius, 0))),
            style_, look_.accent, true);
        addLabel(conductor(), {end(), limit}, Qt::AlignTop | Qt::AlignRight,
                 tr("insulation's limit %1")
                     .arg(style_.words.measure(measure(*picture_.limit, units::celsius, 0))),
                 style_, look_.fails);
        key.add(tr("conductor"), line);
        key.add(tr("insulation's limit"), dashes);
    }

    /// What lies above the limit, as one outline along it.
    std::vector<QPointF> above(const QVector<double>& degrees, double limit) const {
        std::vector<QPointF> outline{{times_.front(), limit}};
        for (qsizetype i = 0; i < degrees.size(); ++i)
            outline.emplace_back(times_[i], std::max(degrees[i], limit));
        outline.emplace_back(times_.back(), limit);
        return outline;
    }

    void drawDevice(PlotKey& key) {
        const QString device = style_.words.word(picture_.device);
        const QPen dashed = strokePen(look_.ink, 1.9, Stroke::Dashed), solid = strokePen(look_.ink, 1.9);
        const double top = std::max(
            drawState(&overload::HeatPicture::Moment::earliest, dashed, key, tr("earliest %1").arg(device)),
            drawState(&overload::HeatPicture::Moment::latest, solid, key, tr("latest %1").arg(device)));
        QCPAxis& axis = *this->device().axis(QCPAxis::atLeft);
        axis.setRange(0, top * 1.45);
        const QSharedPointer<QCPAxisTickerText> ticks(new QCPAxisTickerText);
        for (const double theta : {0.0, 0.5, 1.0})
            ticks->addTick(theta, QStringLiteral("θ ") + style_.words.number(theta, -1));
        axis.setTicker(ticks);
        addLine(this->device(), {0, 1}, {end(), 1}, strokePen(look_.ink, 1.4, Stroke::Dotted));
        addLabel(this->device(), {end(), 1}, Qt::AlignBottom | Qt::AlignRight,
                 tr("the %1 operates at θ = 1").arg(device), style_, look_.ink);
    }

    /// One edge's state, until it operates. Its highest, at least 1.
    double drawState(std::optional<Ratio> overload::HeatPicture::Moment::*edge, const QPen& pen, PlotKey& key,
                     const QString& name) {
        QVector<double> times, states;
        double top = 1;
        for (const overload::HeatPicture::Moment& moment : picture_.moments) {
            if (!(moment.*edge)) break;
            times << moment.time.base();
            states << *(moment.*edge);
            top = std::max(top, states.back());
        }
        if (times.isEmpty()) return top;
        addCurve(device(), times, states, pen);
        key.add(name, pen);
        return top;
    }

    QCustomPlot& plot_;
    const overload::HeatPicture& picture_;
    const PlotStyle& style_;
    const Look& look_;
    std::vector<QCPAxisRect*> axes_;
    QVector<double> times_;
};

} // namespace

void drawHeat(QCustomPlot& plot, const overload::HeatPicture& picture, const PlotStyle& style) {
    HeatDrawing(plot, picture, style).draw();
}

QString readHeat(const overload::HeatPicture& picture, Time time, const Words& words) {
    const auto moment =
        std::ranges::lower_bound(picture.moments, time, {}, &overload::HeatPicture::Moment::time);
    if (moment == picture.moments.end()) return {};
    const auto state = [&](const std::optional<Ratio>& theta) {
        return theta ? words.number(*theta, 2) : tr("operated");
    };
    QString said = spokenTime(time, words) + QStringLiteral(": ");
    if (picture.limit)
        said += tr("conductor %1; ").arg(words.measure(measure(moment->conductor, units::celsius, 0)));
    return said + tr("earliest %1 %2, latest %3")
                      .arg(words.word(picture.device), state(moment->earliest), state(moment->latest));
}

} // namespace loopwright
