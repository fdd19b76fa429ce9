// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

#include <algorithm>

namespace loopwright {
namespace {

std::optional<Date> lastDayOf(const Visit& visit) {
    return visit.ended ? visit.ended : visit.started;
}

/// The days after the visit before, up to the last of this one: what came later is for the next to find.
struct Between {
    Date before;
    std::optional<Date> until;

    bool has(const std::optional<Date>& day) const {
        return day && *day > before && (!until || *day <= *until);
    }
};

/// The piece that came into use last between the visits.
const Equipment* newest(const CircuitRecords& records, const Between& visits) {
    const Equipment* found = nullptr;
    for (const Equipment* equipment : records.equipment)
        if (visits.has(equipment->since) && (!found || *equipment->since > *found->since)) found = equipment;
    return found;
}

bool isAnyDayKnown(const CircuitContext& context) {
    return context.circuit.deviceSince || context.circuit.wiringSince ||
           std::ranges::any_of(context.equipment,
                               [](const Equipment* equipment) { return equipment->since.has_value(); });
}

} // namespace

/// What was changed since the visit before, by the days that are recorded. New equipment on a device and a
/// wiring that were chosen for what was there before is how circuits become overloaded while they still work;
/// a device that was changed alone may have been changed because it operated. Neither is a fault in itself,
/// so that the worst verdict is close.
Finding checkChanged(const CircuitContext& context) {
    const Circuit& circuit = context.circuit;
    Worksheet sheet(phrasing<"changed">, context, {RecordKind::Circuit, circuit.id});
    const auto before = context.visitBefore ? lastDayOf(*context.visitBefore) : std::nullopt;
    if (!before) return sheet.doesNotApply("check.changed.nothing-before");
    if (!isAnyDayKnown(context)) return sheet.doesNotApply("check.changed.not-recorded");
    sheet.clause("changed");
    const Between visits{*before, lastDayOf(context.visit)};
    const Equipment* equipment = newest(context, visits);
    const bool hasNewEquipment = equipment != nullptr;
    const bool hasNewDevice = visits.has(circuit.deviceSince);
    const bool hasNewWiring = visits.has(circuit.wiringSince);
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
