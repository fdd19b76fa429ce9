// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/heat.h"

#include <cmath>

namespace loopwright::physics {

AdiabaticFactor adiabaticFactor(const ConductorConstants& constants, Temperature initial, Temperature final) {
    const auto aboveZeroPoint = [&](Temperature t) { return (t - celsius(0)) + constants.zeroPoint; };
    const double rise = std::log(aboveZeroPoint(final) / aboveZeroPoint(initial));
    return sqrt(constants.volumetricHeat * aboveZeroPoint(celsius(20)) / constants.resistivity * rise);
}

JouleIntegral jouleIntegral(Current current, Time time) {
    return current * current * time;
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

} // namespace loopwright::physics
