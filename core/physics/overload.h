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

/// The least tabulated capacity that a conductor must have to be worth `needed` after the factors: the
/// converse of correctedCapacity. No factor may be zero.
Current tabulatedCapacityNeeded(Current needed, std::initializer_list<Ratio> factors,
                                double parallelConductors = 1);

} // namespace loopwright::physics
