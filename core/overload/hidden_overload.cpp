// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/hidden_overload.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::overload {

namespace {

using physics::Operation;

Edge edgeOf(const physics::OperationEdge& edge) {
    return {edge.operation, edge.reached.cycle + 1, edge.reached.inAll};
}

bool isSooner(const Edge& a, const Edge& b) {
    if (!a.operates() || !b.operates()) return a.operates();
    return a.after < b.after;
}

/// The first step of a cycle above `current`, as an edge that operates at its beginning.
std::optional<Edge> atOnceAbove(const Steps& cycle, Current current, bool orAt) {
    Time since;
    for (const physics::DutyStep& step : cycle) {
        if (step.current > current || (orAt && step.current == current))
            return Edge{Operation::Operates, 1, since};
        since += step.duration;
    }
    return std::nullopt;
}

void bring(Edge& edge, const std::optional<Edge>& atOnce) {
    if (atOnce && isSooner(*atOnce, edge)) edge = *atOnce;
}

/// Both edges under one cycle, the instantaneous release included.
struct Band {
    Edge earliest;
    Edge latest;
};
Band bandUnder(const Question& question, const Steps& cycle) {
    const physics::OperationBand band = physics::operationOf(question.device.replicas, cycle);
    Band result{edgeOf(band.earliest), edgeOf(band.latest)};
    if (const auto& instantaneous = question.instantaneous) {
        bring(result.earliest, atOnceAbove(cycle, question.rated * instantaneous->above, false));
        bring(result.latest, atOnceAbove(cycle, question.rated * instantaneous->upTo, true));
    }
    return result;
}

/// The highest state that each of the replicas ever gets to, from cold: that of the settled cycle.
template <class Worse>
std::optional<Ratio> extremePeak(const std::vector<physics::ThermalReplica>& replicas, const Steps& cycle,
                                 Worse worse) {
    std::optional<Ratio> extreme;
    for (const physics::ThermalReplica& replica : replicas)
        if (const auto settled = physics::limitCycle(replica, cycle))
            extreme = extreme ? worse(*extreme, settled->peak) : settled->peak;
    return extreme;
}

/// States rise with the square of the load, so the load at which one just reaches 1 follows at once.
Ratio factorTo(Ratio peak) {
    return peak > 0 ? 1 / std::sqrt(peak) : std::numeric_limits<double>::infinity();
}

Current highest(const Steps& cycle) {
    return std::ranges::max(cycle, {}, &physics::DutyStep::current).current;
}

} // namespace

Edge sureToOperate(const Question& question) {
    Edge latest = bandUnder(question, question.load.apart.front()).latest;
    for (const Steps& cycle : question.load.apart)
        if (const Edge edge = bandUnder(question, cycle).latest; isSooner(edge, latest)) latest = edge;
    return latest;
}

Current mayOperateAt(const Question& question) {
    const Load& load = question.load;
    const auto most = [](Ratio a, Ratio b) { return std::max(a, b); };
    const auto peak = extremePeak(question.device.replicas.early, load.together, most);
    Current may = peak ? load.peak * factorTo(*peak) : question.rated;
    if (question.instantaneous) may = std::min(may, question.rated * question.instantaneous->above);
    return may;
}

std::optional<Current> mustOperateAt(const Question& question) {
    const Load& load = question.load;
    const auto least = [](Ratio a, Ratio b) { return std::min(a, b); };
    std::optional<Current> must;
    const auto take = [&](Ratio factor) {
        const Current current = load.peak * factor;
        if (isFinite(current) && (!must || current < *must)) must = current;
    };
    for (const Steps& cycle : load.apart) {
        if (const auto peak = extremePeak(question.device.replicas.late, cycle, least)) take(factorTo(*peak));
        if (question.instantaneous) take(question.rated * question.instantaneous->upTo / highest(cycle));
    }
    return must;
}

HiddenOverload answer(const Question& question) {
    const Load& load = question.load;
    HiddenOverload result;
    result.toDevice = load.peak / question.rated;
    if (question.conductor) result.toWiring = load.peak / question.conductor->capacity;
    result.overRating = stretchAbove(load.together, question.rated);
    const Band together = bandUnder(question, load.together);
    result.earliest = together.earliest;
    result.latestTogether = together.latest;
    result.latest = sureToOperate(question);
    const Ratio unshifted = 1 - question.shift;
    result.agedEarliest = bandUnder(question, scaled(load.together, 1 / unshifted)).earliest;
    result.holdsOut = question.device.holdsOut();
    result.mayOperateAt = mayOperateAt(question);
    result.mustOperateAt = mustOperateAt(question);
    result.agedMayOperateAt = result.mayOperateAt * unshifted;
    result.contactPeak = result.toDevice * result.toDevice;
    result.contactMean = (load.rms / question.rated) * (load.rms / question.rated);
    if (question.conductor) result.conductor = heatUnder(*question.conductor, load.together);
    return result;
}

} // namespace loopwright::overload
