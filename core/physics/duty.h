// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <cstddef>
#include <cstdint>
#include <span>

/// Currents that change in steps. A duty is a sequence of steps; a repeating duty starts again when it has
/// ended. What it does to a thermal element, or to two, is thermal_replica.h's business.
///
/// Durations are not negative, and those of a repeating duty are not all zero.
namespace loopwright::physics {

struct DutyStep {
    Current current;
    Time duration;
};
using Duty = std::span<const DutyStep>;

Time lengthOf(Duty duty);

/// When a repeating duty reaches a state.
struct Reached {
    std::uint64_t cycle = 0; ///< the first is 0
    std::size_t step = 0;    ///< of the duty, the first is 0
    Time inCycle;            ///< since the beginning of that cycle
    Time inAll;              ///< since the beginning
};

} // namespace loopwright::physics
