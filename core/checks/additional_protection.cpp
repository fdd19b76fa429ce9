// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/residual_path.h"

#include <algorithm>

namespace loopwright {
namespace {

/// Sockets that anyone may use, sockets outdoors, and equipment that is carried about outdoors. A fixed lamp
/// outdoors asks for none.
bool mayAskForOutlets(const CircuitRecords& records) {
    const Circuit& circuit = records.circuit;
    const bool sockets = circuit.use == CircuitUse::Sockets;
    const bool mobile =
        std::ranges::any_of(records.equipment, [](const Equipment* each) { return !each->fixed; });
    return (sockets && circuit.generalSockets) || (circuit.outdoors && (sockets || mobile));
}

/// Lights in a dwelling, of whatever rating.
bool asksForLights(const CircuitContext& context) {
    return context.rules.additionalProtectionLighting && context.circuit.use == CircuitUse::Lighting &&
           context.installation.site.occupancy == Occupancy::Dwelling;
}

} // namespace

/// I_Δn ≤ 30 mA for sockets that anyone may use, for what is used outdoors (IEC 60364-4-41, 411.3.3), and for
/// the lights of a dwelling (411.3.4). A delayed device does not count: it is not quick enough for a person.
Finding checkAdditionalProtection(const CircuitContext& context) {
    Worksheet sheet(phrasing<"additional-protection">, context, {RecordKind::Circuit, context.circuit.id});
    const bool ofLights = asksForLights(context);
    if (!ofLights && !mayAskForOutlets(context))
        return sheet.doesNotApply("check.additional-protection.not-asked");
    const RuleSet& rules = context.rules;
    sheet.formula("I_Δn ≤ I_Δn,max");
    sheet.clause(ofLights ? std::string_view("additional-protection-lighting") : "additional-protection");
    if (!ofLights) {
        const auto rated = ratedCurrent(context, sheet);
        if (!rated) return sheet.conclude();
        if (*rated > rules.additionalProtectionSocketsUpTo)
            return sheet.doesNotApply("check.additional-protection.larger");
    }

    sheet.show([&] {
        return ruleTerm("I_Δn,max", rules.additionalProtection, units::milliampere,
                        rules.sourceOf("additionalProtection_mA"));
    });
    const Measure limit = measure(rules.additionalProtection, units::milliampere);
    const auto path = mostSensitive(
        context, [](const ResidualDevice& device) { return device.delay == ResidualDelay::General; });
    if (!path) {
        sheet.decide(Verdict::Fails);
        sheet.phrase(Verdict::Fails, ofLights ? std::string_view("check.additional-protection.none-lights")
                                              : "check.additional-protection.none");
        return sheet.conclude(limit);
    }
    const auto residual = residualCurrent(*path, sheet);
    if (!residual) return sheet.conclude();
    sheet.compareRatings(Relation::AtMost, "I_Δn", *residual, rules.additionalProtection, units::milliampere);
    return sheet.conclude(measure(*residual, units::milliampere), limit);
}

} // namespace loopwright
