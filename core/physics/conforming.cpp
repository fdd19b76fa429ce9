// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/conforming.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace loopwright::physics {

namespace {

using Shape = std::array<ThermalBranch, 2>;

/// The share of its steady state that a cold device has reached `time` after a step.
double risen(const Shape& shape, Time time) {
    double share = 0;
    for (const ThermalBranch& branch : shape)
        share -= branch.weight * std::expm1(-(time / branch.constant));
    return share;
}

/// Between which reference currents a device of this shape meets every limit.
struct References {
    Current least;
    Current most{std::numeric_limits<double>::infinity()};
};

References references(const ThermalLimits& limits, const Shape& shape) {
    References range;
    for (const TimeCurrent& test : limits.notBefore)
        range.least = std::max(range.least, test.current * std::sqrt(risen(shape, test.time)));
    for (const TimeCurrent& test : limits.operatedBy)
        range.most = std::min(range.most, test.current * std::sqrt(risen(shape, test.time)));
    if (limits.warm) {
        const double before = limits.warm->before.base(), after = limits.warm->operatedBy.current.base();
        const double share = risen(shape, limits.warm->operatedBy.time);
        range.most = std::min(
            range.most, Current(std::sqrt(before * before + (after * after - before * before) * share)));
    }
    return range;
}

/// Keeps a replica on the permitted side of a limit that it would meet exactly but for rounding.
constexpr double hair = 1e-9;

std::vector<double> logarithmicSteps(double from, double to, int count) {
    std::vector<double> steps;
    for (int i = 0; i < count; ++i)
        steps.push_back(from * std::pow(to / from, static_cast<double>(i) / (count - 1)));
    return steps;
}

std::vector<Shape> oneElement(double quickest, double slowest) {
    constexpr int constants = 193;
    std::vector<Shape> shapes;
    for (const double constant : logarithmicSteps(quickest, slowest, constants))
        shapes.push_back({{{1, seconds(constant)}, {0, seconds(constant)}}});
    return shapes;
}

std::vector<Shape> twoElements(double quickest, double slowest) {
    constexpr int constants = 33, weights = 25;
    const std::vector<double> steps = logarithmicSteps(quickest, slowest, constants);
    std::vector<Shape> shapes;
    for (std::size_t element = 0; element < steps.size(); ++element)
        for (std::size_t body = element + 1; body < steps.size(); ++body)
            for (const double weight : logarithmicSteps(0.002, 1, weights))
                shapes.push_back({{{weight, seconds(steps[element])}, {1 - weight, seconds(steps[body])}}});
    return shapes;
}

/// From shorter than the shortest test to as long as the longest: outside lies nothing that a test tells from
/// what lies inside.
std::vector<Shape> shapesFor(const ThermalLimits& limits, Elements elements) {
    double shortest = std::numeric_limits<double>::infinity(), longest = 0;
    const auto widen = [&](Time time) {
        shortest = std::min(shortest, time.base());
        longest = std::max(longest, time.base());
    };
    for (const auto* list : {&limits.notBefore, &limits.operatedBy})
        for (const TimeCurrent& test : *list)
            widen(test.time);
    if (limits.warm) widen(limits.warm->operatedBy.time);
    if (!(longest > 0)) return {};
    return elements == Elements::One ? oneElement(shortest / 10, longest)
                                     : twoElements(shortest / 10, longest);
}

/// Currents that come in equal pulses, the last of which ends now.
struct Pulses {
    double on;         ///< seconds
    double periodToOn; ///< how much longer than a pulse it takes until the next begins
    double count;
};

/// What a cold device has reached of its steady state at the end of the last pulse.
double risen(const Shape& shape, const Pulses& pulses) {
    double share = 0;
    for (const ThermalBranch& branch : shape) {
        const double on = pulses.on / branch.constant.base(), period = on * pulses.periodToOn;
        share -= branch.weight * std::expm1(-on) * std::expm1(-period * pulses.count) / std::expm1(-period);
    }
    return share;
}

/// One pulse of every length, and a few, some and many of them with short and with long rests.
std::vector<Pulses> loads() {
    constexpr int single = 24, repeated = 11;
    std::vector<Pulses> loads;
    for (const double on : logarithmicSteps(1e-2, 1e5, single))
        loads.push_back({on, 1, 1});
    for (const double on : logarithmicSteps(0.1, 1e4, repeated))
        for (const double periodToOn : {1.3, 2.0, 4.0, 12.0})
            for (const double count : {2.0, 6.0, 1000.0})
                loads.push_back({on, periodToOn, count});
    return loads;
}

/// Those that lead the others under one of the loads: by response, largest first or smallest first.
template <class Leads>
std::vector<ThermalReplica> leading(const std::vector<ThermalReplica>& replicas, Leads leads) {
    std::set<std::size_t> kept;
    if (replicas.empty()) return {};
    for (const Pulses& pulses : loads()) {
        const auto response = [&](const ThermalReplica& replica) {
            const double reference = replica.reference.base();
            return risen(replica.branches, pulses) / (reference * reference);
        };
        kept.insert(
            static_cast<std::size_t>(std::ranges::max_element(replicas, leads, response) - replicas.begin()));
    }
    std::vector<ThermalReplica> result;
    for (const std::size_t index : kept)
        result.push_back(replicas[index]);
    return result;
}

/// The sooner of two edges is the one that operates, and of two that do the one that does so first.
bool isSooner(const OperationEdge& a, const OperationEdge& b) {
    if (a.operation != Operation::Operates || b.operation != Operation::Operates)
        return a.operation == Operation::Operates && b.operation != Operation::Operates;
    return a.reached.inAll < b.reached.inAll;
}

OperationEdge edgeOf(const ThermalReplica& replica, Duty duty, Current preload, std::uint64_t cycles) {
    const auto crossing = firstCrossing(replica, duty, steadyState(replica, preload), cycles);
    return crossing ? OperationEdge{Operation::Operates, *crossing} : OperationEdge{Operation::Never, {}};
}

} // namespace

ReplicaSet conformingReplicas(const ThermalLimits& limits, Elements elements) {
    std::vector<ThermalReplica> early, late;
    for (const Shape& shape : shapesFor(limits, elements)) {
        const References range = references(limits, shape);
        if (range.least > range.most) continue;
        if (range.least > Current()) early.push_back({range.least * (1 + hair), shape});
        if (isFinite(range.most)) late.push_back({range.most * (1 - hair), shape});
    }
    return {leading(early, std::less<>{}), leading(late, std::greater<>{})};
}

OperationBand operationOf(const ReplicaSet& set, Duty duty, Current preload, std::uint64_t cycles) {
    OperationBand band;
    for (const ThermalReplica& replica : set.early) {
        const OperationEdge edge = edgeOf(replica, duty, preload, cycles);
        if (band.earliest.operation == Operation::Unknown || isSooner(edge, band.earliest))
            band.earliest = edge;
    }
    for (const ThermalReplica& replica : set.late) {
        const OperationEdge edge = edgeOf(replica, duty, preload, cycles);
        if (band.latest.operation == Operation::Unknown || isSooner(band.latest, edge)) band.latest = edge;
    }
    return band;
}

} // namespace loopwright::physics
