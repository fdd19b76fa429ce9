// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <span>

/// Resistance and reactance in series, which add as vectors.
namespace loopwright::physics {

struct Impedance {
    Resistance resistance;
    Resistance reactance; ///< inductive where positive
    friend constexpr bool operator==(const Impedance&, const Impedance&) = default;
};

/// The same for each metre of a conductor.
struct ImpedancePerLength {
    ResistancePerLength resistance;
    ResistancePerLength reactance;
};

constexpr Impedance operator+(const Impedance& a, const Impedance& b) {
    return {a.resistance + b.resistance, a.reactance + b.reactance};
}
constexpr Impedance operator*(double factor, const Impedance& z) {
    return {factor * z.resistance, factor * z.reactance};
}
constexpr Impedance operator*(const ImpedancePerLength& z, Length length) {
    return {z.resistance * length, z.reactance * length};
}

/// Z = sqrt(R2 + X2).
Resistance magnitude(const Impedance& impedance);

/// Segments one behind the other: resistances and reactances are summed apart (IEC 60909-0).
Impedance inSeries(std::span<const Impedance> segments);

/// The impedance of this magnitude whose resistance is `resistanceToReactance` times its reactance (IEC
/// 60909-0, 6.2: X = Z / sqrt(1 + (R/X)2)).
Impedance impedanceOf(Resistance magnitude, Ratio resistanceToReactance);

/// Conductors taken from one temperature to another: resistance follows it, reactance does not.
/// `coefficient` is alpha at 20 degC, per kelvin (IEC 60228, annex B).
Impedance atTemperature(const Impedance& impedance, Temperature from, Temperature to, double coefficient);

} // namespace loopwright::physics
