// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

/// Currents that flow into a fault.
namespace loopwright::physics {

/// I = c U_0 / Z: with c_max the largest current a device may have to break, with c_min the smallest that
/// must operate it (IEC 60909-0).
Current prospectiveCurrent(Voltage lineToEarth, Ratio voltageFactor, Resistance loop);

/// The three-phase prospective current from the one between line and neutral, where only that was read: twice
/// as much, because the neutral's half of the loop is missing (common practice; safe where line and neutral
/// are alike).
Current threePhaseFromLineToNeutral(Current lineToNeutral);

} // namespace loopwright::physics
