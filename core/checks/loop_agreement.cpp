// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"
#include "core/physics/loop.h"

namespace loopwright {
namespace {

/// The loop up to where the circuit begins: read at its board, else at the supply where nothing lies between.
std::optional<Figure<Resistance>> loopAtStart(const CircuitContext& context, Worksheet& sheet) {
    const bool readAtBoard = context.boardReading && context.boardReading->loopImpedance.hasFigure();
    if (!readAtBoard && context.feeders.empty() && context.supplyReading &&
        context.supplyReading->externalLoopImpedance.hasFigure())
        return sheet.figure("Z_e", context.supplyReading, &SupplyReading::externalLoopImpedance,
                            "externalLoopImpedance_ohm");
    return sheet.figure("Z_db", context.boardReading, &BoardReading::loopImpedance, "loopImpedance_ohm");
}

} // namespace

/// Z_s ≈ Z_db + (R_1+R_2) (IEC 60364-6, 6.4.3.7, note; IET Guidance Note 3). Less is usual, as other metal in
/// contact with earth shares the current. Far more means that something lies in the loop that was not in the
/// test of continuity, or that one of the readings is wrong.
Finding checkLoopAgreement(const CircuitContext& context) {
    Worksheet sheet(phrasing<"loop-agreement">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("Z_s ≤ Z_db + (R_1+R_2), within Δ");
    const auto loop =
        sheet.figure("Z_s", context.reading, &CircuitReading::loopImpedance, "loopImpedance_ohm");
    const auto start = loopAtStart(context, sheet);
    const auto continuity =
        sheet.figure("R_1+R_2", context.reading, &CircuitReading::continuity, "continuity_ohm", Zero::Counts);
    if (!loop || !start || !continuity) return sheet.conclude();

    const auto sum = rising(physics::loopImpedance(start->value, continuity->value), *start, *continuity);
    const auto& share = context.tables.band(Band::LoopShare);
    const auto& allowance = context.tables.band(Band::LoopAllowance);
    const Figure<Resistance> limit{sum.value * (1 + share.value) + ohms(allowance.value), sum.bound};
    sheet.show([&] { return computedTerm("Z_db+(R_1+R_2)", sum.value, units::ohm); });
    sheet.show([&] { return tableTerm("Δ", share.value, units::percent, share.source); });
    sheet.show([&] { return tableTerm("Δ_0", ohms(allowance.value), units::ohm, allowance.source); });
    sheet.compareTolerance(Relation::AtMost, "Z_s", *loop, limit, units::ohm);
    if (loop->value < sum.value) sheet.phrase(Verdict::Holds, "check.loop-agreement.below");
    return sheet.conclude(measure(*loop, units::ohm), measure(sum.value, units::ohm, 2));
}

} // namespace loopwright
