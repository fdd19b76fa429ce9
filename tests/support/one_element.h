// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/thermal_replica.h"

#include <algorithm>
#include <cmath>

/// A thermal element by itself under a repeating duty, in the terms of a replica with one branch.
namespace loopwright::test {

using namespace physics;

inline Ratio stateAfter(const ThermalElement& element, Ratio start, Duty duty) {
    return physics::stateAfter(replicaOf(element), {start, start}, duty)[0];
}
inline Ratio stateAtCycle(const ThermalElement& element, Ratio start, Duty duty, std::uint64_t cycle) {
    for (; cycle > 0; --cycle)
        start = stateAfter(element, start, duty);
    return start;
}
inline Ratio peakOver(const ThermalElement& element, Ratio start, Duty duty) {
    return peakDuring(replicaOf(element), {start, start}, duty);
}
inline LimitCycle settled(const ThermalElement& element, Duty duty) {
    return limitCycle(replicaOf(element), duty).value();
}
/// The first time that the state is at least `threshold`: of an element whose reference current is that much
/// larger, the first time that it operates.
inline std::optional<Reached> firstReached(const ThermalElement& element, Ratio start, Duty duty,
                                           Ratio threshold) {
    const ThermalElement larger{element.reference * std::sqrt(threshold), element.constant};
    return firstCrossing(replicaOf(larger), duty, {start / threshold, start / threshold});
}

} // namespace loopwright::test
