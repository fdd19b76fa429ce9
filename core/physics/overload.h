// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <initializer_list>

/// Overload: what a conductor may carry, and when its device is sure to act.
namespace loopwright::physics {

/// I_z = I_t * C1 * C2 * ... * n: the tabulated capacity times every correction factor times the conductors
/// in parallel a phase (IEC 60364-5-52, 523.1 and 523.7; equal sharing between parallel conductors is
/// assumed).
Current correctedCapacity(Current tabulated, std::initializer_list<Ratio> factors,
                          double parallelConductors = 1);

/// I_2: the current that is sure to operate the device within the conventional time (IEC 60364-4-43, 433.1).
Current conventionalOperatingCurrent(Current rated, Ratio operatingMultiple);

/// I_d = I_n C_a C_g: what a breaker carries for ever in a place that is not the one it was calibrated for,
/// and beside others that are loaded. The factors are its maker's.
Current deratedCurrent(Current rated, Ratio ambientFactor, Ratio groupingFactor);

/// The least tabulated capacity that a conductor must have to be worth `needed` after the factors: the
/// converse of correctedCapacity. No factor may be zero.
Current tabulatedCapacityNeeded(Current needed, std::initializer_list<Ratio> factors,
                                double parallelConductors = 1);

/// 1.45 I_z, or what the rule set has for 1.45: the largest I_2 that protects wiring of this capacity (IEC
/// 60364-4-43, 433.1).
Current largestOperatingCurrent(Current capacity, Ratio conventionalFactor);

/// f of I_n <= f I_z that makes I_2 <= `conventionalFactor` I_z hold for a device whose I_2 is a multiple of
/// I_n: 1.45 / 2 = 0.725 for a rewirable fuse (IEC 60364-4-43, 433.1; BS 7671, 433.1.202).
Ratio conventionalCapacityFactor(Ratio operatingMultiple, Ratio conventionalFactor);

/// By how much a capacity changes with the ambient temperature: the square root of the rise that is left over
/// the rise at the reference (IEC 60287-1-1, 1.4.1.1, heat only from the conductor; the ambient tables of IEC
/// 60364-5-52 are made so). Both temperatures must be below the limit.
Ratio ambientFactor(Temperature limit, Temperature reference, Temperature ambient);

} // namespace loopwright::physics
