// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/impedance.h"

#include <optional>

/// Currents that flow into a fault, and what sets them: the supply's impedance and the run up to the fault.
namespace loopwright::physics {

/// I = c U_0 / Z: with c_max the largest current a device may have to break, with c_min the smallest that
/// must operate it (IEC 60909-0). Z is the impedance of one line up to the fault for a fault of three phases,
/// and that of line and return together for one between line and neutral or line and earth.
Current prospectiveCurrent(Voltage lineToEarth, Ratio voltageFactor, Resistance loop);

/// The three-phase prospective current from the one between line and neutral, where only that was read: twice
/// as much, because the neutral's half of the loop is missing (common practice; safe where line and neutral
/// are alike). Some take sqrt(3), which holds only where the neutral hardly adds to the loop.
Current threePhaseFromLineToNeutral(Current lineToNeutral, Ratio factor = 2);

/// Between two lines of a supply whose three-phase prospective current is known: sqrt(3) / 2 of it (IEC
/// 60909-0, 7.3: I_k2 = c U_n / (2 Z)).
Current lineToLineFromThreePhase(Current threePhase);

/// The prospective current at the end of a run, from that at its beginning: U / (U/I + Z_run) with U = c U_0.
/// Magnitudes are added, which errs towards too little current, by at most 30 % and only where source and
/// run differ wholly in R/X; good for whether a device operates, not for its breaking capacity.
Current faultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor, Resistance run);

/// The same with vectors, where R/X of what lies upstream is known.
Current faultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor,
                               Ratio upstreamResistanceToReactance, const Impedance& run);

/// The most that can flow at the end of a run of which only the resistance is known, behind a source of which
/// only the current is: their impedances are taken to be at right angles, since then they add up to least.
/// For breaking capacity; `run` is that of what is common to every fault, its line conductors.
Current mostFaultCurrentDownstream(Current upstream, Voltage lineToEarth, Ratio voltageFactor,
                                   Resistance run);

/// What stands on a transformer's plate.
struct TransformerPlate {
    Power rated;                ///< apparent power, VA
    Voltage lineToLine;         ///< of the winding that the fault is fed from
    Ratio impedanceVoltage = 0; ///< u_k, of the rated voltage
    std::optional<Power>
        loadLoss; ///< P_kr at rated current; nothing: all of the impedance counts as reactance
};

/// Z = u_k U2 / S; R = P_kr U2 / S2; X = sqrt(Z2 - R2) (IEC 60909-0, 6.3.1). A loss that would need more than
/// the whole impedance leaves no reactance.
Impedance transformerImpedance(const TransformerPlate& plate);

/// K_T = 0.95 c_max / (1 + 0.6 x_T), x_T the reactance of the transformer in units of U2/S (IEC 60909-0,
/// 6.3.3): what its impedance is multiplied by for the largest currents.
Ratio transformerCorrection(const TransformerPlate& plate, Ratio voltageFactorMax);

/// Z = U2 / S of a network of fault level S, seen at the voltage U.
Resistance networkImpedance(Power faultLevel, Voltage lineToLine);

/// Z = c U_n / (sqrt(3) I_k) / t2 of a network whose three-phase fault current I_k at U_n is known, seen
/// through a transformer of ratio t = U_n side / other side (IEC 60909-0, 6.2).
Resistance networkImpedance(Current threePhaseFault, Voltage lineToLine, Ratio voltageFactor,
                            Ratio transformerRatio);

/// U_t = c U_0 Z_protective / Z_s: the voltage between exposed parts and the main earthing terminal while a
/// fault lasts. `protective` is the part of the loop between those two (IEC 60364-4-41, 411.3.2).
Voltage touchVoltageInLoop(Voltage lineToEarth, Ratio voltageFactor, Resistance loop, Resistance protective);

} // namespace loopwright::physics
