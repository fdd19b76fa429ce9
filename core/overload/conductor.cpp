// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/conductor.h"

#include "core/physics/thermal_replica.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <limits>

namespace loopwright::overload {

namespace {

constexpr double gasConstant = 8.314462618; // J/(mol K), exact in the SI since 2019
constexpr double celsiusToKelvin = 273.15;

/// What a cycle that repeats for ever settles into.
struct Settled {
    Ratio start = 0;
    Ratio peak = 0;
    Ratio mean = 0;
};

/// One cycle from `start` on.
struct Round {
    Ratio end;
    double slope = 1;
    Ratio peak;
    double heated = 0; ///< what the rise of the resistance adds to the integral of theta, s
};
Round roundFrom(Ratio start, const Heating& heating, physics::Duty cycle) {
    Round round{start, 1, start};
    for (const physics::DutyStep& step : cycle) {
        const Heating::Moment moment = heating.after(round.end, step.current, step.duration);
        round.end = moment.state;
        round.slope *= moment.slope;
        round.peak = std::max(round.peak, moment.state);
        round.heated += heating.feedback() * heating.square(step.current) * moment.excess;
    }
    return round;
}

/// The start that a cycle returns to. What a round ends in is convex in its start and rises, so that Newton's
/// steps from below come to the first such start and never pass it; where there is none heating outruns
/// cooling, and figures end at the highest.
Ratio settledStart(Ratio below, const Heating& heating, physics::Duty cycle) {
    constexpr int mostSteps = 64;
    constexpr double same = 1e-12;
    Ratio start = below;
    for (int i = 0; i < mostSteps; ++i) {
        const Round round = roundFrom(start, heating, cycle);
        const double missing = round.end - start;
        if (missing <= same * start) return start;
        if (!(round.slope < 1)) return heating.highest();
        start += missing / (1 - round.slope);
        if (!(start < heating.highest())) return heating.highest();
    }
    return start;
}

Settled settledUnder(const Heating& heating, Current capacity, physics::Duty cycle) {
    const auto plain = physics::limitCycle(physics::replicaOf({capacity, heating.constant()}), cycle);
    if (!plain) return {};
    Settled settled{plain->start[0], plain->peak, plain->mean};
    if (heating.feedback() == 0 || settled.peak <= 1) return settled;
    settled.start = settledStart(std::min(settled.start, heating.highest()), heating, cycle);
    const Round round = roundFrom(settled.start, heating, cycle);
    settled.peak = round.peak;
    settled.mean = std::min(settled.mean + round.heated / physics::lengthOf(cycle).base(), settled.peak);
    return settled;
}

/// What nothing keeps up with: the state stays where the mean of the squares would end.
Ratio stateOfMean(const Heating& heating, Current capacity, physics::Duty cycle) {
    double sum = 0;
    for (const physics::DutyStep& step : cycle)
        sum += heating.square(step.current) * step.duration.base();
    const double square = sum / physics::lengthOf(cycle).base();
    const physics::DutyStep steady = steadyStep(capacity * std::sqrt(square));
    return square > 1 ? settledUnder(heating, capacity, std::span(&steady, 1)).mean : square;
}

/// By the least and the most that the activation energy may be.
using Ageings = std::array<Ratio, 2>;

Ageings ageingAt(const Conductor& conductor, Ratio state) {
    const Temperature there = temperatureOf(conductor, state);
    return {relativeAgeing(conductor.life.least, conductor.limit, there),
            relativeAgeing(conductor.life.most, conductor.limit, there)};
}

/// Integrates the speed of ageing by Simpson's rule over stretches of a step, each twice as long as the one
/// before it: the state moves fastest at first. Many time constants later it moves no more.
class AgeingSum {
  public:
    AgeingSum(const Conductor& conductor, const Heating& heating)
      : conductor_(conductor)
      , heating_(heating) {}

    void take(Ratio start, const physics::DutyStep& step) {
        constexpr double firstStretch = 0.125, constantsToSettle = 40;
        const double slowed = 1 - heating_.feedback() * heating_.square(step.current);
        const Time unit = heating_.constant() / std::clamp(slowed, 1 / constantsToSettle, 1.0);
        const Time moves = std::min(step.duration, unit * constantsToSettle);
        Time from, to = unit * firstStretch;
        for (; from < moves; from = to, to = to * 2) {
            to = std::min(to, moves);
            stretch(start, step.current, from, to);
        }
        const Ratio end = heating_.stateAfter(start, step.current, moves);
        add(ageingAt(conductor_, end), (step.duration - moves).base());
    }
    Ageings over(Time length) const { return {sums_[0] / length.base(), sums_[1] / length.base()}; }

  private:
    void stretch(Ratio start, Current current, Time from, Time to) {
        constexpr int parts = 6;
        const Time part = (to - from) / parts;
        for (int i = 0; i <= parts; ++i) {
            const double weight = i == 0 || i == parts ? 1 : i % 2 == 1 ? 4 : 2;
            const Ratio there = heating_.stateAfter(start, current, from + part * i);
            add(ageingAt(conductor_, there), weight * part.base() / 3);
        }
    }
    void add(const Ageings& ageings, double time) {
        for (std::size_t i = 0; i < sums_.size(); ++i)
            sums_[i] += ageings[i] * time;
    }

    const Conductor& conductor_;
    const Heating& heating_;
    Ageings sums_{};
};

/// The mean of the speed of ageing over the settled cycle.
Ageings ageingOver(const Conductor& conductor, Time constant, const Steps& cycle) {
    const Heating heating(conductor, constant);
    AgeingSum sum(conductor, heating);
    Ratio state = settledUnder(heating, conductor.capacity, cycle).start;
    for (const physics::DutyStep& step : cycle) {
        sum.take(state, step);
        state = heating.stateAfter(state, step.current, step.duration);
    }
    return sum.over(physics::lengthOf(cycle));
}

/// (1 - exp(-x)) / x
double relaxed(double x) {
    return x == 0 ? 1 : -std::expm1(-x) / x;
}

} // namespace

Temperature temperatureOf(const Conductor& conductor, Ratio state) {
    return conductor.ambient + (conductor.limit - conductor.ambient) * state;
}

Heating::Heating(const Conductor& conductor, Time constant)
  : capacity_(conductor.capacity)
  , constant_(constant) {
    constexpr Temperature highest = celsius(1000); // copper melts at 1085 degC
    const double rise = (conductor.limit - conductor.ambient).base();
    const double atLimit = 1 + conductor.coefficient * (conductor.limit - celsius(20)).base();
    feedback_ = conductor.coefficient * rise / atLimit;
    highest_ = (highest - conductor.ambient).base() / rise;
}

Ratio Heating::square(Current current) const {
    const double share = current / capacity_;
    return share * share;
}

Heating::Moment Heating::after(Ratio start, Current current, Time time) const {
    const double ends = square(current), tau = constant_.base();
    double left = time.base();
    const auto plainly = [&](Ratio from) {
        const double decay = std::exp(-left / tau);
        return Moment{ends + (from - ends) * decay, decay, 0};
    };
    if (feedback_ == 0 || (start <= 1 && ends <= 1)) return plainly(start);
    double slope = 1;
    if (start < 1) {
        const double toLimit = tau * std::log1p((1 - start) / (ends - 1));
        if (toLimit >= left) return plainly(start);
        left -= toLimit;
        slope = std::exp(-toLimit / tau);
        start = 1;
    }
    // Above the limit, with y = theta - 1: tau y' = drive - holds y.
    const double drive = ends - 1, holds = 1 - feedback_ * ends, above = start - 1;
    const bool fallsBelow = drive < 0 && tau / holds * std::log1p(-holds * above / drive) < left;
    const double hot = fallsBelow ? tau / holds * std::log1p(-holds * above / drive) : left;
    const double moves = (drive - holds * above) * hot / tau;
    const double end = moves == 0 ? above : above + moves * relaxed(holds * hot / tau);
    constexpr double level = 1e-9;
    Moment moment;
    moment.excess =
        std::abs(holds) > level ? (drive * hot - tau * (end - above)) / holds : (above + end) / 2 * hot;
    moment.slope = slope * std::exp(-holds * hot / tau);
    if (!(end < highest_ - 1)) return {highest_, moment.slope, (highest_ - 1) * hot};
    moment.state = 1 + end;
    if (!fallsBelow) return moment;
    left -= hot;
    const Moment cooled = plainly(1);
    return {cooled.state, moment.slope * cooled.slope, moment.excess};
}

Time timeConstant(double heat, TemperatureDifference rise, Current capacity, ResistancePerLength resistance) {
    const double watts = capacity.base() * capacity.base() * resistance.base(); // a metre
    return seconds(heat * rise.base() / watts);
}

Ratio relativeAgeing(double energy, Temperature reference, Temperature temperature) {
    return std::exp(energy / gasConstant *
                    (1 / (reference.base() + celsiusToKelvin) - 1 / (temperature.base() + celsiusToKelvin)));
}

Warmth warmthUnder(const Conductor& conductor, physics::Duty cycle) {
    const auto settled = [&](Time constant) {
        return settledUnder(Heating(conductor, constant), conductor.capacity, cycle);
    };
    const Settled quick = settled(conductor.quick);
    const Ratio leastPeak = conductor.slow
                                ? settled(*conductor.slow).peak
                                : std::min(quick.mean, stateOfMean(Heating(conductor, conductor.quick),
                                                                   conductor.capacity, cycle));
    return {temperatureOf(conductor, quick.peak), temperatureOf(conductor, leastPeak),
            temperatureOf(conductor, quick.mean)};
}

Temperature warmestWithin(const Conductor& conductor, Time constant, physics::Duty cycle, Time within) {
    constexpr double mostCycles = 64; // of more the settled cycle is the bound
    const Heating heating(conductor, constant);
    if (within > physics::lengthOf(cycle) * mostCycles)
        return temperatureOf(conductor, settledUnder(heating, conductor.capacity, cycle).peak);
    Ratio state = 0, warmest = 0;
    for (Time left = within; left > Time();)
        for (const physics::DutyStep& step : cycle) {
            const Time length = std::min(step.duration, left);
            state = heating.stateAfter(state, step.current, length);
            warmest = std::max(warmest, state);
            left = left - length;
        }
    return temperatureOf(conductor, warmest);
}

ConductorHeat heatUnder(const Conductor& conductor, const Steps& cycle) {
    ConductorHeat heat{warmthUnder(conductor, cycle), std::numeric_limits<double>::infinity(), 0};
    const auto take = [&](const Ageings& ageings) {
        for (const Ratio ageing : ageings) {
            heat.leastAgeing = std::min(heat.leastAgeing, ageing);
            heat.mostAgeing = std::max(heat.mostAgeing, ageing);
        }
    };
    take(ageingOver(conductor, conductor.quick, cycle));
    if (conductor.slow)
        take(ageingOver(conductor, *conductor.slow, cycle));
    else
        take(
            ageingAt(conductor, stateOfMean(Heating(conductor, conductor.quick), conductor.capacity, cycle)));
    return heat;
}

} // namespace loopwright::overload
