// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/thermal.h"

#include <cstdint>
#include <span>

/// A first-order thermal element under currents that change in steps, answered in closed form: no step is cut
/// into pieces and no cycle is run through. A duty is a sequence of steps; a repeating duty starts again when
/// it has ended. Each pass over it takes a state theta to a + b theta with b = exp(-T / tau), T its length,
/// from which everything here follows (solution of tau theta' = theta_inf - theta, IEC 60255-149).
///
/// Durations are not negative, and those of a repeating duty are not all zero.
namespace loopwright::physics {

struct DutyStep {
    Current current;
    Time duration;
};
using Duty = std::span<const DutyStep>;

Time lengthOf(Duty duty);

/// The state at the end of the last step.
Ratio stateAfter(const ThermalElement& element, Ratio start, Duty duty);

/// The largest state on one pass from `start`: within a step the state only rises or only falls, so it is the
/// start or the end of a step.
Ratio peakOver(const ThermalElement& element, Ratio start, Duty duty);

/// The mean state on one pass from `start`: (sum theta_inf t - tau (end - start)) / T, the balance of the
/// heat.
Ratio meanOver(const ThermalElement& element, Ratio start, Duty duty);

/// The state that a repeating duty settles to at the beginning of its cycles: a / (1 - b). A pass from there
/// ends there; its peak and mean are those that the duty has in the long run.
Ratio limitCycleStart(const ThermalElement& element, Duty duty);

/// The state at the beginning of cycle `cycle` of a repeating duty; that of cycle 0 is `start`.
Ratio stateAtCycle(const ThermalElement& element, Ratio start, Duty duty, std::uint64_t cycle);

/// When a repeating duty reaches a state.
struct Reached {
    std::uint64_t cycle = 0; ///< the first is 0
    std::size_t step = 0;    ///< of the duty, the first is 0
    Time inCycle;            ///< since the beginning of that cycle
    Time inAll;              ///< since the beginning
};

/// The first time that the state is at least `threshold`. Nothing where it never is, though it may come as
/// near as one likes. The states at the beginnings of the cycles move one way, towards the limit cycle, so
/// the cycle follows from one logarithm.
std::optional<Reached> firstReached(const ThermalElement& element, Ratio start, Duty duty, Ratio threshold);

} // namespace loopwright::physics
