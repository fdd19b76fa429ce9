// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/time_current.h"

#include <algorithm>
#include <cmath>

namespace loopwright::physics {

namespace {

using Points = std::vector<TimeCurrent>;

/// The first point at or above the current.
Points::const_iterator firstFrom(const Points& points, Current current) {
    return std::ranges::lower_bound(points, current, {}, &TimeCurrent::current);
}

TimeEdge promised(const TimeCurrent& point, Current current) {
    return {point.current == current ? EdgeKind::At : EdgeKind::Within, point.time};
}

TimeEdge earliest(const Points& notBefore, Current current) {
    const auto next = firstFrom(notBefore, current);
    return next == notBefore.end() ? TimeEdge{} : promised(*next, current);
}

TimeEdge latestByPromise(const Points& operatedBy, Current current) {
    const auto next = firstFrom(operatedBy, current);
    if (next != operatedBy.end() && next->current == current) return promised(*next, current);
    return next == operatedBy.begin() ? TimeEdge{} : promised(*std::prev(next), current);
}

/// Straight line between two points on logarithmic scales.
Time interpolated(const TimeCurrent& low, const TimeCurrent& high, Current current) {
    const double share = std::log(current / low.current) / std::log(high.current / low.current);
    return low.time * std::pow(high.time / low.time, share);
}

TimeEdge latestByCurve(const Points& curve, Current current) {
    const auto next = firstFrom(curve, current);
    if (next == curve.end())
        return curve.empty() ? TimeEdge{} : TimeEdge{EdgeKind::Within, curve.back().time};
    if (next->current == current) return {EdgeKind::At, next->time};
    if (next == curve.begin()) return {};
    return {EdgeKind::At, interpolated(*std::prev(next), *next, current)};
}

/// Both hold, so the sooner counts.
TimeEdge sooner(TimeEdge a, TimeEdge b) {
    if (!a.isLimited()) return b;
    if (!b.isLimited()) return a;
    return b.time < a.time ? b : a;
}

} // namespace

TimeBand operatingTime(const DeviceTimes& device, Current current) {
    TimeBand band{earliest(device.notBefore, current),
                  sooner(latestByPromise(device.operatedBy, current), latestByCurve(device.curve, current))};
    return band;
}

} // namespace loopwright::physics
