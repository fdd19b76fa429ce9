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

Temperature at(const Conductor& conductor, Ratio state) {
    return conductor.ambient + (conductor.limit - conductor.ambient) * state;
}

/// The mean of the speed of ageing over the settled cycle, by Simpson's rule on each step.
Ratio ageingOver(const Conductor& conductor, Time constant, const Steps& cycle, double energy) {
    constexpr int parts = 16;
    const physics::ThermalElement element{conductor.capacity, constant};
    const auto settled = physics::limitCycle(physics::replicaOf(element), cycle);
    if (!settled) return 0;
    Ratio state = settled->start[0], sum = 0;
    for (const physics::DutyStep& step : cycle) {
        Ratio mean = 0;
        for (int i = 0; i <= parts; ++i) {
            const double weight = i == 0 || i == parts ? 1 : i % 2 == 1 ? 4 : 2;
            const Ratio there = physics::stateAfter(element, state, step.current, step.duration * i / parts);
            mean += weight * relativeAgeing(energy, conductor.limit, at(conductor, there)) / (3.0 * parts);
        }
        sum += mean * step.duration.base();
        state = physics::stateAfter(element, state, step.current, step.duration);
    }
    return sum / physics::lengthOf(cycle).base();
}

/// If nothing keeps up with the cycle, the state stays at its mean.
Ratio ageingAtMean(const Conductor& conductor, Temperature mean, double energy) {
    return relativeAgeing(energy, conductor.limit, mean);
}

} // namespace

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
        return physics::limitCycle(physics::replicaOf({conductor.capacity, constant}), cycle)
            .value_or(physics::LimitCycle{});
    };
    const physics::LimitCycle quick = settled(conductor.quick);
    const Temperature mean = at(conductor, quick.mean);
    return {at(conductor, quick.peak), conductor.slow ? at(conductor, settled(*conductor.slow).peak) : mean,
            mean};
}

ConductorHeat heatUnder(const Conductor& conductor, const Steps& cycle) {
    ConductorHeat heat{warmthUnder(conductor, cycle), std::numeric_limits<double>::infinity(), 0};
    for (const double energy : {conductor.life.least, conductor.life.most})
        for (const Ratio ageing : {ageingOver(conductor, conductor.quick, cycle, energy),
                                   conductor.slow ? ageingOver(conductor, *conductor.slow, cycle, energy)
                                                  : ageingAtMean(conductor, heat.mean, energy)}) {
            heat.leastAgeing = std::min(heat.leastAgeing, ageing);
            heat.mostAgeing = std::max(heat.mostAgeing, ageing);
        }
    return heat;
}

} // namespace loopwright::overload
