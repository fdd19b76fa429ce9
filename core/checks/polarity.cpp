// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {

Finding checkPolarity(const CircuitContext& context) {
    Worksheet sheet(phrasing<"polarity">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.clause("polarity");
    sheet.outcome(context.reading, &CircuitReading::polarity, "polarity");
    return sheet.conclude();
}

Finding checkBoardPolarity(const BoardContext& context) {
    Worksheet sheet(phrasing<"polarity">, context, {RecordKind::Board, context.board.id});
    sheet.clause("polarity");
    sheet.outcome(context.boardReading, &BoardReading::polarity, "polarity");
    return sheet.conclude();
}

Finding checkSupplyPolarity(const VisitContext& context) {
    Worksheet sheet(phrasing<"polarity">, context, {RecordKind::Supply, context.supply->id});
    sheet.clause("polarity");
    sheet.outcome(context.supplyReading, &SupplyReading::polarity, "polarity");
    return sheet.conclude();
}

} // namespace loopwright
