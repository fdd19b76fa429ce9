// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/needed_readings.h"
#include "core/checks/worksheet.h"

namespace loopwright {
namespace {

template <class Record, class Reading>
Finding completeness(const VisitContext& visit, const Record& record, const Reading* reading) {
    Worksheet sheet(phrasing<"completeness">, visit, {RecordTraits<Record>::kind, record.id});
    sheet.clause("completeness");
    std::int64_t recorded = 0;
    forEachNeeded(record, reading, [&](const NeededReading& needed) {
        const Id id = reading ? reading->id : Id{};
        switch (needed.state) {
        case EntryState::Missing:
            return sheet.lacks(RecordTraits<Reading>::kind, id, needed.field);
        case EntryState::Limited:
            return sheet.limited(RecordTraits<Reading>::kind, id, needed.field, needed.reason);
        case EntryState::NotApplicable:
            return;
        default:
            ++recorded;
        }
    });
    sheet.decide(Verdict::Holds);
    return sheet.conclude(recorded);
}

} // namespace

/// Whether every reading that this kind of circuit needs is there.
Finding checkCompleteness(const CircuitContext& context) {
    if (!isInUse(context.circuit))
        return Worksheet(phrasing<"completeness">, context, {RecordKind::Circuit, context.circuit.id})
            .doesNotApply(context.circuit.takenOut ? "check.taken-out" : "check.spare");
    return completeness(context, context.circuit, context.reading);
}

Finding checkBoardCompleteness(const BoardContext& context) {
    return completeness(context, context.board, context.boardReading);
}

Finding checkSupplyCompleteness(const VisitContext& context) {
    return completeness(context, *context.supply, context.supplyReading);
}

} // namespace loopwright
