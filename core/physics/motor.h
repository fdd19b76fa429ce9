// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <cstdint>

/// Motors: what they draw when they run and when they start. The running current is loadCurrent with the
/// shaft power and the efficiency.
namespace loopwright::physics {

/// Shaft power over electrical input: eta = P / (U_0 I cos phi), three times as much input where the motor
/// takes three phases (IEC 60034-1).
Ratio motorEfficiency(Power shaft, Voltage lineToEarth, Current line, Ratio powerFactor, bool threePhase);

/// The apparent power of what draws `line`: U_0 I, three times that on three phases.
Power apparentPower(Voltage lineToEarth, Current line, bool threePhase);

enum class StarterKind : std::uint8_t {
    Direct,
    StarDelta,
    Autotransformer,
    Soft, ///< limits the current electronically
};

struct Starter {
    StarterKind kind = StarterKind::Direct;
    Ratio setting = 1; ///< of an autotransformer its tap, a share of the voltage; of a soft starter its
                       ///< current limit, times the rated current; of no meaning elsewhere
};

/// The current in the line while a motor starts, from its rated current and the multiple of it that it draws
/// when switched straight on. Star-delta takes a third, an autotransformer the square of its tap, a soft
/// starter what it is set to, never more than direct starting (IEC 60947-4-1). Peaks of the first half cycle
/// and of the change from star to delta are not in it.
Current startingCurrent(Current rated, Ratio directMultiple, const Starter& starter);

} // namespace loopwright::physics
