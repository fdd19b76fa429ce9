// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/prospective.h"

namespace loopwright {

/// I_pf ≤ the prospective current that the board may be used at (IEC 61439-1, 9.3).
Finding checkBoardWithstand(const BoardContext& context) {
    Worksheet sheet(phrasing<"board-withstand">, context, {RecordKind::Board, context.board.id});
    sheet.formula("I_pf ≤ I_cc");
    sheet.clause("breaking-capacity");
    const auto current = prospectiveCurrent(context, sheet, "I_pf", usable(context.board.withstandCurrent));
    const auto withstand =
        sheet.figure("I_cc", context.board, context.board.withstandCurrent, "withstandCurrent_kA");
    if (!current || !withstand) return sheet.conclude();
    sheet.compare(Relation::AtMost, "I_pf", *current, *withstand, units::kiloampere);
    return sheet.conclude(measure(*current, units::kiloampere), measure(*withstand, units::kiloampere));
}

} // namespace loopwright
