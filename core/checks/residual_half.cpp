// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {
namespace {

template <class Reading>
Finding residualHalf(const ResidualDevice& device, const Reading* reading, Worksheet&& sheet) {
    if (!device.fitted) return sheet.doesNotApply("check.residual-time.none");
    if (!reading || reading->residualHalf == TestOutcome::NotDone)
        return sheet.doesNotApply("check.residual-half.not-done");
    sheet.clause("residual-time");
    sheet.outcome(reading, &Reading::residualHalf, "residualHalf");
    return sheet.conclude();
}

} // namespace

/// Half the rated residual current must not operate the device (IEC 61008-1, 5.3.4: I_Δno = 0.5 I_Δn). Judged
/// where somebody tested it and not asked for otherwise.
Finding checkResidualHalf(const CircuitContext& context) {
    return residualHalf(
        context.circuit.residual, context.reading,
        Worksheet(phrasing<"residual-half">, context, {RecordKind::Circuit, context.circuit.id}));
}

Finding checkBoardResidualHalf(const BoardContext& context) {
    return residualHalf(context.board.residual, context.boardReading,
                        Worksheet(phrasing<"residual-half">, context, {RecordKind::Board, context.board.id}));
}

} // namespace loopwright
