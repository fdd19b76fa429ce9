// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/duty.h"
#include "core/physics/thermal.h"

#include <array>
#include <cstdint>
#include <limits>
#include <optional>

/// A thermal replica of one or two elements under a duty: closed forms throughout, so that a year of a short
/// duty costs no more than a day of it, and no step is cut into pieces.
///
/// A replica is the sum of one or two first-order branches, theta = w_1 theta_1 + w_2 theta_2, each with
/// tau_i theta_i' = (I / I_ref)2 - theta_i and the weights together 1. Two branches are what an element and
/// the body around it come to: a ladder of two heat capacities and two thermal resistances has at its hot end
/// exactly such a response (IEC 60853-2 writes a cable's so). theta is 1 where it operates.
namespace loopwright::physics {

struct ThermalBranch {
    Ratio weight = 0;
    Time constant; ///< above zero, even where the weight is 0
};

struct ThermalReplica {
    Current reference;                     ///< the largest current that never operates it
    std::array<ThermalBranch, 2> branches; ///< element and body; of a single element the second weighs 0
};

/// A replica of one branch.
constexpr ThermalReplica replicaOf(const ThermalElement& element) {
    return {element.reference, {{{1, element.constant}, {0, element.constant}}}};
}

/// theta of each branch.
using ReplicaState = std::array<Ratio, 2>;

/// The state that a current ends in, for a warm start.
ReplicaState steadyState(const ThermalReplica& replica, Current current);

/// theta: what the branches weigh together.
Ratio thermalState(const ThermalReplica& replica, const ReplicaState& state);

ReplicaState stateAfter(const ThermalReplica& replica, ReplicaState start, Duty duty);

/// The highest theta on the way, the start included.
Ratio peakDuring(const ThermalReplica& replica, ReplicaState start, Duty duty);

/// What a duty that repeats for ever settles into.
struct LimitCycle {
    ReplicaState start{}; ///< at the beginning of each cycle
    Ratio peak = 0;
    Ratio mean = 0;
};

/// Nothing where the duty takes no time.
std::optional<LimitCycle> limitCycle(const ThermalReplica& replica, Duty duty);

inline constexpr std::uint64_t forEver = std::numeric_limits<std::uint64_t>::max();

/// When theta first reaches 1 under a duty that is repeated `cycles` times; nothing where it does not. Cycles
/// are not stepped through: apart from the settled cycle the state is a sum of two exponentials of time,
/// which turns at most once, and between its turns cycles are in order.
std::optional<Reached> firstCrossing(const ThermalReplica& replica, Duty duty, ReplicaState start = {},
                                     std::uint64_t cycles = forEver);

} // namespace loopwright::physics
