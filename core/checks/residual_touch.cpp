// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/fault.h"
#include "core/physics/residual.h"

namespace loopwright {
namespace {

/// R_A: the electrode's reading. Where it was not read the measured loop stands for it, which holds R_A and
/// more.
std::optional<Figure<Resistance>> electrode(const CircuitContext& context, Worksheet& sheet) {
    if (context.earthedAtReading && context.earthedAtReading->electrodeResistance.hasFigure())
        return sheet.figure("R_A", context.earthedAtReading, &BoardReading::electrodeResistance,
                            "electrodeResistance_ohm");
    if (!context.earthedAt && context.supplyReading && context.supplyReading->electrodeResistance.hasFigure())
        return sheet.figure("R_A", context.supplyReading, &SupplyReading::electrodeResistance,
                            "electrodeResistance_ohm");
    if (context.reading && context.reading->loopImpedance.hasFigure())
        return sheet.figure("Z_s", context.reading, &CircuitReading::loopImpedance, "loopImpedance_ohm");
    if (context.earthedAt)
        return sheet.figure("R_A", context.earthedAtReading, &BoardReading::electrodeResistance,
                            "electrodeResistance_ohm");
    return sheet.figure("R_A", context.supplyReading, &SupplyReading::electrodeResistance,
                        "electrodeResistance_ohm");
}

} // namespace

/// R_A I_Δn ≤ U_L (IEC 60364-4-41, 411.5.3), where an electrode is the means of earthing.
Finding checkResidualTouch(const CircuitContext& context) {
    Worksheet sheet(phrasing<"residual-touch">, context, {RecordKind::Circuit, context.circuit.id});
    const auto tt = isTt(context, sheet);
    if (tt && !*tt) return sheet.doesNotApply("check.residual-touch.tn");
    if (!tt) return sheet.conclude();
    sheet.formula("R_A I_Δn ≤ U_L");
    sheet.clause("residual-touch");
    const auto path = mostSensitive(context);
    if (!path) {
        sheet.decide(Verdict::Fails);
        sheet.phrase(Verdict::Fails, "check.residual-touch.none");
        return sheet.conclude();
    }
    const auto resistance = electrode(context, sheet);
    const auto rated = residualCurrent(*path, sheet);
    if (!resistance || !rated) return sheet.conclude();

    const RuleSet& rules = context.rules;
    const auto touch = rising(physics::touchVoltage(resistance->value, *rated), *resistance);
    sheet.show(
        [&] { return ruleTerm("U_L", rules.touchVoltage, units::volt, rules.sourceOf("touchVoltage_V")); });
    sheet.compare(Relation::AtMost, "R_A I_Δn", touch, Figure<Voltage>{rules.touchVoltage}, units::volt);
    return sheet.conclude(measure(touch, units::volt), measure(rules.touchVoltage, units::volt));
}

} // namespace loopwright
