// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/residual_path.h"
#include "core/checks/worksheet.h"

namespace loopwright {

/// Whether the earth in force is that of an electrode. Where nobody recorded the earthing that is noted as
/// missing.
std::optional<bool> isTt(const BoardContext& context, Worksheet& sheet);

/// The longest time in which a fault in this circuit must be cut off (IEC 60364-4-41, 411.3.2). Shown as a
/// rule. Nothing without a rated current.
std::optional<Time> requiredTime(const CircuitContext& context, std::optional<Current> rated,
                                 Worksheet& sheet);

/// The fault current through the measured loop, I_f = c U_0 / Z_s, with its terms.
std::optional<Figure<Current>> faultCurrent(const CircuitContext& context, Ratio voltageFactor,
                                            Worksheet& sheet);

/// The current of a fault between line and neutral at the circuit's end, I = U_0 / (Z_LN + 2 R_1), with its
/// terms: the board's loop to neutral and the circuit's own line conductors there and back at 20 degC. The
/// magnitudes are added, which errs towards too little current. The neutral is taken to be as large as the
/// line, and where a three-phase circuit has none, what flows between two lines is more than this.
std::optional<Figure<Current>> neutralFaultCurrent(const CircuitContext& context, Worksheet& sheet);

/// Which devices end a fault. Between live conductors no current goes astray, and no residual current device
/// sees it.
enum class EndedBy : std::uint8_t { AnyDevice, OvercurrentDevice };

/// When a fault of this current is cut off.
struct Disconnection {
    physics::TimeEdge latest; ///< of the overcurrent device alone
    Source source;
    std::optional<Sourced<Time>> byResidual; ///< of the residual current device, where one is fitted
};
/// Nothing where the device is not known well enough; that is noted.
std::optional<Disconnection> predictedDisconnection(const CircuitContext& context, Current fault,
                                                    Worksheet& sheet);

/// The largest energy that a fault of this current lets into the conductors until it is cut off: I2t at the
/// latest time, or the device's published let-through where that is less. No energy where an input was
/// missing (noted), or where nothing is sure to cut the fault off.
struct FaultEnergy {
    std::optional<JouleIntegral> energy;
    bool isUnlimited = false;
    Time lasts;          ///< the latest at which the fault is cut off; counts only where there is an energy
    bool atOnce = false; ///< whether a breaker's instantaneous release is sure to act on it
};
FaultEnergy faultEnergy(const CircuitContext& context, Current rated, Current fault, EndedBy endedBy,
                        Worksheet& sheet);

} // namespace loopwright
