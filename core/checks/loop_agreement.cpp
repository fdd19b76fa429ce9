// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"
#include "core/physics/loop.h"

namespace loopwright {
namespace {

bool isReadAtBoard(const CircuitContext& context) {
    return context.boardReading && context.boardReading->loopImpedance.hasFigure();
}

/// The loop up to where the circuit begins: read at its board, else at the supply where nothing lies between.
std::optional<Figure<Resistance>> loopAtStart(const CircuitContext& context, Worksheet& sheet) {
    if (!isReadAtBoard(context) && context.feeders.empty() && context.supplyReading &&
        context.supplyReading->externalLoopImpedance.hasFigure())
        return sheet.figure("Z_e", context.supplyReading, &SupplyReading::externalLoopImpedance,
                            "externalLoopImpedance_ohm");
    return sheet.figure("Z_db", context.boardReading, &BoardReading::loopImpedance, "loopImpedance_ohm");
}

/// Z_db was read with everything connected, so that whatever lies alongside shares in it already and Z_s,
/// which goes further, cannot be far below it. (Z_e is read with the installation's earth apart, and Z_s may
/// be.)
bool isFarBelowStart(const CircuitContext& context, const Figure<Resistance>& loop,
                     const Figure<Resistance>& start) {
    const bool mayBeMore = loop.bound == Bound::OrMore || loop.bound == Bound::Open;
    const bool startMayBeLess = start.bound == Bound::OrLess || start.bound == Bound::Open;
    if (!isReadAtBoard(context) || mayBeMore || startMayBeLess) return false;
    const Ratio share = context.tables.band(Band::LoopShare).value;
    return loop.value < start.value * (1 - share) - ohms(context.tables.band(Band::LoopAllowance).value);
}

} // namespace

/// Z_s ≈ Z_db + (R_1+R_2) (IEC 60364-6, 6.4.3.7, note; IET Guidance Note 3). Less is usual, as other metal in
/// contact with earth shares the current; far less than the loop where the circuit begins is not. Far more
/// means that something lies in the loop that was not in the test of continuity, or that one of the readings
/// is wrong.
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
    if (!isFarBelowStart(context, *loop, *start))
        return sheet.conclude(measure(*loop, units::ohm), measure(sum.value, units::ohm, 2));
    sheet.decide(Verdict::Close);
    sheet.phrase(Verdict::Close, "check.loop-agreement.below-start");
    return sheet.conclude(measure(*loop, units::ohm), measure(*start, units::ohm));
}

} // namespace loopwright
