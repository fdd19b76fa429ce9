// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/duty.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

/// The least state at the beginning of a pass from which it reaches `threshold`: the end of each step is
/// a + b start.
Ratio leastStartReaching(const ThermalElement& element, Duty duty, Ratio threshold) {
    Ratio least = threshold, fromCold = 0;
    Time since;
    for (const DutyStep& step : duty) {
        fromCold = stateAfter(element, fromCold, step.current, step.duration);
        since += step.duration;
        const double left = std::exp(-(since / element.constant));
        const Ratio lacking = threshold - fromCold;
        if (lacking <= 0) return std::min(least, 0.0);
        least = std::min(least, lacking / left);
    }
    return least;
}

/// Where one pass from `start`, which lies below the threshold, first reaches it.
std::optional<Reached> reachedOnPass(const ThermalElement& element, Ratio start, Duty duty, Ratio threshold) {
    Time since;
    for (std::size_t i = 0; i < duty.size(); ++i) {
        const Ratio end = steadyState(element, duty[i].current);
        const Ratio next = stateAfter(element, start, duty[i].current, duty[i].duration);
        if (next >= threshold && end > threshold) {
            const Time within = element.constant * std::log1p((threshold - start) / (end - threshold));
            const Time at = since + std::min(within, duty[i].duration);
            return Reached{0, i, at, at};
        }
        since += duty[i].duration;
        if (next >= threshold) return Reached{0, i, since, since};
        start = next;
    }
    return std::nullopt;
}

/// The first cycle that begins at `needed` or above, on the way from `start` up to `limit`.
std::uint64_t cycleBeginningAt(const ThermalElement& element, Duty duty, Ratio start, Ratio limit,
                               Ratio needed) {
    const double cycles = element.constant / lengthOf(duty) * std::log((limit - start) / (limit - needed));
    constexpr double most = 9e18; // what the count can hold
    return static_cast<std::uint64_t>(std::clamp(std::ceil(cycles), 0.0, most));
}

} // namespace

Time lengthOf(Duty duty) {
    Time length;
    for (const DutyStep& step : duty)
        length += step.duration;
    return length;
}

Ratio stateAfter(const ThermalElement& element, Ratio start, Duty duty) {
    for (const DutyStep& step : duty)
        start = stateAfter(element, start, step.current, step.duration);
    return start;
}

Ratio peakOver(const ThermalElement& element, Ratio start, Duty duty) {
    Ratio peak = start;
    for (const DutyStep& step : duty) {
        start = stateAfter(element, start, step.current, step.duration);
        peak = std::max(peak, start);
    }
    return peak;
}

Ratio meanOver(const ThermalElement& element, Ratio start, Duty duty) {
    const Time length = lengthOf(duty);
    Ratio mean = -(stateAfter(element, start, duty) - start) * (element.constant / length);
    for (const DutyStep& step : duty)
        mean += steadyState(element, step.current) * (step.duration / length);
    return mean;
}

Ratio limitCycleStart(const ThermalElement& element, Duty duty) {
    return stateAfter(element, 0, duty) / -std::expm1(-(lengthOf(duty) / element.constant));
}

Ratio stateAtCycle(const ThermalElement& element, Ratio start, Duty duty, std::uint64_t cycle) {
    const double lengths = static_cast<double>(cycle) * (lengthOf(duty) / element.constant);
    return start - (limitCycleStart(element, duty) - start) * std::expm1(-lengths);
}

std::optional<Reached> firstReached(const ThermalElement& element, Ratio start, Duty duty, Ratio threshold) {
    if (start >= threshold) return Reached{};
    if (auto first = reachedOnPass(element, start, duty, threshold)) return first;
    const Ratio limit = limitCycleStart(element, duty);
    const Ratio needed = leastStartReaching(element, duty, threshold);
    if (start >= limit || needed >= limit) return std::nullopt;
    // The logarithm may round to either side of a whole number of cycles.
    const std::uint64_t about = cycleBeginningAt(element, duty, start, limit, needed);
    for (std::uint64_t cycle = about > 1 ? about - 1 : 1; cycle <= about + 1; ++cycle)
        if (auto reached =
                reachedOnPass(element, stateAtCycle(element, start, duty, cycle), duty, threshold)) {
            reached->cycle = cycle;
            reached->inAll = static_cast<double>(cycle) * lengthOf(duty) + reached->inCycle;
            return reached;
        }
    return std::nullopt;
}

} // namespace loopwright::physics
