// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/plots/time_current_plot.h"

#include "core/working/terms.h"
#include "forms/plots/plot_items.h"
#include "forms/words/overload_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

using physics::TimeCurrent;
using Points = std::vector<TimeCurrent>;

// What the time axis shows. A device that holds out longer than this is said to hold.
constexpr Time shortest = seconds(0.02), longest = hours(5);
/// How far the current axis goes, in multiples of the rated current, whatever else is shown.
constexpr double leastSpan = 12;

/// The next value of 1, 2, 5, 10, ... at or beyond.
double roundStep(double value, bool up) {
    const double decade = std::pow(10, std::floor(std::log10(value)));
    constexpr std::array steps{1.0, 2.0, 5.0, 10.0};
    double below = decade;
    for (const double step : steps) {
        if (step * decade >= value * (up ? 1 - 1e-9 : 1 + 1e-9)) return up ? step * decade : below;
        below = step * decade;
    }
    return below;
}

/// The time of an edge at a current, interpolated on logarithmic scales; nothing outside of it.
std::optional<Time> timeAt(const Points& edge, Current current) {
    if (edge.empty() || current < edge.front().current || current > edge.back().current) return std::nullopt;
    const auto next = std::ranges::lower_bound(edge, current, {}, &TimeCurrent::current);
    if (next->current == current || next == edge.begin()) return next->time;
    const TimeCurrent& before = *std::prev(next);
    const double share = std::log(current / before.current) / std::log(next->current / before.current);
    return before.time * std::pow(next->time / before.time, share);
}

class TimeCurrentDrawing {
  public:
    TimeCurrentDrawing(QCustomPlot& plot, const overload::TimeCurrentPicture& picture, const PlotStyle& style)
      : picture_(picture)
      , style_(style)
      , look_(style.look)
      , axes_(*makeAxes(plot, 1, style).front())
      , low_(roundStep(0.5 * picture.rated.base(), false)) // "rated" has room left of its tick
      , high_(roundStep(furthest(), true)) {
        scaleAxes();
    }

    void draw() {
        PlotKey key(axes_, style_);
        drawBand(key);
        drawLimits(key);
        drawLoad(key);
        drawPublished();
        addLine(axes_, {picture_.rated.base(), bottom}, {picture_.rated.base(), bottom * 2},
                strokePen(look_.ink, 2));
        label({picture_.rated.base(), bottom}, Qt::AlignBottom | Qt::AlignRight, tr("rated"), look_.ink);
    }

  private:
    static constexpr double bottom = shortest.base(), top = longest.base();

    static QString tr(const char* text) { return QCoreApplication::translate("Plots", text); }
    QString device() const { return style_.words.word(picture_.device); }

    double furthest() const {
        double furthest = leastSpan * picture_.rated.base();
        for (const auto& current : {picture_.load, picture_.start, picture_.fault})
            if (current) furthest = std::max(furthest, 1.1 * current->base());
        return std::min(furthest, 100 * picture_.rated.base());
    }

    void scaleAxes() {
        QCPAxis& current = *axes_.axis(QCPAxis::atBottom);
        QCPAxis& time = *axes_.axis(QCPAxis::atLeft);
        for (QCPAxis* axis : {&current, &time})
            axis->setScaleType(QCPAxis::stLogarithmic);
        current.setRange(low_, high_);
        time.setRange(bottom, top);
        const QSharedPointer<QCPAxisTickerText> currents(new QCPAxisTickerText);
        constexpr int most = 24; // of a range that is narrowed to some decades anyway
        double value = low_;
        for (int i = 0; i < most && value <= high_ * (1 + 1e-9); ++i, value = roundStep(value * 1.01, true))
            currents->addTick(value, style_.words.number(value, -1));
        current.setTicker(currents);
        current.setLabel(tr("current, A"));
        const QSharedPointer<QCPAxisTickerText> times(new QCPAxisTickerText);
        for (const Time tick :
             {seconds(0.1), seconds(1), seconds(10), minutes(1), minutes(10), hours(1), hours(4)})
            times->addTick(tick.base(), spokenTick(tick));
        time.setTicker(times);
    }

    QString spokenTick(Time tick) const {
        const Unit& unit = tick < minutes(1) ? units::second : tick < hours(1) ? units::minute : units::hour;
        return style_.words.measure(measure(tick, unit));
    }

    QCPGraph* drawEdge(const Points& edge, const QPen& pen) {
        if (edge.empty()) return nullptr;
        QVector<double> currents, times;
        // What it holds at its first current it holds below, and what it does at its last it does above.
        for (const TimeCurrent& point : edge) {
            currents << point.current.base();
            times << std::max(point.time.base(), bottom / 10);
        }
        return &addCurve(axes_, currents, times, pen);
    }

    void drawBand(PlotKey& key) {
        const QPen early = strokePen(look_.ink, 1.9, Stroke::Dashed), late = strokePen(look_.ink, 1.9);
        if (!picture_.earliest.empty() && !picture_.latest.empty())
            new HatchedArea(currentAxis(), timeAxis(), between(), Hatch::Rising, look_.inkFaint);
        const QString model = picture_.isModelled ? QStringLiteral("~ ") : QString();
        if (drawEdge(picture_.earliest, early)) key.add(model + tr("earliest %1").arg(device()), early);
        if (drawEdge(picture_.latest, late)) key.add(model + tr("latest %1").arg(device()), late);
    }

    /// The band's outline: up the earliest edge and back along the latest.
    std::vector<QPointF> between() const {
        std::vector<QPointF> outline;
        const auto put = [&](double current, double time) {
            outline.emplace_back(std::clamp(current, low_, high_), std::clamp(time, bottom / 2, top * 2));
        };
        for (const TimeCurrent& point : picture_.earliest)
            put(point.current.base(), point.time.base());
        put(picture_.earliest.back().current.base(), bottom / 2);
        put(picture_.latest.back().current.base(), bottom / 2);
        for (auto point = picture_.latest.rbegin(); point != picture_.latest.rend(); ++point)
            put(point->current.base(), point->time.base());
        put(picture_.latest.front().current.base(), top * 2);
        put(picture_.earliest.front().current.base(), top * 2);
        return outline;
    }

    void drawLimits(PlotKey& key) {
        if (picture_.withstand && picture_.adiabaticUpTo > shortest) {
            const QPen pen = strokePen(look_.fails, 1.4, Stroke::LongDashed);
            const double energy = picture_.withstand->base();
            const double upTo = picture_.adiabaticUpTo.base();
            addLine(axes_, {std::sqrt(energy / upTo), upTo}, {std::sqrt(energy / bottom), bottom}, pen);
            key.add(tr("conductor’s limit"), pen);
        }
        if (picture_.fault) {
            const QPen pen = strokePen(look_.inkSoft, 1.4, Stroke::Dotted);
            const double fault = picture_.fault->base();
            if (isShown(fault)) {
                addLine(axes_, {fault, bottom}, {fault, top}, pen);
                label({fault, top / 3}, Qt::AlignTop | Qt::AlignRight,
                      tr("fault %1").arg(style_.words.measure(measure(*picture_.fault, units::ampere))),
                      look_.inkSoft);
            }
            if (picture_.required)
                addLine(axes_, {low_, picture_.required->base()}, {high_, picture_.required->base()}, pen);
            key.add(picture_.required
                        ? tr("fault, off within %1").arg(spokenTime(*picture_.required, style_.words))
                        : tr("earth fault"),
                    pen);
        }
        if (picture_.start && isShown(picture_.start->base())) {
            const QPen pen = strokePen(look_.accent, 1.6, Stroke::Dashed);
            const double start = picture_.start->base();
            addLine(axes_, {start, bottom}, {start, 1}, pen);
            label({start, 1}, Qt::AlignBottom | Qt::AlignHCenter, tr("start"), look_.accent);
            key.add(tr("start"), pen);
        }
    }

    void drawLoad(PlotKey& key) {
        if (!picture_.load) return;
        const double load = picture_.load->base();
        const double end = std::clamp(picture_.onTime ? picture_.onTime->base() : top, 4 * bottom, top);
        const QPen solid = strokePen(look_.accent, 4);
        addLine(axes_, {load, bottom}, {load, end}, solid);
        addLine(axes_, {load * 0.96, end}, {load * 1.04, end}, strokePen(look_.accent, 2.5));
        if (end < top) addLine(axes_, {load, end}, {load, top}, strokePen(look_.accent, 1.6, Stroke::Dotted));
        if (isShown(load)) labelLoad(load);
        key.addLong(picture_.loadName.empty() ? tr("the load") : text(picture_.loadName), solid);
    }

    /// At the upper end of its line, above the axes: there is nothing there to hide.
    void labelLoad(double load) {
        const QString drawn = style_.words.measure(measure(*picture_.load, units::ampere));
        label({load, top}, Qt::AlignBottom | (load * load > low_ * high_ ? Qt::AlignRight : Qt::AlignLeft),
              picture_.onTime ? tr("%1, on for %2").arg(drawn, spokenTime(*picture_.onTime, style_.words))
                              : drawn,
              look_.accent, true);
    }

    void drawPublished() {
        if (picture_.published.empty()) return;
        QVector<double> currents, times;
        for (const TimeCurrent& point : picture_.published) {
            currents << point.current.base();
            times << point.time.base();
        }
        QCPGraph& points = addCurve(axes_, currents, times, QPen(look_.ink, 1.4));
        points.setLineStyle(QCPGraph::lsNone);
        points.setScatterStyle(
            QCPScatterStyle(QCPScatterStyle::ssSquare, QPen(look_.ink, 1.4), look_.sheet, 5));
    }

    void label(const QPointF& at, Qt::Alignment anchor, const QString& said, const QColor& colour,
               bool strong = false) {
        addLabel(axes_, at, anchor, said, style_, colour, strong);
    }
    bool isShown(double current) const { return current > low_ && current < high_; }
    QCPAxis* currentAxis() { return axes_.axis(QCPAxis::atBottom); }
    QCPAxis* timeAxis() { return axes_.axis(QCPAxis::atLeft); }

    const overload::TimeCurrentPicture& picture_;
    const PlotStyle& style_;
    const Look& look_;
    QCPAxisRect& axes_;
    double low_, high_;
};

} // namespace

void drawTimeCurrent(QCustomPlot& plot, const overload::TimeCurrentPicture& picture, const PlotStyle& style) {
    const bool canBeDrawn =
        isFinite(picture.rated) && picture.rated > amperes(1e-3) && picture.rated < amperes(1e9);
    if (canBeDrawn) TimeCurrentDrawing(plot, picture, style).draw();
}

QString readTimeCurrent(const overload::TimeCurrentPicture& picture, Current current, const Words& words) {
    const auto tr = [](const char* text) { return QCoreApplication::translate("Plots", text); };
    const auto said = [&](const Points& edge, const char* none, const char* within) {
        if (edge.empty() || current < edge.front().current) return tr(none);
        const auto time = timeAt(edge, std::min(current, edge.back().current));
        return tr(within).arg(spokenTime(time.value_or(edge.back().time), words));
    };
    return tr("%1: %2, %3")
        .arg(words.measure(measure(current, units::ampere)),
             said(picture.earliest, QT_TRANSLATE_NOOP("Plots", "holds"),
                  QT_TRANSLATE_NOOP("Plots", "not before %1")),
             said(picture.latest, QT_TRANSLATE_NOOP("Plots", "may never operate"),
                  QT_TRANSLATE_NOOP("Plots", "by %1 at the latest")));
}

} // namespace loopwright
