// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/impedance.h"

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

/// The figure from resistance and reactance of one conductor at its operating temperature: 2 or sqrt(3) times
/// r cos phi + x sin phi, the load inductive (IEC 60364-5-52, annex G). A motor's start is the same with its
/// starting current and the power factor of the start.
VoltagePerCurrentLength dropFromImpedance(const ImpedancePerLength& conductor, Ratio powerFactor,
                                          bool threePhase);

/// The drop along one conductor's whole resistance and reactance, and along its return: between line and
/// neutral, or between lines.
Voltage voltageDrop(const Impedance& conductor, Current load, Ratio powerFactor, bool threePhase);

/// The share of its published figure that a ring drops at its mid-point, where both legs carry half of the
/// load over half of the length: a quarter.
constexpr Ratio ringShareOfDrop = 0.25;

/// What a circuit was sized by; C_t needs it.
struct PartialLoad {
    Current load;             ///< I_b
    Current tabulated;        ///< I_t, before any factor; of a ring that of both legs
    Ratio ambientFactor = 1;  ///< C_a
    Ratio groupingFactor = 1; ///< C_g
    Temperature limit;        ///< t_p, largest continuous conductor temperature
    Temperature ambient;      ///< that I_t counts from; 30 degC in air
};

/// C_t = (230 + t_p - (C_a2 C_g2 - I_b2/I_t2)(t_p - ambient)) / (230 + t_p): by how much the resistive part
/// of a published drop is less because the conductor runs cooler than its limit (BS 7671, appendix 4, 6.1;
/// 230 stands there for the zero point of copper and aluminium alike). More than 1 where the load is above
/// I_z.
Ratio partialLoadFactor(const PartialLoad& circuit);

/// The drop as a share of the nominal voltage it is measured against: U_0, or sqrt(3) U_0 between lines.
Ratio dropShare(Voltage drop, Voltage lineToEarth, bool threePhase);

/// The longest run whose drop keeps within `limit`.
Length longestRun(VoltagePerCurrentLength published, Current load, Voltage limit);
/// The longest run that keeps within `share` of the nominal voltage.
Length longestRun(VoltagePerCurrentLength published, Current load, Voltage lineToEarth, bool threePhase,
                  Ratio share);

} // namespace loopwright::physics
