// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/load_current.h"

#include <algorithm>

namespace loopwright {
namespace {

bool hasPlugFuse(const Equipment* equipment) {
    return !equipment->plugFuse.isMissing() && equipment->plugFuse.state != EntryState::NotApplicable;
}

} // namespace

/// I ≤ I_n of the fuse in a plug or fused outlet, for each piece of equipment that has one; the worst
/// decides.
Finding checkPlugFuse(const CircuitContext& context) {
    Worksheet sheet(phrasing<"plug-fuse">, context, {RecordKind::Circuit, context.circuit.id});
    if (std::ranges::none_of(context.equipment, hasPlugFuse))
        return sheet.doesNotApply("check.plug-fuse.none");
    sheet.formula("I ≤ I_n");
    sheet.clause("overload");

    const Equipment* deciding = nullptr;
    Figure<Current> load;
    Current rating;
    for (const Equipment* equipment : context.equipment) {
        if (!hasPlugFuse(equipment)) continue;
        const auto drawn = equipmentCurrent(context, context.circuit, *equipment, sheet);
        const auto rated = sheet.exact("I_n", *equipment, equipment->plugFuse, "plugFuse_A");
        if (!drawn || !rated) continue;
        sheet.show([&] {
            return computedTerm("I", drawn->each.value, units::ampere,
                                {"check.note.equipment", {equipment->name}});
        });
        if (sheet.compare(Relation::AtMost, "I", drawn->each, Figure<Current>{*rated}, units::ampere)) {
            deciding = equipment;
            load = drawn->each;
            rating = *rated;
        }
    }
    return sheet.conclude(deciding ? deciding->name : std::string(), measure(load, units::ampere),
                          measure(rating, units::ampere));
}

} // namespace loopwright
