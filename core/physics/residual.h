// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

/// Protection by a residual current device where the fault returns through the ground.
namespace loopwright::physics {

/// R_A I_delta_n: the voltage that exposed parts may stand at without the device operating (IEC 60364-4-41,
/// 411.5.3).
Voltage touchVoltage(Resistance electrode, Current ratedResidual);

/// R_A <= U_L / I_delta_n (IEC 60364-4-41, 411.5.3).
Resistance largestElectrodeResistance(Voltage touchVoltageLimit, Current ratedResidual);

/// I_delta_n <= U_L / R_A: the converse.
Current largestResidualCurrent(Voltage touchVoltageLimit, Resistance electrode);

} // namespace loopwright::physics
