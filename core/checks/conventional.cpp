// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/physics/overload.h"

#include <algorithm>

namespace loopwright {
namespace {

/// I_2. Some rules take some families to operate in their cables at the conventional factor itself, whatever
/// the open test arrangement of their standard gives (IEC 60269-1, cable overload test).
std::optional<Current> operatingCurrent(const CircuitContext& context, const DeviceFamily& family,
                                        Current rated, Worksheet& sheet) {
    const RuleSet& rules = context.rules;
    if (std::ranges::find(rules.conventionalByRating, family.key) != rules.conventionalByRating.end()) {
        const Current operating = physics::conventionalOperatingCurrent(rated, rules.conventionalFactor);
        sheet.show([&] {
            return ruleTerm("I_2", operating, units::ampere, rules.sourceOf("conventionalByRating"),
                            {"check.note.conventional-by-rating", {}});
        });
        return operating;
    }
    const auto currents = context.tables.conventionalCurrents(family, rated);
    if (!currents) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return std::nullopt;
    }
    const Current operating = physics::conventionalOperatingCurrent(rated, currents->operatingMultiple);
    sheet.show(
        [&] { return tableTerm("I_2/I_n", currents->operatingMultiple, units::ratio, currents->source); });
    sheet.show([&] { return computedTerm("I_2", operating, units::ampere); });
    return operating;
}

} // namespace

/// I_2 ≤ 1.45 I_z (IEC 60364-4-43, 433.1, condition 2). For a rewirable fuse (I_2 = 2 I_n) this is the factor
/// of 0.725 on the wiring's capacity.
Finding checkConventional(const CircuitContext& context) {
    Worksheet sheet(phrasing<"conventional">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.circuit.topology == Topology::Ring) return sheet.doesNotApply("check.conventional.ring");
    sheet.formula("I_2 ≤ 1.45 I_z");
    sheet.clause("conventional");
    const auto rated = ratedCurrent(context, sheet);
    const DeviceFamily* family = deviceFamily(context, sheet);
    const auto capacity = wiringCapacity(context, context, sheet);
    const auto operating = rated && family ? operatingCurrent(context, *family, *rated, sheet) : std::nullopt;
    if (!operating || !capacity) return sheet.conclude();

    const Current limit = physics::largestOperatingCurrent(*capacity, context.rules.conventionalFactor);
    sheet.compare(Relation::AtMost, "I_2", Figure<Current>{*operating}, Figure<Current>{limit},
                  units::ampere);
    return sheet.conclude(deviceWord(family), measure(*operating, units::ampere),
                          measure(limit, units::ampere));
}

} // namespace loopwright
