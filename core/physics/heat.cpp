// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/heat.h"

#include <cmath>

namespace loopwright::physics {

namespace {

TemperatureDifference above(TemperatureDifference zeroPoint, Temperature temperature) {
    return (temperature - celsius(0)) + zeroPoint;
}

} // namespace

AdiabaticFactor adiabaticFactor(const ConductorConstants& constants, Temperature initial, Temperature final) {
    return adiabaticFactor(materialConstant(constants), constants.zeroPoint, initial, final);
}

AdiabaticFactor materialConstant(const ConductorConstants& constants) {
    return sqrt(constants.volumetricHeat * above(constants.zeroPoint, celsius(20)) / constants.resistivity);
}

AdiabaticFactor adiabaticFactor(AdiabaticFactor materialConstant, TemperatureDifference zeroPoint,
                                Temperature initial, Temperature final) {
    return materialConstant * std::sqrt(std::log(above(zeroPoint, final) / above(zeroPoint, initial)));
}

JouleIntegral jouleIntegral(Current current, Time time) {
    return current * current * time;
}

Energy sourceEnergy(Voltage voltage, Current current, Time time) {
    return voltage * current * time;
}

Energy heatIn(Resistance resistance, JouleIntegral energy) {
    return resistance * energy;
}

CrossSection adiabaticSize(JouleIntegral energy, AdiabaticFactor k) {
    return sqrt(energy) / k;
}

JouleIntegral withstand(AdiabaticFactor k, CrossSection size) {
    return k * k * size * size;
}

Time permissibleTime(AdiabaticFactor k, CrossSection size, Current current) {
    return withstand(k, size) / (current * current);
}

Current permissibleCurrent(AdiabaticFactor k, CrossSection size, Time time) {
    return k * size / sqrt(time);
}

} // namespace loopwright::physics
