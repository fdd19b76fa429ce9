// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/thermal.h"

#include <cmath>

namespace loopwright::physics {

namespace {

double squared(double v) {
    return v * v;
}

} // namespace

Ratio steadyState(const ThermalElement& element, Current current) {
    return squared(current / element.reference);
}

Ratio stateAfter(const ThermalElement& element, Ratio start, Current current, Time time) {
    return start - (steadyState(element, current) - start) * std::expm1(-(time / element.constant));
}

std::optional<Time> operatingTime(const ThermalElement& element, Current current, Ratio start) {
    if (start >= 1) return Time();
    const Ratio end = steadyState(element, current);
    if (!(end > 1)) return std::nullopt;
    return element.constant * std::log1p((1 - start) / (end - 1));
}

Current operatingCurrent(const ThermalElement& element, Time time, Ratio start) {
    const double risen = -std::expm1(-(time / element.constant));
    return element.reference * std::sqrt(start + (1 - start) / risen);
}

Time coolingTime(const ThermalElement& element, Ratio start, Ratio end) {
    return start <= end ? Time() : element.constant * std::log(start / end);
}

std::optional<Time> timeConstantFromStall(Time time, Ratio current, Ratio preload, Ratio reference) {
    if (!(preload < reference && reference < current)) return std::nullopt;
    return time / std::log((squared(current) - squared(preload)) / (squared(current) - squared(reference)));
}

Time timeConstantFromShortTime(Current continuous, Current shortTime, Time time) {
    return time * squared(shortTime / continuous);
}

Temperature conductorTemperature(Temperature ambient, Temperature limit, Current load, Current capacity) {
    return ambient + (limit - ambient) * squared(load / capacity);
}

std::optional<Temperature> conductorTemperature(Temperature ambient, Temperature limit, Current load,
                                                Current capacity, double coefficient) {
    // The rise is rated * (I/I_z)2 * R(end) / R(limit), with R(end) = R(ambient) + slope * rise.
    const double resistanceAtLimit = 1 + coefficient * (limit - celsius(20)).base(),
                 resistanceAtAmbient = 1 + coefficient * (ambient - celsius(20)).base();
    const TemperatureDifference perResistance =
        (limit - ambient) * (squared(load / capacity) / resistanceAtLimit);
    const double feedback = coefficient * perResistance.base();
    if (!(feedback < 1)) return std::nullopt;
    return ambient + perResistance * (resistanceAtAmbient / (1 - feedback));
}

Temperature temperatureAfter(Temperature start, Temperature steady, Time constant, Time time) {
    return start + (start - steady) * std::expm1(-(time / constant));
}

} // namespace loopwright::physics
