// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {

/// Z_e ≤ what distributors usually declare for this earthing. More is a question for the distributor, not a
/// failure.
Finding checkSupplyLoop(const VisitContext& context) {
    Worksheet sheet(phrasing<"supply-loop">, context, {RecordKind::Supply, context.supply->id});
    if (context.supply->earthing == Earthing::Tt) return sheet.doesNotApply("check.supply-loop.tt");
    sheet.formula("Z_e ≤ Z_e,max");
    sheet.clause("supply-loop");
    if (context.supply->earthing == Earthing::Unknown) sheet.lacks(*context.supply, "earthing");
    const auto loop = sheet.figure("Z_e", context.supplyReading, &SupplyReading::externalLoopImpedance,
                                   "externalLoopImpedance_ohm");
    const auto declared = context.tables.declaredExternalLoop(context.supply->earthing);
    if (!loop || !declared) return sheet.conclude();
    sheet.show([&] { return tableTerm("Z_e,max", declared->value, units::ohm, declared->source); });
    sheet.compare(Relation::AtMost, "Z_e", *loop, Figure<Resistance>{declared->value}, units::ohm);
    if (sheet.verdict() == Verdict::Fails) sheet.phrase(Verdict::Close, "check.supply-loop.above-usual");
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(measure(*loop, units::ohm), measure(declared->value, units::ohm));
}

} // namespace loopwright
