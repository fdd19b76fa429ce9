// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/fault.h"
#include "core/checks/load_current.h"
#include "core/physics/loop.h"

namespace loopwright {
namespace {

/// The loop outside the circuit's own conductors, which a fault here does not warm: the board's reading, else
/// the supply's. Without either the whole reading counts as warmed, which errs on the safe side.
Resistance loopOutside(const CircuitContext& context, Worksheet& sheet) {
    const auto board = context.boardReading ? usable(context.boardReading->loopImpedance) : std::nullopt;
    if (board) {
        sheet.show([&] { return recordedTerm("Z_db", context.boardReading->loopImpedance, units::ohm); });
        return *board;
    }
    const bool atSupply = context.feeders.empty() && context.supplyReading;
    const auto supply = atSupply ? usable(context.supplyReading->externalLoopImpedance) : std::nullopt;
    if (supply) {
        sheet.show(
            [&] { return recordedTerm("Z_e", context.supplyReading->externalLoopImpedance, units::ohm); });
        return *supply;
    }
    const auto assumed = [] {
        return assumedTerm("Z_db", ohms(0), units::ohm, {"check.note.whole-loop-warmed", {}});
    };
    context.rules.loopRule == LoopRule::CorrectedReading ? sheet.show(assumed) : sheet.showAside(assumed);
    return ohms(0);
}

/// The reading with the circuit's conductors at the highest temperature their insulation allows.
std::optional<Figure<Resistance>> correctedReading(const CircuitContext& context,
                                                   const Figure<Resistance>& reading, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto limit = context.tables.conductorLimit(wiring.insulation);
    if (!limit) {
        sheet.unpublished(context.circuit, "wiring.insulation");
        return std::nullopt;
    }
    const Resistance outside = loopOutside(context, sheet);
    const auto recorded = usable(context.visit.conductorTemperature);
    const Temperature atTest = recorded.value_or(context.rules.testTemperature);
    const auto coefficient = context.tables.temperatureCoefficient(wiring.material);
    const Resistance corrected =
        physics::loopAtTemperature(reading.value, outside, atTest, limit->value, coefficient.value);
    sheet.show([&] {
        return recorded ? recordedTerm("θ_test", context.visit.conductorTemperature, units::celsius)
                        : ruleTerm("θ_test", atTest, units::celsius,
                                   context.rules.sourceOf("testTemperature_degC"));
    });
    sheet.show([&] { return tableTerm("θ_max", limit->value, units::celsius, limit->source); });
    sheet.show([&] {
        return computedTerm("Z_s,θ", corrected, units::ohm, {"check.note.corrected-loop", {}});
    });
    return rising(corrected, reading);
}

/// A loop that is too high for the overcurrent device may still be cut off by a residual current device.
std::optional<Resistance> residualLimit(const CircuitContext& context, Time time, Worksheet& sheet) {
    const auto path = mostSensitive(context);
    const auto rated = path ? usable(path->device->residualCurrent) : std::nullopt;
    if (!rated) return std::nullopt;
    const auto limit = loopForResidual(context, path->device->delay, *rated, time);
    if (!limit) return std::nullopt;
    sheet.show([&] { return recordedTerm("I_Δn", path->device->residualCurrent, units::milliampere); });
    sheet.show([&] {
        return computedTerm("Z_s,Δ", *limit, units::ohm, {"check.note.loop-for-residual", {}});
    });
    return limit;
}

/// Z_max by the tables; of an adjustable breaker by the current at which its settings promise to act in time.
std::optional<Sourced<Resistance>> permittedLoop(const CircuitContext& context, const DeviceFamily& family,
                                                 Current rated, Time time, Worksheet& sheet) {
    const Voltage lineToEarth = nominalVoltage(context);
    if (!family.adjustable) {
        auto permitted = context.tables.permittedLoop(context.rules, lineToEarth, family, rated, time);
        if (!permitted) sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return permitted;
    }
    const auto* times = context.times;
    const auto operates =
        times ? physics::currentForTime(times->value, time).operates : physics::CurrentEdge{};
    if (!operates.isLimited()) {
        sheet.lacks(context.circuit, "device.instantaneousSetting_A");
        return std::nullopt;
    }
    sheet.show([&] { return tableTerm("I_a", operates.current, units::ampere, times->source); });
    return Sourced<Resistance>{
        physics::permittedLoop(lineToEarth, context.rules.voltageFactorMin, operates.current), times->source};
}

struct LoopRow {
    std::string_view symbol;
    Figure<Resistance> result;
    Resistance limit;
};

/// Both temperature rules are shown; the rule set says which decides.
std::optional<LoopRow> rowThatDecides(const CircuitContext& context, const Figure<Resistance>& reading,
                                      Resistance permitted, Worksheet& sheet) {
    const RuleSet& rules = context.rules;
    const Resistance guarded = permitted * rules.loopGuard;
    sheet.show([&] { return ruleTerm("g", rules.loopGuard, units::ratio, rules.sourceOf("loopGuard")); });
    sheet.show([&] { return computedTerm("g Z_max", guarded, units::ohm, {"check.note.guarded-loop", {}}); });
    const auto corrected = correctedReading(context, reading, sheet);
    if (rules.loopRule == LoopRule::GuardedLimit) return LoopRow{"Z_s", reading, guarded};
    if (!corrected) return std::nullopt;
    return LoopRow{"Z_s,θ", *corrected, permitted};
}

} // namespace

/// Z_s ≤ Z_max (IEC 60364-4-41, 411.4.4), by the temperature rule of the rule set (IEC 60364-6, annex D).
Finding checkLoop(const CircuitContext& context) {
    Worksheet sheet(phrasing<"loop">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.earthing == Earthing::Tt) return sheet.doesNotApply("check.loop.tt");
    const RuleSet& rules = context.rules;
    sheet.formula(rules.loopRule == LoopRule::GuardedLimit ? "Z_s ≤ g Z_max" : "Z_s,θ ≤ Z_max");
    sheet.clause("loop");
    const auto reading =
        sheet.figure("Z_s", context.reading, &CircuitReading::loopImpedance, "loopImpedance_ohm");
    const auto rated = ratedCurrent(context, sheet);
    const DeviceFamily* family = deviceFamily(context, sheet);
    const auto time = requiredTime(context, rated, sheet);
    if (!reading || !rated || !family || !time) return sheet.conclude();

    const auto permitted = permittedLoop(context, *family, *rated, *time, sheet);
    if (!permitted) return sheet.conclude();
    sheet.show([&] { return tableTerm("Z_max", permitted->value, units::ohm, permitted->source); });
    const auto row = rowThatDecides(context, *reading, permitted->value, sheet);
    if (!row) return sheet.conclude();

    const Judgement byDevice = judge(Relation::AtMost, {row->result.value.base(), row->result.bound},
                                     {row->limit.base()}, rules.closeBand);
    const auto forResidual =
        byDevice.verdict == Verdict::Fails ? residualLimit(context, *time, sheet) : std::nullopt;
    if (forResidual && reading->value <= *forResidual) {
        sheet.compare(Relation::AtMost, "Z_s", *reading, Figure<Resistance>{*forResidual}, units::ohm);
        sheet.decide(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.loop.only-residual");
    } else {
        sheet.compare(Relation::AtMost, row->symbol, row->result, Figure<Resistance>{row->limit}, units::ohm);
    }
    if (sheet.verdict() == Verdict::Fails && lacksResidualRating(context, sheet)) return sheet.cannotTell();
    return sheet.conclude(measure(row->result, units::ohm), measure(row->limit, units::ohm));
}

} // namespace loopwright
