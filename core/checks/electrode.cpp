// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {
namespace {

/// An electrode above the practical limit may drift with the seasons; that is a warning, not a failure,
/// because the touch voltage is judged by the circuits.
template <class Reading>
Finding electrode(const VisitContext& visit, const Reading* reading, Worksheet&& sheet) {
    sheet.formula("R_A ≤ R_A,max");
    sheet.clause("electrode");
    const Sourced<Resistance>& limit = visit.tables.stableElectrode();
    const auto resistance =
        sheet.figure("R_A", reading, &Reading::electrodeResistance, "electrodeResistance_ohm");
    if (!resistance) return sheet.conclude();
    sheet.show([&] { return tableTerm("R_A,max", limit.value, units::ohm, limit.source); });
    sheet.compare(Relation::AtMost, "R_A", *resistance, Figure<Resistance>{limit.value}, units::ohm);
    if (sheet.verdict() == Verdict::Fails) sheet.phrase(Verdict::Close, "check.electrode.unstable");
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(measure(*resistance, units::ohm), measure(limit.value, units::ohm));
}

} // namespace

Finding checkBoardElectrode(const BoardContext& context) {
    Worksheet sheet(phrasing<"electrode">, context, {RecordKind::Board, context.board.id});
    if (context.board.earthing != BoardEarthing::OwnElectrode)
        return sheet.doesNotApply("check.electrode.none");
    return electrode(context, context.boardReading, std::move(sheet));
}

Finding checkSupplyElectrode(const VisitContext& context) {
    Worksheet sheet(phrasing<"electrode">, context, {RecordKind::Supply, context.supply->id});
    if (context.supply->earthing != Earthing::Tt) return sheet.doesNotApply("check.electrode.none");
    return electrode(context, context.supplyReading, std::move(sheet));
}

} // namespace loopwright
