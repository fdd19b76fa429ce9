// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/load_current.h"

#include "core/checks/demand_kinds.h"
#include "core/physics/demand.h"
#include "core/physics/load.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright {
namespace {

/// A ratio that is 1 when nobody recorded it. Nothing when it is recorded and cannot be used.
std::optional<Ratio> ratioOrOne(const Equipment& equipment, const Entry<Ratio>& entry, std::string_view field,
                                std::string_view symbol, Worksheet& sheet) {
    if (entry.isMissing() || entry.state == EntryState::NotApplicable) return 1;
    return sheet.exact(symbol, equipment, entry, field);
}

/// The same of a share of a whole: a power factor or an efficiency above 1 does not exist (IEC 60050-131,
/// 131-11-46; IEC 60050-151, 151-15-25), and stands for a slip such as 95 for 0.95.
std::optional<Ratio> shareOrOne(const Equipment& equipment, const Entry<Ratio>& entry, std::string_view field,
                                std::string_view symbol, Worksheet& sheet) {
    const auto share = ratioOrOne(equipment, entry, field, symbol, sheet);
    if (!share || *share <= 1) return share;
    sheet.unusable(equipment, field);
    return std::nullopt;
}

bool isSinglePhase(const Circuit& circuit, Voltage rated, Voltage lineToEarth) {
    return circuit.phases != Phases::Three || !isBetweenLines(rated, lineToEarth);
}

std::optional<EquipmentCurrent> currentFromPower(const VisitContext& visit, const Circuit& circuit,
                                                 const Equipment& equipment, Worksheet& sheet) {
    const Voltage lineToEarth = nominalVoltage(visit);
    const auto recorded = usable(equipment.ratedVoltage);
    const Voltage betweenItsPoles =
        circuit.phases == Phases::Three ? std::numbers::sqrt3 * lineToEarth : lineToEarth;
    const Voltage rated = recorded.value_or(betweenItsPoles);
    const bool single = isSinglePhase(circuit, rated, lineToEarth);

    const auto power = sheet.figure("P", equipment, equipment.power, "power_W", Zero::Unusable,
                                    {"check.note.equipment", &equipment.name});
    const auto factor = shareOrOne(equipment, equipment.powerFactor, "powerFactor", "cos φ", sheet);
    const auto efficiency = shareOrOne(equipment, equipment.efficiency, "efficiency", "η", sheet);
    if (!power || !factor || !efficiency) return std::nullopt;
    sheet.show([&] {
        return recorded ? recordedTerm("U", equipment.ratedVoltage, units::volt)
                        : computedTerm("U", rated, units::volt, {"check.note.nominal-voltage", {}});
    });
    const Voltage phaseVoltage = single ? rated : rated / std::numbers::sqrt3;
    const Current each = physics::loadCurrent(power->value, phaseVoltage, !single, *factor, *efficiency);
    return EquipmentCurrent{{each, power->bound}, single};
}

bool isSpread(const Circuit& circuit, const EquipmentCurrent& drawn) {
    return drawn.singlePhase && circuit.phases == Phases::Three;
}

struct EquipmentSum {
    Figure<Current> sum; ///< of the pieces whose current is known
    bool isComplete = true;
};

/// Pieces that came into use after `until` are left out.
EquipmentSum knownSum(const VisitContext& visit, const CircuitRecords& records, Worksheet& sheet,
                      const std::optional<Date>& until = {}) {
    Figure<Current> sum;
    bool complete = true;
    for (const Equipment* equipment : records.equipment) {
        if (until && equipment->since && *equipment->since > *until) continue;
        const auto drawn = equipmentCurrent(visit, records.circuit, *equipment, sheet);
        const auto count = ratioOrOne(*equipment, equipment->count, "count", "n", sheet);
        if (!drawn || !count) {
            complete = false;
            continue;
        }
        const bool spread = isSpread(records.circuit, *drawn);
        const double pieces = piecesOnOnePhase(records.circuit, *drawn, *count);
        sum = rising(sum.value + drawn->each.value * pieces, sum, drawn->each);
        sheet.show([&] {
            return computedTerm(
                "I", drawn->each.value * pieces, units::ampere,
                {spread ? std::string_view("check.note.equipment-spread") : "check.note.equipment",
                 {equipment->name}});
        });
    }
    return {sum, complete};
}

std::optional<Figure<Current>> sumOfEquipment(const VisitContext& visit, const CircuitRecords& records,
                                              Worksheet& sheet, std::string_view symbol) {
    const EquipmentSum all = knownSum(visit, records, sheet);
    if (!all.isComplete) return std::nullopt;
    sheet.show([&] {
        return computedTerm(symbol, all.sum.value, units::ampere, {"check.note.sum-of-equipment", {}});
    });
    return all.sum;
}

/// A load that was typed for a circuit of cooking appliances alone may have their published allowance in it,
/// which is meant for the one circuit as well (common practice, no source). What was measured cannot.
Current withAllowance(const VisitContext& visit, const CircuitRecords& records, Current drawn) {
    constexpr std::string_view cooking = "cooking-appliances";
    const auto cooks = [&](const Equipment* piece) {
        return loadKinds[loadKindOf(piece->kind)].key == cooking;
    };
    if (!std::ranges::all_of(records.equipment, cooks)) return drawn;
    const auto allowance = publishedAllowance(visit, loadKindOf(records.equipment.front()->kind));
    physics::LoadSums sums;
    sums.add(drawn);
    return allowance ? physics::demandAfterAllowance(sums, allowance->value) : drawn;
}

} // namespace

bool isBetweenLines(Voltage rated, Voltage lineToEarth) {
    const double toEarth = std::abs((rated - lineToEarth).base());
    const double betweenLines = std::abs((rated - std::numbers::sqrt3 * lineToEarth).base());
    return !(toEarth < betweenLines);
}

Voltage nominalVoltage(const VisitContext& visit) {
    if (visit.supply)
        if (const auto recorded = usable(visit.supply->nominalVoltage)) return *recorded;
    return visit.rules.nominalVoltage;
}

Voltage highestVoltage(const CircuitContext& context) {
    const bool threePhase = context.circuit.phases == Phases::Three;
    return nominalVoltage(context) * (threePhase ? std::numbers::sqrt3 : 1.0);
}

Term nominalVoltageTerm(const VisitContext& visit) {
    if (visit.supply)
        if (const auto recorded = usable(visit.supply->nominalVoltage))
            return recordedTerm("U_0", visit.supply->nominalVoltage, units::volt);
    return ruleTerm("U_0", visit.rules.nominalVoltage, units::volt, visit.rules.sourceOf("nominalVoltage_V"),
                    {"check.note.nominal-voltage", {}});
}

std::optional<EquipmentCurrent> equipmentCurrent(const VisitContext& visit, const Circuit& circuit,
                                                 const Equipment& equipment, Worksheet& sheet) {
    const bool asksForPower =
        equipment.current.isMissing() || equipment.current.state == EntryState::NotApplicable;
    if (asksForPower) return currentFromPower(visit, circuit, equipment, sheet);

    const auto current = sheet.figure("I", equipment, equipment.current, "current_A", Zero::Unusable,
                                      {"check.note.equipment", &equipment.name});
    if (!current) return std::nullopt;
    const Voltage lineToEarth = nominalVoltage(visit);
    const Voltage rated = usable(equipment.ratedVoltage).value_or(std::numbers::sqrt3 * lineToEarth);
    return EquipmentCurrent{*current, isSinglePhase(circuit, rated, lineToEarth)};
}

double piecesOnOnePhase(const Circuit& circuit, const EquipmentCurrent& drawn, double count) {
    return isSpread(circuit, drawn) ? std::ceil(count / 3) : count;
}

std::optional<Start> largestStart(const VisitContext& visit, const CircuitRecords& records,
                                  Worksheet& sheet) {
    std::optional<Start> largest;
    bool mayBeMore = false;
    for (const Equipment* equipment : records.equipment) {
        if (!equipment->startMultiple.hasFigure()) continue;
        const auto multiple = sheet.exact("I_st/I", *equipment, equipment->startMultiple, "startMultiple");
        const auto drawn = equipmentCurrent(visit, records.circuit, *equipment, sheet);
        if (!multiple || !drawn) continue;
        const Figure<Current> start{drawn->each.value * *multiple, drawn->each.bound};
        mayBeMore |= start.bound == Bound::OrMore || start.bound == Bound::Open;
        if (!largest || start.value > largest->current.value) largest = {equipment, start};
    }
    if (largest && mayBeMore) largest->current.bound = combined(largest->current.bound, Bound::OrMore);
    return largest;
}

std::optional<Figure<Current>> loadCurrent(const VisitContext& visit, const CircuitRecords& records,
                                           Worksheet& sheet, std::string_view symbol) {
    if (records.reading && records.reading->measuredLoad.hasFigure())
        return sheet.figure(symbol, records.reading, &CircuitReading::measuredLoad, "measuredLoad_A");
    if (records.circuit.load.hasFigure())
        return sheet.figure(symbol, records.circuit, records.circuit.load, "load_A");
    if (!records.equipment.empty()) return sumOfEquipment(visit, records, sheet, symbol);
    return sheet.figure(symbol, records.circuit, records.circuit.load, "load_A");
}

std::optional<TwoLoads> loadAndEquipment(const VisitContext& visit, const CircuitRecords& records) {
    const bool wasMeasured = records.reading && records.reading->measuredLoad.hasFigure();
    const Entry<Current>& load = records.circuit.load;
    const bool wasTyped = load.hasFigure() && load.origin != Origin::Computed;
    if (records.equipment.empty() || (!wasMeasured && !wasTyped)) return std::nullopt;
    VisitContext unseen = visit;
    unseen.detail = Detail::VerdictOnly;
    Worksheet scratch(phrasing<"load-agreement">, unseen, {RecordKind::Circuit, records.circuit.id});
    const auto counted = loadCurrent(unseen, records, scratch);
    if (!counted || counted->bound == Bound::OrMore || counted->bound == Bound::Open) return std::nullopt;

    const std::optional<Date> lastDay = visit.visit.ended ? visit.visit.ended : visit.visit.started;
    auto [drawn, isComplete] =
        knownSum(unseen, records, scratch, wasMeasured ? lastDay : std::optional<Date>());
    if (!isComplete) drawn.bound = combined(drawn.bound, Bound::OrMore);
    if (!wasMeasured) drawn.value = withAllowance(visit, records, drawn.value);
    const bool mayBeLess = drawn.bound == Bound::OrLess || drawn.bound == Bound::Open;
    const auto& band = visit.tables.band(Band::LoadShare);
    TwoLoads loads{counted->value, drawn, band.value, &band.source, wasMeasured};
    if (counted->uncertainty && counted->uncertainty->share > band.value) {
        loads.share = counted->uncertainty->share;
        loads.source = counted->uncertainty->standard;
    }
    const bool areKnown = isUsable(drawn.value) && isUsable(loads.bearable()) && !mayBeLess;
    return areKnown && (isComplete || loads.disagree()) ? std::optional(loads) : std::nullopt;
}

std::optional<Finding> doubtLoad(const VisitContext& visit, const CircuitRecords& records, Ratio legShare,
                                 Current limit, Worksheet& sheet) {
    if (sheet.verdict() == Verdict::Fails) return std::nullopt;
    const auto loads = loadAndEquipment(visit, records);
    if (!loads || !loads->disagree()) return std::nullopt;
    if (loads->counted * legShare > limit || loads->drawn.value * legShare <= limit) return std::nullopt;
    sheet.showAside([&] {
        return computedTerm(
            "I_e", loads->drawn.value, units::ampere,
            {loads->wasMeasured ? "check.note.measured-counts" : "check.note.typed-counts", {}});
    });
    if (loads->wasMeasured)
        sheet.leansOn(*records.reading, "measuredLoad_A");
    else
        sheet.leansOn(records.circuit, "load_A");
    Finding finding = sheet.cannotTell();
    if (sheet.isFull())
        finding.sentence = {loads->wasMeasured ? "check.load.measured-in-doubt" : "check.load.typed-in-doubt",
                            {measure(loads->drawn, units::ampere), measure(loads->counted, units::ampere)}};
    return finding;
}

} // namespace loopwright
