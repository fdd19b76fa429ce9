// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/device.h"
#include "core/physics/overload.h"

#include <algorithm>

namespace loopwright {
namespace {

Figure<Current> operatingAt(Current setting, Ratio multiple, const Source& source, std::string_view symbol,
                            Worksheet& sheet) {
    const Current operating = physics::conventionalOperatingCurrent(setting, multiple);
    sheet.show([&] { return tableTerm(symbol, multiple, units::ratio, source); });
    sheet.show([&] { return computedTerm("I_2", operating, units::ampere); });
    return {operating};
}

/// I_2 of an adjustable breaker goes by its setting, which is no more than its rating where nobody read it.
std::optional<Figure<Current>> settingsOperate(const CircuitContext& context, Current rated,
                                               Worksheet& sheet) {
    const auto& recorded = context.circuit.device.thermalSetting;
    const bool isSet = recorded.hasFigure();
    const auto setting = isSet ? sheet.exact("I_r", context.circuit, recorded, "device.thermalSetting_A")
                               : std::optional(rated);
    if (!setting) return std::nullopt;
    const auto spreads = context.tables.breakerSpreads(rated);
    auto operating = operatingAt(*setting, spreads.value.conventional.high, spreads.source, "I_2/I_r", sheet);
    if (!isSet) {
        operating.bound = Bound::OrLess;
        sheet.leansOn(context.circuit, "device.thermalSetting_A");
    }
    return operating;
}

/// I_2. Some rules take some families to operate in their cables at the conventional factor itself, whatever
/// the open test arrangement of their standard gives (IEC 60269-1, cable overload test).
std::optional<Figure<Current>> operatingCurrent(const CircuitContext& context, const DeviceFamily& family,
                                                Current rated, Worksheet& sheet) {
    const RuleSet& rules = context.rules;
    if (std::ranges::find(rules.conventionalByRating, family.key) != rules.conventionalByRating.end()) {
        const Current operating = physics::conventionalOperatingCurrent(rated, rules.conventionalFactor);
        sheet.show([&] {
            return ruleTerm("I_2", operating, units::ampere, rules.sourceOf("conventionalByRating"),
                            {"check.note.conventional-by-rating", {}});
        });
        return Figure<Current>{operating};
    }
    if (family.adjustable) return settingsOperate(context, rated, sheet);
    const auto currents = context.tables.conventionalCurrents(family, rated);
    if (!currents) {
        sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return std::nullopt;
    }
    return operatingAt(rated, currents->operatingMultiple, currents->source, "I_2/I_n", sheet);
}

} // namespace

/// I_2 ≤ 1.45 I_z (IEC 60364-4-43, 433.1, condition 2). For a rewirable fuse (I_2 = 2 I_n) this is the factor
/// of 0.725 on the wiring's capacity.
Finding checkConventional(const CircuitContext& context) {
    Worksheet sheet(phrasing<"conventional">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.circuit.topology == Topology::Ring) return sheet.doesNotApply("check.conventional.ring");
    sheet.formula(isLoweredForOverload(context, context.circuit) ? "I_2 ≤ 1.45 C_c I_z" : "I_2 ≤ 1.45 I_z");
    sheet.clause("conventional");
    const auto rated = ratedCurrent(context, sheet);
    const DeviceFamily* family = deviceFamily(context, sheet);
    const auto capacity = protectedCapacity(context, context, sheet);
    const auto operating = rated && family ? operatingCurrent(context, *family, *rated, sheet) : std::nullopt;
    if (!operating || !capacity) return sheet.conclude();

    const Current limit = physics::largestOperatingCurrent(*capacity, context.rules.conventionalFactor);
    sheet.compare(Relation::AtMost, "I_2", *operating, Figure<Current>{limit}, units::ampere);
    return sheet.conclude(deviceWord(family), measure(*operating, units::ampere),
                          measure(limit, units::ampere));
}

} // namespace loopwright
