// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/selectivity.h"

#include "core/physics/heat.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

/// Where either edge may step: the earliest edge upstream holds up to each of these, the latest edge
/// downstream falls from each of these on.
std::vector<Current> steps(const DeviceTimes& upstream, const DeviceTimes& downstream) {
    std::vector<Current> currents;
    for (const auto* points : {&upstream.notBefore, &downstream.operatedBy, &downstream.curve})
        for (const TimeCurrent& point : *points)
            currents.push_back(point.current);
    std::ranges::sort(currents);
    currents.erase(std::unique(currents.begin(), currents.end()), currents.end());
    return currents;
}

/// The current from which on the curve downstream is below `time`, between two steps.
Current fallsBelow(const DeviceTimes& downstream, Time time, Current from, Current to) {
    const CurrentEdge operates = currentForTime(downstream, time).operates;
    return operates.isLimited() ? std::clamp(operates.current, from, to) : to;
}

} // namespace

Ratio ratioOfRatings(Current upstream, Current downstream) {
    return std::round(10 * (upstream / downstream)) / 10;
}

bool fusesSelectiveByRatio(Current upstream, Current downstream, Ratio ratio) {
    return ratioOfRatings(upstream, downstream) >= ratio;
}

bool selectiveByEnergy(JouleIntegral leastToMeltUpstream, JouleIntegral mostLetThroughDownstream) {
    return mostLetThroughDownstream <= leastToMeltUpstream;
}

bool selectiveInOverload(Current nonOperatingUpstream, Current operatingDownstream) {
    return operatingDownstream <= nonOperatingUpstream;
}

std::vector<CurrentRange> provenSelectivity(const DeviceTimes& upstream, const DeviceTimes& downstream) {
    std::vector<CurrentRange> ranges;
    Current from;
    for (const Current to : steps(upstream, downstream)) {
        // Within one step the earliest edge upstream is level and the latest downstream falls or is level.
        const TimeEdge earliest = operatingTime(upstream, to).earliest;
        if (earliest.isLimited()) {
            const Current begin = fallsBelow(downstream, earliest.time, from, to);
            if (begin < to) {
                if (!ranges.empty() && ranges.back().upTo == begin)
                    ranges.back().upTo = to;
                else
                    ranges.push_back({begin, to});
            }
        }
        from = to;
    }
    return ranges;
}

std::optional<Current> provenUpTo(const DeviceTimes& upstream, const DeviceTimes& downstream, Current reach) {
    // Downstream only grows quicker with the current, so a range ends where a promise upstream does.
    std::optional<Current> last;
    for (const TimeCurrent& promise : upstream.notBefore) {
        if (last && promise.current <= *last) continue;
        const TimeEdge earliest = operatingTime(upstream, promise.current).earliest;
        const CurrentEdge operates = currentForTime(downstream, earliest.time).operates;
        if (earliest.isLimited() && operates.isLimited() &&
            operates.current < std::min(promise.current, reach))
            last = promise.current;
    }
    return last;
}

std::vector<CurrentRange> joined(std::vector<CurrentRange> ranges, const CurrentRange& more) {
    ranges.push_back(more);
    std::ranges::sort(ranges, {}, &CurrentRange::above);
    std::vector<CurrentRange> result;
    for (const CurrentRange& range : ranges) {
        if (result.empty() || result.back().upTo < range.above)
            result.push_back(range);
        else
            result.back().upTo = std::max(result.back().upTo, range.upTo);
    }
    return result;
}

std::optional<Current> fuseWithinEnergy(const DeviceTimes& fuse, JouleIntegral energy) {
    std::optional<Current> from;
    for (const auto* points : {&fuse.operatedBy, &fuse.curve})
        for (const TimeCurrent& point : *points)
            if (jouleIntegral(point.current, point.time) <= energy && (!from || point.current < *from))
                from = point.current;
    return from;
}

} // namespace loopwright::physics
