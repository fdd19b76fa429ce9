// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/resistivity.h"

/// Heating by a fault so short that no heat leaves the conductor.
namespace loopwright::physics {

using VolumetricHeat = Quantity<Dimension{
    .ampere = 2, .volt = 2, .second = 2, .metre = -2, .squareMillimetre = -2, .kelvin = -2}>; ///< J/(K mm2 m)

using Energy = Quantity<Power::dimension + Time::dimension>; ///< J

/// What k of the adiabatic equation is made of (IEC 60364-5-54, annex A).
struct ConductorConstants {
    VolumetricHeat volumetricHeat;   ///< Q_c at 20 degC
    TemperatureDifference zeroPoint; ///< beta: reciprocal of the resistance coefficient at 0 degC
    Resistivity resistivity;         ///< rho at 20 degC
};

/// J/(K mm3), as annex A prints Q_c.
constexpr VolumetricHeat joulesPerKelvinCubicMillimetre(double v) {
    return VolumetricHeat(v * 1000);
}
/// ohm mm, as annex A prints rho_20.
constexpr Resistivity ohmMillimetres(double v) {
    return Resistivity(v * 1000);
}

/// k = sqrt(Q_c (beta + 20) / rho_20 * ln((beta + theta_f) / (beta + theta_i))) (IEC 60364-5-54, annex A).
AdiabaticFactor adiabaticFactor(const ConductorConstants& constants, Temperature initial, Temperature final);

/// K = sqrt(Q_c (beta + 20) / rho_20): what k of a material is a multiple of (the same annex: 226 for
/// copper).
AdiabaticFactor materialConstant(const ConductorConstants& constants);
/// k = K sqrt(ln((beta + theta_f) / (beta + theta_i))).
AdiabaticFactor adiabaticFactor(AdiabaticFactor materialConstant, TemperatureDifference zeroPoint,
                                Temperature initial, Temperature final);

/// I2t of a steady current.
JouleIntegral jouleIntegral(Current current, Time time);

/// U I t: the energy of a steady current from a source.
Energy sourceEnergy(Voltage voltage, Current current, Time time);
/// I2t R: what of it is left in one resistance.
Energy heatIn(Resistance resistance, JouleIntegral energy);

/// S = sqrt(I2t) / k: the least cross-section (IEC 60364-5-54, 543.1.2).
CrossSection adiabaticSize(JouleIntegral energy, AdiabaticFactor k);

/// k2 S2: the most I2t that a conductor withstands (IEC 60364-4-43, 434.5.2).
JouleIntegral withstand(AdiabaticFactor k, CrossSection size);

/// t = (k S / I)2: how long the conductor withstands a current (IEC 60364-4-43, 434.5.2). Holds up to 5 s.
Time permissibleTime(AdiabaticFactor k, CrossSection size, Current current);

/// I = k S / sqrt(t): the converse, up to 5 s.
Current permissibleCurrent(AdiabaticFactor k, CrossSection size, Time time);

} // namespace loopwright::physics
