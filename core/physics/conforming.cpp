// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/conforming.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace loopwright::physics {

namespace {

/// What devices of each time constant of a grid have risen to, as shares of their steady states.
using Rises = std::vector<double>;

/// Time constants that shapes are made of, in seconds.
using Constants = std::vector<double>;

/// The response of one element, or of two that weigh 1 together.
struct Shape {
    double weight = 1;
    std::size_t element = 0, body = 0; ///< of the grid

    double risen(const Rises& rises) const { return weight * rises[element] + (1 - weight) * rises[body]; }
    std::array<ThermalBranch, 2> branches(const Constants& constants) const {
        return {{{weight, seconds(constants[element])}, {1 - weight, seconds(constants[body])}}};
    }
};

struct Shapes {
    Constants constants;
    std::vector<Shape> shapes;
};

/// A shape with one of the reference currents that let it meet every limit.
struct Candidate {
    Shape shape;
    double reference; ///< amperes
};

/// From cold, `time` after a step.
Rises risen(const Constants& constants, Time time) {
    Rises rises;
    for (const double constant : constants)
        rises.push_back(-std::expm1(-time.base() / constant));
    return rises;
}

/// A limit, and how far each time constant has risen by its time.
struct Test {
    double current; ///< amperes
    Rises rises;
};

std::vector<Test> testsOf(const std::vector<TimeCurrent>& limits, const Constants& constants) {
    std::vector<Test> tests;
    tests.reserve(limits.size());
    for (const TimeCurrent& limit : limits)
        tests.push_back({limit.current.base(), risen(constants, limit.time)});
    return tests;
}

/// Between which reference currents a device of each shape meets every limit.
class References {
  public:
    References(const ThermalLimits& limits, const Constants& constants)
      : carries_(limits.carries.base())
      , notBefore_(testsOf(limits.notBefore, constants))
      , operatedBy_(testsOf(limits.operatedBy, constants)) {
        if (!limits.warm) return;
        const auto& [before, then] = *limits.warm;
        before_ = before.current.base();
        warm_ = testsOf({then}, constants);
        sinceCold_ = risen(constants, before.time + then.time);
    }
    double least(const Shape& shape) const {
        double least = carries_;
        for (const Test& test : notBefore_)
            least = std::max(least, test.current * std::sqrt(shape.risen(test.rises)));
        return least;
    }
    double most(const Shape& shape) const {
        double most = std::numeric_limits<double>::infinity();
        for (const Test& test : operatedBy_)
            most = std::min(most, test.current * std::sqrt(shape.risen(test.rises)));
        for (const Test& test : warm_) {
            const double before = before_ * before_, after = test.current * test.current;
            most = std::min(most, std::sqrt(before * shape.risen(sinceCold_) +
                                            (after - before) * shape.risen(test.rises)));
        }
        return most;
    }

  private:
    double carries_ = 0, before_ = 0;
    std::vector<Test> notBefore_, operatedBy_, warm_;
    Rises sinceCold_; ///< by the end of the warm test
};

constexpr double atOnce = 0.1; // seconds

/// Keeps a replica on the permitted side of a limit that it would meet exactly but for rounding.
constexpr double hair = 1e-9;

std::vector<double> logarithmicSteps(double from, double to, int count) {
    std::vector<double> steps;
    steps.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i)
        steps.push_back(from * std::pow(to / from, static_cast<double>(i) / (count - 1)));
    return steps;
}

Shapes oneElement(double quickest, double slowest) {
    Shapes result{logarithmicSteps(quickest, slowest, 193), {}};
    for (std::size_t i = 0; i < result.constants.size(); ++i)
        result.shapes.push_back({1, i, i});
    return result;
}

/// Finely where an element's share is small and it melts in a flash, and evenly where the two share alike.
std::vector<double> weightsOfAnElement() {
    std::vector<double> weights = logarithmicSteps(0.002, 0.2, 15);
    for (int twentieths = 5; twentieths <= 20; ++twentieths)
        weights.push_back(twentieths / 20.0);
    return weights;
}

Shapes twoElements(double quickest, double slowest) {
    Shapes result{logarithmicSteps(quickest, slowest, 37), {}};
    const std::vector<double> weights = weightsOfAnElement();
    for (std::size_t element = 0; element < result.constants.size(); ++element)
        for (std::size_t body = element + 1; body < result.constants.size(); ++body)
            for (const double weight : weights)
                result.shapes.push_back({weight, element, body});
    return result;
}

/// From shorter than the shortest test, and what people call at once, to as long as the longest: outside lies
/// nothing that a test tells from what lies inside. A body beside an element may be slower still: the element
/// meets the longest test, and the body goes on warming for some times its length. Beyond that it comes too
/// late to matter. Without any test one shape is as good as another.
Shapes shapesFor(const ThermalLimits& limits, Elements elements) {
    double shortest = std::numeric_limits<double>::infinity(), longest = 0;
    const auto widen = [&](Time time) {
        shortest = std::min(shortest, time.base());
        longest = std::max(longest, time.base());
    };
    for (const auto* list : {&limits.notBefore, &limits.operatedBy})
        for (const TimeCurrent& test : *list)
            widen(test.time);
    if (limits.warm) widen(limits.warm->operatedBy.time);
    if (!(longest > 0)) return {{1}, {{1, 0, 0}}};
    const double quickest = std::min(shortest / 10, atOnce);
    constexpr double slowestBody = 4; // times the longest test; with ten times nothing operates any later
    return elements == Elements::One ? oneElement(quickest, longest)
                                     : twoElements(quickest, longest * slowestBody);
}

/// Currents that come in equal pulses, the last of which ends now.
struct Pulses {
    double on;         ///< seconds
    double periodToOn; ///< how much longer than a pulse it takes until the next begins
    double count;
};

/// What cold devices have reached at the end of the last pulse.
Rises risen(const Constants& constants, const Pulses& pulses) {
    Rises rises;
    for (const double constant : constants) {
        const double on = pulses.on / constant, period = on * pulses.periodToOn;
        rises.push_back(-std::expm1(-on) * std::expm1(-period * pulses.count) / std::expm1(-period));
    }
    return rises;
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
std::vector<ThermalReplica> leading(const std::vector<Candidate>& candidates, const Constants& constants,
                                    Leads leads) {
    std::set<std::size_t> kept;
    if (candidates.empty()) return {};
    for (const Pulses& pulses : loads()) {
        const Rises rises = risen(constants, pulses);
        const auto response = [&](const Candidate& candidate) {
            return candidate.shape.risen(rises) / (candidate.reference * candidate.reference);
        };
        std::size_t first = 0;
        double best = response(candidates.front());
        for (std::size_t i = 1; i < candidates.size(); ++i)
            if (const double each = response(candidates[i]); leads(each, best)) {
                first = i;
                best = each;
            }
        kept.insert(first);
    }
    std::vector<ThermalReplica> result;
    result.reserve(kept.size());
    for (const std::size_t index : kept)
        result.push_back({amperes(candidates[index].reference), candidates[index].shape.branches(constants)});
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
    const auto [constants, shapes] = shapesFor(limits, elements);
    const References references(limits, constants);
    std::vector<Candidate> early, late;
    for (const Shape& shape : shapes) {
        const double least = references.least(shape), most = references.most(shape);
        if (least > most) continue;
        if (least > 0) early.push_back({shape, least * (1 + hair)});
        if (std::isfinite(most)) late.push_back({shape, most * (1 - hair)});
    }
    return {leading(early, constants, std::greater<>{}), leading(late, constants, std::less<>{})};
}

OperationEdge earliestOf(const ReplicaSet& set, Duty duty, Current preload, std::uint64_t cycles) {
    OperationEdge earliest;
    for (const ThermalReplica& replica : set.early) {
        const OperationEdge edge = edgeOf(replica, duty, preload, cycles);
        if (earliest.operation == Operation::Unknown || isSooner(edge, earliest)) earliest = edge;
    }
    return earliest;
}

OperationEdge latestOf(const ReplicaSet& set, Duty duty, Current preload, std::uint64_t cycles) {
    OperationEdge latest;
    for (const ThermalReplica& replica : set.late) {
        const OperationEdge edge = edgeOf(replica, duty, preload, cycles);
        if (latest.operation == Operation::Unknown || isSooner(latest, edge)) latest = edge;
        if (latest.operation == Operation::Never) break; // nothing is later
    }
    return latest;
}

OperationBand operationOf(const ReplicaSet& set, Duty duty, Current preload, std::uint64_t cycles) {
    return {earliestOf(set, duty, preload, cycles), latestOf(set, duty, preload, cycles)};
}

} // namespace loopwright::physics
