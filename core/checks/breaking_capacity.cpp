// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/prospective.h"

namespace loopwright {
namespace {

/// At the circuit's own device, where somebody read it there; otherwise the board's.
std::optional<Figure<Current>> prospective(const CircuitContext& context, Worksheet& sheet) {
    if (context.reading && context.reading->prospectiveFaultCurrent.hasFigure())
        return sheet.figure("I_pf", context.reading, &CircuitReading::prospectiveFaultCurrent,
                            "prospectiveFaultCurrent_kA");
    return prospectiveCurrent(context, sheet);
}

/// What is marked on the device. Where nobody recorded it, the least of its family, which it may well exceed.
std::optional<Figure<Current>> capacity(const CircuitContext& context, Worksheet& sheet) {
    const Entry<Current>& marked = context.circuit.device.breakingCapacity;
    if (marked.isMissing() && context.family)
        if (const auto least = context.tables.leastBreakingCapacity(*context.family)) {
            sheet.show([&] {
                return assumedTerm("I_cn", least->value, units::kiloampere,
                                   {"check.note.least-of-family", {}}, least->source);
            });
            sheet.leansOn(context.circuit, "device.breakingCapacity_kA");
            return Figure<Current>{least->value, Bound::OrMore};
        }
    return sheet.figure("I_cn", context.circuit, marked, "device.breakingCapacity_kA");
}

} // namespace

/// I_pf ≤ I_cn (IEC 60364-4-43, 434.5.1).
Finding checkBreakingCapacity(const CircuitContext& context) {
    Worksheet sheet(phrasing<"breaking-capacity">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("I_pf ≤ I_cn");
    sheet.clause("breaking-capacity");
    const auto current = prospective(context, sheet);
    const auto limit = capacity(context, sheet);
    if (!current || !limit) return sheet.conclude();
    sheet.compare(Relation::AtMost, "I_pf", *current, *limit, units::kiloampere);
    return sheet.conclude(measure(*current, units::kiloampere), deviceWord(context.family),
                          measure(*limit, units::kiloampere));
}

} // namespace loopwright
