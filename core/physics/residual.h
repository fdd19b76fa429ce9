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
/// Of two residual current devices in series only the one nearer to the fault operates: the one upstream is
/// of the delayed type, and its rated residual current at least `ratio` times that of the other (IEC
/// 60364-5-53, 535: three times).
bool residualDevicesSelective(Current upstream, bool upstreamIsDelayed, Current downstream, Ratio ratio);

} // namespace loopwright::physics
