// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

/// Voltage drop along a circuit.
namespace loopwright::physics {

/// drop = (mV/A/m) I_b l / 1000. The published figure holds go and return (single phase) or sqrt(3) (three
/// phase), so the drop is between line and neutral, or between lines (BS 7671, appendix 4; IEC 60364-5-52,
/// annex G). No correction for a conductor cooler than its limit: the drop errs on the high side.
Voltage voltageDrop(VoltagePerCurrentLength published, Current load, Length length);

/// The figure that a table would publish, from the resistance of one conductor at its operating temperature:
/// times 2, or times sqrt(3) for three phases (IEC 60364-5-52, annex G, reactance left out: up to about 35
/// mm2).
VoltagePerCurrentLength dropFromResistance(ResistancePerLength conductor, bool threePhase);

/// The drop as a share of the nominal voltage it is measured against: U_0, or sqrt(3) U_0 between lines.
Ratio dropShare(Voltage drop, Voltage lineToEarth, bool threePhase);

/// The longest run that keeps within `share` of the nominal voltage.
Length longestRun(VoltagePerCurrentLength published, Current load, Voltage lineToEarth, bool threePhase,
                  Ratio share);

} // namespace loopwright::physics
