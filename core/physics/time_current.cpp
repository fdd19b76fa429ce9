// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/time_current.h"

#include "core/physics/heat.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

using Points = std::vector<TimeCurrent>;

TimeEdge promised(const TimeCurrent& point, Current current) {
    return {point.current == current ? EdgeKind::At : EdgeKind::Within, point.time};
}

/// The longest of what it must hold out, at this current or a higher one.
TimeEdge earliest(const Points& notBefore, Current current) {
    TimeEdge edge;
    for (const TimeCurrent& point : notBefore)
        if (current <= point.current && (!edge.isLimited() || edge.time < point.time))
            edge = promised(point, current);
    return edge;
}

/// The shortest of what it has to operate in, at this current or a lower one.
TimeEdge latestByPromise(const Points& operatedBy, Current current) {
    TimeEdge edge;
    for (const TimeCurrent& point : operatedBy)
        if (point.current <= current && (!edge.isLimited() || point.time < edge.time))
            edge = promised(point, current);
    return edge;
}

/// Straight line between two points on logarithmic scales.
Time interpolated(const TimeCurrent& low, const TimeCurrent& high, Current current) {
    const double share = std::log(current / low.current) / std::log(high.current / low.current);
    return low.time * std::pow(high.time / low.time, share);
}

TimeEdge latestByCurve(const Points& curve, Current current) {
    const auto next = std::ranges::lower_bound(curve, current, {}, &TimeCurrent::current);
    if (next == curve.end())
        return curve.empty() ? TimeEdge{} : TimeEdge{EdgeKind::Within, curve.back().time};
    if (next->current == current) return {EdgeKind::At, next->time};
    if (next == curve.begin()) return {};
    return {EdgeKind::At, interpolated(*std::prev(next), *next, current)};
}

CurrentEdge promisedFor(const TimeCurrent& point, Time time) {
    return {point.time == time ? EdgeKind::At : EdgeKind::Within, point.current};
}

CurrentEdge holdsByPromise(const Points& notBefore, Time time) {
    CurrentEdge edge;
    for (const TimeCurrent& point : notBefore)
        if (time <= point.time && (!edge.isLimited() || edge.current < point.current))
            edge = promisedFor(point, time);
    return edge;
}

CurrentEdge operatesByPromise(const Points& operatedBy, Time time) {
    CurrentEdge edge;
    for (const TimeCurrent& point : operatedBy)
        if (point.time <= time && (!edge.isLimited() || point.current < edge.current))
            edge = promisedFor(point, time);
    return edge;
}

CurrentEdge operatesByCurve(const Points& curve, Time time) {
    const auto next =
        std::ranges::find_if(curve, [&](const TimeCurrent& point) { return point.time <= time; });
    if (next == curve.end()) return {};
    if (next == curve.begin() || next->time == time) return promisedFor(*next, time);
    const TimeCurrent& low = *std::prev(next);
    const double share = std::log(time / low.time) / std::log(next->time / low.time);
    return {EdgeKind::At, low.current * std::pow(next->current / low.current, share)};
}

/// Both hold, so the smaller counts.
CurrentEdge smaller(CurrentEdge a, CurrentEdge b) {
    if (!a.isLimited()) return b;
    if (!b.isLimited()) return a;
    return b.current < a.current ? b : a;
}

/// Both hold, so the sooner counts.
TimeEdge sooner(TimeEdge a, TimeEdge b) {
    if (!a.isLimited()) return b;
    if (!b.isLimited()) return a;
    return b.time < a.time ? b : a;
}

} // namespace

TimeBand operatingTime(const DeviceTimes& device, Current current) {
    return {earliest(device.notBefore, current),
            sooner(latestByPromise(device.operatedBy, current), latestByCurve(device.curve, current))};
}

CurrentBand currentForTime(const DeviceTimes& device, Time time) {
    return {holdsByPromise(device.notBefore, time),
            smaller(operatesByPromise(device.operatedBy, time), operatesByCurve(device.curve, time))};
}

std::optional<JouleIntegral> largestFuseEnergy(const DeviceTimes& device, Current current) {
    const TimeEdge latest = operatingTime(device, current).latest;
    if (!latest.isLimited()) return std::nullopt;
    JouleIntegral least = jouleIntegral(current, latest.time);
    for (const Points* points : {&device.operatedBy, &device.curve})
        for (const TimeCurrent& point : *points)
            if (point.current <= current) least = std::min(least, jouleIntegral(point.current, point.time));
    return least;
}

} // namespace loopwright::physics
