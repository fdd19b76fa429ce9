// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/prospective.h"

#include "core/checks/load_current.h"
#include "core/physics/fault.h"

namespace loopwright {
namespace {

/// From a loop to earth, which where an electrode earths the installation says nothing about a fault to
/// neutral.
template <class Record>
std::optional<Figure<Current>> fromLoop(const BoardContext& context, const Record* record,
                                        Entry<Resistance> Record::*member, std::string_view field,
                                        std::string_view loopSymbol, Phases phases, Worksheet& sheet,
                                        std::string_view symbol) {
    if (!record || !(record->*member).hasFigure() || context.earthing == Earthing::Tt) return std::nullopt;
    const auto loop = sheet.figure(loopSymbol, record, member, field);
    if (!loop) return std::nullopt;
    const RuleSet& rules = context.rules;
    Current current =
        physics::prospectiveCurrent(nominalVoltage(context), rules.voltageFactorMax, loop->value);
    if (phases == Phases::Three) current = physics::threePhaseFromLineToNeutral(current);
    sheet.show([&] { return nominalVoltageTerm(context); });
    sheet.show([&] {
        return ruleTerm("c_max", rules.voltageFactorMax, units::ratio, rules.sourceOf("voltageFactorMax"));
    });
    sheet.show([&] {
        return computedTerm(symbol, current, units::kiloampere,
                            {phases == Phases::Three ? std::string_view("check.note.three-phase-fault")
                                                     : "check.note.fault-current",
                             {}});
    });
    return falling(current, *loop);
}

std::optional<Figure<Current>> atSupply(const BoardContext& context, Worksheet& sheet,
                                        std::string_view symbol) {
    const SupplyReading* reading = context.supplyReading;
    if (reading && reading->prospectiveFaultCurrent.hasFigure())
        return sheet.figure(symbol, reading, &SupplyReading::prospectiveFaultCurrent,
                            "prospectiveFaultCurrent_kA");
    return fromLoop(context, reading, &SupplyReading::externalLoopImpedance, "externalLoopImpedance_ohm",
                    "Z_e", context.supply ? context.supply->phases : Phases::Three, sheet, symbol);
}

} // namespace

std::optional<Figure<Current>> prospectiveCurrent(const BoardContext& context, Worksheet& sheet,
                                                  std::string_view symbol) {
    const BoardReading* reading = context.boardReading;
    if (reading && reading->prospectiveFaultCurrent.hasFigure())
        return sheet.figure(symbol, reading, &BoardReading::prospectiveFaultCurrent,
                            "prospectiveFaultCurrent_kA");
    if (const auto found = fromLoop(context, reading, &BoardReading::loopImpedance, "loopImpedance_ohm",
                                    "Z_db", context.board.phases, sheet, symbol))
        return found;
    if (auto found = atSupply(context, sheet, symbol)) {
        if (context.feeders.empty()) return found;
        found->bound = combined(found->bound, Bound::OrLess);
        sheet.leansOn(RecordKind::BoardReading, reading ? reading->id : Id{}, "prospectiveFaultCurrent_kA");
        return found;
    }
    return sheet.figure(symbol, reading, &BoardReading::prospectiveFaultCurrent,
                        "prospectiveFaultCurrent_kA");
}

} // namespace loopwright
