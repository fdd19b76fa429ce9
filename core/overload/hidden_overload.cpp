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

/// The first time that a repeated cycle has been above `current`, or at it, for so long without a break; 0:
/// as soon as it is.
std::optional<Edge> above(const Steps& cycle, Current current, bool orAt, Time stays) {
    const auto isThere = [&](const physics::DutyStep& step) {
        return step.current > current || (orAt && step.current == current);
    };
    if (std::ranges::all_of(cycle, isThere)) {
        const auto runs = static_cast<std::uint64_t>(stays / physics::lengthOf(cycle));
        return Edge{Operation::Operates, runs + 1, stays};
    }
    Time since, there;
    for (const std::uint64_t run : {1, 2}) // a stretch may go on into the next cycle
        for (const physics::DutyStep& step : cycle) {
            if (isThere(step) && there + step.duration >= stays)
                return Edge{Operation::Operates, run, since + (stays - there)};
            there = isThere(step) ? there + step.duration : Time();
            since += step.duration;
        }
    return std::nullopt;
}

void bring(Edge& edge, const std::optional<Edge>& atOnce) {
    if (atOnce && isSooner(*atOnce, edge)) edge = *atOnce;
}

/// When the earliest, and the latest, operates under one cycle, the quick releases included.
Edge earliestUnder(const Question& question, const Steps& cycle, std::uint64_t cycles) {
    const Steps felt = scaled(cycle, 1 / question.inWarmth.value_or(1));
    Edge earliest = edgeOf(physics::earliestOf(question.device.replicas, felt, {}, cycles));
    for (const auto* band : {&question.instantaneous, &question.shortTime})
        if (*band) bring(earliest, above(cycle, question.rated * (*band)->above, false, (*band)->notBefore));
    if (!question.inWarmth && !earliest.operates()) earliest.operation = Operation::Unknown;
    return earliest;
}
Edge latestUnder(const Question& question, const Steps& cycle) {
    Edge latest;
    if (const auto& cold = question.inCold)
        latest = edgeOf(physics::latestOf(question.device.replicas, scaled(cycle, 1 / *cold)));
    for (const auto* band : {&question.instantaneous, &question.shortTime})
        if (*band) bring(latest, above(cycle, question.rated * (*band)->upTo, true, (*band)->within));
    return latest;
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

/// The largest current that a repeated cycle keeps up, or is above, for so long without a break.
std::optional<Current> heldFor(const Steps& cycle, Time time) {
    std::optional<Current> held;
    for (const physics::DutyStep& step : cycle)
        if ((!held || step.current > *held) && above(cycle, step.current, true, time)) held = step.current;
    return held;
}

/// However the runs fall.
Edge soonest(const Question& question, Ratio loadFactor = 1) {
    std::optional<Edge> soonest;
    for (const Steps& cycle : beginningsOf(question.load)) {
        const bool mayBeat = soonest && soonest->operates(); // in no more cycles than that took
        const std::uint64_t cycles =
            mayBeat ? static_cast<std::uint64_t>(soonest->after / physics::lengthOf(cycle)) + 1
                    : physics::forEver;
        const Edge edge = earliestUnder(question, scaled(cycle, loadFactor), cycles);
        if (!soonest || isSooner(edge, *soonest)) soonest = edge;
    }
    return *soonest;
}

} // namespace

Edge sureToOperate(const Question& question) {
    Edge latest = latestUnder(question, question.load.apart.front());
    for (const Steps& cycle : question.load.apart)
        if (const Edge edge = latestUnder(question, cycle); isSooner(edge, latest)) latest = edge;
    return latest;
}

Current mayOperateAt(const Question& question) {
    const Load& load = question.load;
    const auto most = [](Ratio a, Ratio b) { return std::max(a, b); };
    const auto peak = extremePeak(question.device.replicas.early, load.together, most);
    Current may = (peak ? load.peak * factorTo(*peak) : question.rated) * question.inWarmth.value_or(1);
    for (const auto* band : {&question.instantaneous, &question.shortTime}) {
        if (!*band) continue;
        const Current from = question.rated * (*band)->above;
        if (const auto held = heldFor(load.together, (*band)->notBefore); held && *held > Current())
            may = std::min(may, load.peak * (from / *held));
    }
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
        if (const auto peak = extremePeak(question.device.replicas.late, cycle, least);
            peak && question.inCold)
            take(factorTo(*peak) * *question.inCold);
        for (const auto* band : {&question.instantaneous, &question.shortTime}) {
            if (!*band) continue;
            const auto held = heldFor(cycle, (*band)->within);
            if (held && *held > Current()) take(question.rated * (*band)->upTo / *held);
        }
    }
    return must;
}

HiddenOverload answer(const Question& question) {
    const Load& load = question.load;
    HiddenOverload result;
    result.toDevice = load.peak / question.rated;
    if (question.conductor) result.toWiring = load.peak / question.conductor->capacity;
    result.overRating = stretchAbove(load.together, question.rated);
    result.earliest = soonest(question);
    result.latestTogether = latestUnder(question, load.together);
    result.latest = sureToOperate(question);
    const Ratio unshifted = 1 - question.shift;
    result.agedEarliest = soonest(question, 1 / unshifted);
    result.holdsOut = question.device.holdsOut() && question.inWarmth;
    result.mayOperateAt = mayOperateAt(question);
    result.mustOperateAt = mustOperateAt(question);
    result.agedMayOperateAt = result.mayOperateAt * unshifted;
    result.contactPeak = result.toDevice * result.toDevice;
    result.contactMean = (load.rms / question.rated) * (load.rms / question.rated);
    if (question.conductor) result.conductor = heatUnder(*question.conductor, load.together);
    return result;
}

} // namespace loopwright::overload
