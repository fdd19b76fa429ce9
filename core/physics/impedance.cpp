// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/impedance.h"

#include "core/physics/loop.h"

#include <cmath>

namespace loopwright::physics {

Resistance magnitude(const Impedance& impedance) {
    return Resistance(std::hypot(impedance.resistance.base(), impedance.reactance.base()));
}

Impedance inSeries(std::span<const Impedance> segments) {
    Impedance sum;
    for (const Impedance& segment : segments)
        sum = sum + segment;
    return sum;
}

Impedance impedanceOf(Resistance magnitude, Ratio resistanceToReactance) {
    const Resistance reactance = magnitude / std::hypot(1, resistanceToReactance);
    return {reactance * resistanceToReactance, reactance};
}

Impedance atTemperature(const Impedance& impedance, Temperature from, Temperature to, double coefficient) {
    return {atTemperature(impedance.resistance, from, to, coefficient), impedance.reactance};
}

} // namespace loopwright::physics
