// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {
namespace {

/// The last day of the visit before.
std::optional<Date> lastDayBefore(const VisitContext& visit) {
    if (!visit.visitBefore) return std::nullopt;
    return visit.visitBefore->ended ? visit.visitBefore->ended : visit.visitBefore->started;
}

bool isAfter(const std::optional<Date>& day, const Date& other) {
    return day && *day > other;
}

/// The piece that came into use last, of those whose day is known.
const Equipment* newest(const CircuitRecords& records) {
    const Equipment* found = nullptr;
    for (const Equipment* equipment : records.equipment)
        if (equipment->since && (!found || *equipment->since > *found->since)) found = equipment;
    return found;
}

} // namespace

/// What was changed since the visit before, by the days that are recorded. New equipment on a device and a
/// wiring that were chosen for what was there before is how circuits become overloaded while they still work;
/// a device that was changed alone may have been changed because it operated. Neither is a fault in itself,
/// so that the worst verdict is close.
Finding checkChanged(const CircuitContext& context) {
    const Circuit& circuit = context.circuit;
    Worksheet sheet(phrasing<"changed">, context, {RecordKind::Circuit, circuit.id});
    const auto before = lastDayBefore(context);
    if (!before) return sheet.doesNotApply("check.changed.nothing-before");
    const Equipment* equipment = newest(context);
    if (!equipment && !circuit.deviceSince && !circuit.wiringSince)
        return sheet.doesNotApply("check.changed.not-recorded");
    sheet.clause("changed");
    const bool hasNewEquipment = equipment && isAfter(equipment->since, *before);
    const bool hasNewDevice = isAfter(circuit.deviceSince, *before);
    const bool hasNewWiring = isAfter(circuit.wiringSince, *before);
    if (hasNewEquipment && !hasNewDevice && !hasNewWiring) {
        sheet.decide(Verdict::Close);
        return sheet.conclude(equipment->name);
    }
    const bool isDeviceAlone = hasNewDevice && !hasNewEquipment && !hasNewWiring;
    sheet.decide(isDeviceAlone ? Verdict::Close : Verdict::Holds);
    sheet.phrase(Verdict::Close, "check.changed.device");
    if (hasNewEquipment || hasNewWiring) sheet.phrase(Verdict::Holds, "check.changed.together");
    return sheet.conclude();
}

} // namespace loopwright
