// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/fault.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"
#include "core/checks/prospective.h"
#include "core/physics/fault.h"
#include "core/physics/heat.h"

namespace loopwright {
namespace {

bool isWithinFinalThreshold(const RuleSet& rules, CircuitUse use, Current rated) {
    if (use == CircuitUse::Distribution || use == CircuitUse::Spare) return false;
    return rated <= (use == CircuitUse::Sockets ? rules.finalThresholdSockets : rules.finalThresholdFixed);
}

std::optional<Time> finalCircuitTime(const RuleSet& rules, bool tt, Voltage lineToEarth) {
    for (const DisconnectionRow& row : rules.disconnection)
        if ((row.earthing == Earthing::Tt) == tt && lineToEarth > row.above && lineToEarth <= row.upTo)
            return row.time;
    return std::nullopt;
}

/// A breaker that operates at once lets through no more than its energy class says, where that is published.
/// The class is promised at the breaker's own breaking capacity; a smaller fault lets through less, but
/// nobody says how much less.
std::optional<Sourced<JouleIntegral>> letThrough(const CircuitContext& context, Current rated,
                                                 Current fault) {
    const auto capacity = usable(context.circuit.device.breakingCapacity);
    if (!context.family || !capacity || fault > *capacity) return std::nullopt;
    return context.tables.letThrough(*context.family, rated, *capacity);
}

bool operatesAtOnce(const CircuitContext& context, Current rated, Current fault) {
    const auto band =
        context.family ? context.tables.instantaneousBand(*context.family, rated) : std::nullopt;
    return band && fault >= rated * band->upTo;
}

struct KnownEnergy {
    Sourced<JouleIntegral> most;
    bool isFuse;
};

/// What the overcurrent device lets through at most, where more is known than its latest time.
std::optional<KnownEnergy> knownEnergy(const CircuitContext& context, Current rated, Current fault,
                                       bool atOnce) {
    if (!context.family) return std::nullopt;
    if (isFuse(*context.family)) {
        const auto* times = context.times;
        const auto energy = times ? physics::largestFuseEnergy(times->value, fault) : std::nullopt;
        if (!energy) return std::nullopt;
        return KnownEnergy{{*energy, times->source}, true};
    }
    if (!atOnce) return std::nullopt;
    const auto published = letThrough(context, rated, fault);
    if (!published) return std::nullopt;
    return KnownEnergy{*published, false};
}

/// Nobody records a breaker's energy class. It stands in a square on the breaker, and what is sold in Europe
/// is of class 3 almost without exception (common practice, no source).
void showKnown(const KnownEnergy& known, Worksheet& sheet) {
    sheet.show([&] {
        const Sourced<JouleIntegral>& most = known.most;
        if (known.isFuse)
            return tableTerm("I^{2}t", most.value, units::ampereSquaredSecond, most.source,
                             {"check.note.fuse-energy", {}});
        return assumedTerm("I^{2}t", most.value, units::ampereSquaredSecond, {"check.note.let-through", {}},
                           most.source);
    });
}

} // namespace

std::optional<bool> isTt(const BoardContext& context, Worksheet& sheet) {
    if (context.earthing != Earthing::Unknown) return context.earthing == Earthing::Tt;
    sheet.lacks(RecordKind::Supply, context.supply ? context.supply->id : Id{}, "earthing");
    return std::nullopt;
}

std::optional<Time> requiredTime(const CircuitContext& context, std::optional<Current> rated,
                                 Worksheet& sheet) {
    const auto tt = isTt(context, sheet);
    if (!tt || !rated) return std::nullopt;
    const RuleSet& rules = context.rules;
    const bool isFinal = isWithinFinalThreshold(rules, context.circuit.use, *rated);
    std::optional<Time> time = *tt ? rules.distributionTt : rules.distributionTn;
    if (isFinal) time = finalCircuitTime(rules, *tt, nominalVoltage(context));
    if (!time) {
        sheet.unpublished(RecordKind::Supply, context.supply ? context.supply->id : Id{}, "nominalVoltage_V");
        return std::nullopt;
    }
    sheet.show([&] {
        const std::string_view key = isFinal ? "disconnection"
                                     : *tt   ? "distributionTt_s"
                                             : "distributionTn_s";
        return ruleTerm(
            "t_max", *time, units::second, rules.sourceOf(key),
            {isFinal ? std::string_view("check.note.final-circuit") : "check.note.distribution", {}});
    });
    return time;
}

std::optional<Figure<Current>> faultCurrent(const CircuitContext& context, Ratio voltageFactor,
                                            Worksheet& sheet) {
    const auto loop =
        sheet.figure("Z_s", context.reading, &CircuitReading::loopImpedance, "loopImpedance_ohm");
    if (!loop) return std::nullopt;
    const Voltage lineToEarth = nominalVoltage(context);
    const Current current = physics::prospectiveCurrent(lineToEarth, voltageFactor, loop->value);
    sheet.show([&] { return nominalVoltageTerm(context); });
    const bool isNominal = voltageFactor == Ratio(1);
    sheet.show([&] {
        return computedTerm(
            "I_f", current, units::ampere,
            {isNominal ? std::string_view("check.note.fault-current") : "check.note.least-fault-current",
             {}});
    });
    return falling(current, *loop);
}

std::optional<Figure<Current>> neutralFaultCurrent(const CircuitContext& context, Worksheet& sheet) {
    const Circuit& circuit = context.circuit;
    const auto atBoard = sheet.figure("Z_LN", context.boardReading, &BoardReading::neutralLoopImpedance,
                                      "neutralLoopImpedance_ohm");
    const auto size = usable(circuit.wiring.lineSize); // what is missing here the check asks for itself
    const auto length = sheet.exact("l", circuit, circuit.wiring.length, "wiring.length_m");
    const auto line = lineResistance(context.tables, circuit);
    if (size && length && !line) sheet.unpublished(circuit, "wiring.lineSize_mm2");
    if (!atBoard || !line) return std::nullopt;
    // The far point of a ring is fed by both of its halves.
    const Resistance run = circuit.topology == Topology::Ring ? *line / 4 : *line;
    const Voltage lineToNeutral = nominalVoltage(context);
    const Current current = physics::prospectiveCurrent(lineToNeutral, 1, atBoard->value + 2 * run);
    sheet.show([&] { return nominalVoltageTerm(context); });
    sheet.show([&] { return computedTerm("R_1", run, units::ohm, {"check.note.own-line", {}}); });
    sheet.show([&] {
        return computedTerm("I_f", current, units::ampere, {"check.note.neutral-fault-at-end", {}});
    });
    return falling(current, *atBoard);
}

std::optional<Disconnection> predictedDisconnection(const CircuitContext& context, Current fault,
                                                    Worksheet& sheet) {
    const DeviceFamily* family = deviceFamily(context, sheet);
    if (!family) return std::nullopt;
    const auto* times = context.times;
    if (!times) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return std::nullopt;
    }
    Disconnection found{physics::operatingTime(times->value, fault).latest, times->source, std::nullopt};
    if (const auto path = mostSensitive(context))
        if (const auto residual = usable(path->device->residualCurrent))
            found.byResidual = residualLatest(context.tables, path->device->delay, *residual, fault);
    return found;
}

FaultEnergy faultEnergy(const CircuitContext& context, Current rated, Current fault, EndedBy endedBy,
                        Worksheet& sheet) {
    auto disconnection = predictedDisconnection(context, fault, sheet);
    if (!disconnection) return {};
    if (endedBy == EndedBy::OvercurrentDevice) disconnection->byResidual.reset();
    const bool byDevice =
        disconnection->latest.isLimited() &&
        (!disconnection->byResidual || disconnection->latest.time <= disconnection->byResidual->value);
    if (!byDevice && !disconnection->byResidual) return {std::nullopt, true};

    const Time time = byDevice ? disconnection->latest.time : disconnection->byResidual->value;
    const JouleIntegral byTime = physics::jouleIntegral(fault, time);
    // What the overcurrent device lets through it does not exceed because another may be quicker.
    const bool atOnce = operatesAtOnce(context, rated, fault);
    if (const auto known = knownEnergy(context, rated, fault, atOnce); known && known->most.value < byTime) {
        showKnown(*known, sheet);
        return {known->most.value, false, time, atOnce};
    }
    sheet.show([&] {
        return byDevice
                   ? tableTerm("t", time, units::second, disconnection->source, {"check.note.latest", {}})
                   : tableTerm("t", time, units::second, disconnection->byResidual->source,
                               {"check.note.latest-residual", {}});
    });
    sheet.show([&] { return computedTerm("I^{2}t", byTime, units::ampereSquaredSecond); });
    return {byTime, false, time, atOnce};
}

} // namespace loopwright
