// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/load_current.h"

#include "core/physics/load.h"

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
    if (circuit.phases != Phases::Three) return true;
    const double toEarth = std::abs((rated - lineToEarth).base());
    const double betweenLines = std::abs((rated - std::numbers::sqrt3 * lineToEarth).base());
    return toEarth < betweenLines;
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

std::optional<Figure<Current>> sumOfEquipment(const VisitContext& visit, const CircuitRecords& records,
                                              Worksheet& sheet, std::string_view symbol) {
    Figure<Current> sum;
    bool complete = true;
    for (const Equipment* equipment : records.equipment) {
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
    if (!complete) return std::nullopt;
    sheet.show([&] {
        return computedTerm(symbol, sum.value, units::ampere, {"check.note.sum-of-equipment", {}});
    });
    return sum;
}

} // namespace

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
    for (const Equipment* equipment : records.equipment) {
        if (!equipment->startMultiple.hasFigure()) continue;
        const auto multiple = sheet.exact("I_st/I", *equipment, equipment->startMultiple, "startMultiple");
        const auto drawn = equipmentCurrent(visit, records.circuit, *equipment, sheet);
        if (!multiple || !drawn) continue;
        const Figure<Current> start{drawn->each.value * *multiple, drawn->each.bound};
        if (!largest || start.value > largest->current.value) largest = {equipment, start};
    }
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

} // namespace loopwright
