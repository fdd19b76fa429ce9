// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/worksheet.h"
#include "core/physics/loop.h"

namespace loopwright {
namespace {

std::optional<Sourced<ResistancePerLength>> perLength(const CircuitContext& context, CrossSection size,
                                                      std::string_view field, std::string_view symbol,
                                                      Worksheet& sheet) {
    auto found = context.tables.conductorResistance(context.circuit.wiring.material, size);
    if (found)
        sheet.show([&] { return tableTerm(symbol, found->value, units::milliohmPerMetre, found->source); });
    else
        sheet.unpublished(context.circuit, field);
    return found;
}

Temperature testTemperature(const CircuitContext& context, Worksheet& sheet) {
    const auto recorded = usable(context.visit.conductorTemperature);
    const Temperature atTest = recorded.value_or(context.rules.testTemperature);
    sheet.show([&] {
        return recorded ? recordedTerm("θ_test", context.visit.conductorTemperature, units::celsius)
                        : ruleTerm("θ_test", atTest, units::celsius,
                                   context.rules.sourceOf("testTemperature_degC"));
    });
    return atTest;
}

/// R_1+R_2 that length and sizes lead to expect at the temperature of the test; of a ring a quarter of that
/// of its whole length.
std::optional<Resistance> expectedContinuity(const CircuitContext& context, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto size = sheet.exact("S", context.circuit, wiring.lineSize, "wiring.lineSize_mm2");
    const auto protectiveSize =
        sheet.exact("S_2", context.circuit, wiring.protectiveSize, "wiring.protectiveSize_mm2");
    const auto length = sheet.exact("l", context.circuit, wiring.length, "wiring.length_m");
    const auto parallel = parallelConductors(context.circuit, sheet);
    if (!size || !protectiveSize || !length || !parallel) return std::nullopt;
    const auto line = perLength(context, *size, "wiring.lineSize_mm2", "R/l", sheet);
    const auto protective = perLength(context, *protectiveSize, "wiring.protectiveSize_mm2", "R_2/l", sheet);
    if (!line || !protective) return std::nullopt;

    const bool isRing = context.circuit.topology == Topology::Ring;
    const Resistance lineResistance = physics::conductorResistance(line->value, *length, *parallel);
    const Resistance protectiveResistance = physics::conductorResistance(protective->value, *length);
    const Resistance atTwenty = isRing ? physics::ringLineAndProtective(lineResistance, protectiveResistance)
                                       : lineResistance + protectiveResistance;
    const auto coefficient = context.tables.temperatureCoefficient(wiring.material);
    constexpr Temperature published = celsius(20); // of IEC 60228
    return physics::atTemperature(atTwenty, published, testTemperature(context, sheet), coefficient.value);
}

} // namespace

/// R_1+R_2 ≈ (R/l + R_2/l) l. A reading far above tells of a poor joint, or of a length or size that is
/// recorded wrong; one far below of another path or of wrong records.
Finding checkContinuityAgreement(const CircuitContext& context) {
    Worksheet sheet(phrasing<"continuity-agreement">, context, {RecordKind::Circuit, context.circuit.id});
    const Wiring& wiring = context.circuit.wiring;
    if (wiring.protectiveConductor == ProtectiveConductor::Armour ||
        wiring.protectiveConductor == ProtectiveConductor::Conduit)
        return sheet.doesNotApply("check.continuity-agreement.steel");
    sheet.formula("R_1+R_2 ≈ (R/l + R_2/l) l");
    const auto reading =
        sheet.figure("R_1+R_2", context.reading, &CircuitReading::continuity, "continuity_ohm", Zero::Counts);
    const auto expected = expectedContinuity(context, sheet);
    if (!reading || !expected) return sheet.conclude();

    const auto& share = context.tables.band(Band::ContinuityShare);
    const auto& allowance = context.tables.band(Band::ContinuityAllowance);
    sheet.show([&] { return computedTerm("(R_1+R_2)_exp", *expected, units::ohm); });
    sheet.show([&] { return tableTerm("Δ", share.value, units::percent, share.source); });
    sheet.show([&] { return tableTerm("Δ_0", ohms(allowance.value), units::ohm, allowance.source); });
    const Resistance most = *expected * (1 + share.value) + ohms(allowance.value);
    const Resistance least = *expected * (1 - share.value) - ohms(allowance.value);
    sheet.compareTolerance(Relation::AtMost, "R_1+R_2", *reading, Figure<Resistance>{most}, units::ohm);
    const bool isLow = reading->bound != Bound::OrMore && reading->value < least;
    if (isLow) {
        sheet.decide(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.continuity-agreement.low");
    }
    if (wiring.length.origin == Origin::Assumed) {
        sheet.atWorst(Verdict::Close);
        if (!isLow) sheet.phrase(Verdict::Close, "check.continuity-agreement.assumed");
    }
    return sheet.conclude(measure(*reading, units::ohm), measure(*expected, units::ohm, 2));
}

} // namespace loopwright
