// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"
#include "core/physics/loop.h"

#include <algorithm>

namespace loopwright {
namespace {

/// Two resistances that should agree, and what to say where they do not.
struct Pair {
    std::string_view symbol; ///< of the difference
    Figure<Resistance> read;
    Figure<Resistance> expected;
    Ratio tolerance;
    std::string_view toleranceKey;
    std::string_view failure;
};

/// The pair that decides.
struct Deciding {
    Figure<Resistance> read;
    Figure<Resistance> expected;
};

/// The difference of two readings of which one may lie beyond the instrument's range, as that of an open leg
/// does: it then is at least this large, provided that the bound parts them further.
Figure<Ratio> differenceOf(const Figure<Resistance>& a, const Figure<Resistance>& b) {
    const auto& [smaller, larger] =
        std::minmax(a, b, [](const auto& x, const auto& y) { return x.value < y.value; });
    const bool mayMeet = larger.bound == Bound::OrLess || smaller.bound == Bound::OrMore;
    const Bound bound = mayMeet ? Bound::Open : combined(larger.bound, reversed(smaller.bound));
    return {physics::difference(a.value, b.value), bound};
}

void comparePair(const RuleSet& rules, const Pair& pair, Worksheet& sheet, Deciding& deciding) {
    sheet.show(
        [&] { return ruleTerm("Δ_max", pair.tolerance, units::percent, rules.sourceOf(pair.toleranceKey)); });
    if (!sheet.compare(Relation::AtMost, pair.symbol, differenceOf(pair.read, pair.expected),
                       Figure<Ratio>{pair.tolerance}, units::percent))
        return;
    sheet.phrase(Verdict::Fails, pair.failure);
    deciding = {pair.read, pair.expected};
}

/// The highest reading of R_1+R_2 lies above that of the ring itself where a spur hangs on it. What is beyond
/// the instrument's range is no spur but an open leg.
bool isSpur(const Figure<Resistance>& continuity, const Figure<Resistance>& whole, const RuleSet& rules) {
    return continuity.bound == Bound::Exact && continuity.value > whole.value &&
           physics::difference(continuity.value, whole.value) > rules.ringProtectiveTolerance;
}

/// r_2 that r_1 leads to expect from the sizes of the conductors.
std::optional<Figure<Resistance>> expectedProtective(const CircuitContext& context,
                                                     const Figure<Resistance>& line, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto lineSize = sheet.exact("S", context.circuit, wiring.lineSize, "wiring.lineSize_mm2");
    const auto size = sheet.exact("S_2", context.circuit, wiring.protectiveSize, "wiring.protectiveSize_mm2");
    if (!lineSize || !size) return std::nullopt;
    const auto perLine = context.tables.conductorResistance(wiring.material, *lineSize);
    const auto perProtective = context.tables.conductorResistance(wiring.material, *size);
    if (!perLine || !perProtective) {
        sheet.unpublished(context.circuit, perLine ? "wiring.protectiveSize_mm2" : "wiring.lineSize_mm2");
        return std::nullopt;
    }
    sheet.show([&] { return tableTerm("R/l", perLine->value, units::milliohmPerMetre, perLine->source); });
    sheet.show([&] {
        return tableTerm("R_2/l", perProtective->value, units::milliohmPerMetre, perProtective->source);
    });
    const Resistance expected =
        physics::ringProtectiveExpected(line.value, perProtective->value / perLine->value);
    sheet.show([&] { return computedTerm("r_2,exp", expected, units::ohm); });
    return Figure<Resistance>{expected, line.bound};
}

} // namespace

/// A ring that is whole reads r_1 ≈ r_n, r_2 in proportion to the sizes, and R_1+R_2 ≈ (r_1 + r_2) / 4.
Finding checkRing(const CircuitContext& context) {
    Worksheet sheet(phrasing<"ring">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.circuit.topology != Topology::Ring) return sheet.doesNotApply("check.ring.radial");
    const RuleSet& rules = context.rules;
    sheet.formula("r_1 ≈ r_n, r_2 ≈ r_1 S/S_2, R_1+R_2 ≈ (r_1 + r_2)/4");
    sheet.clause("ring-readings");
    const auto read = [&](std::string_view symbol, Entry<Resistance> CircuitReading::*member,
                          std::string_view field) {
        return sheet.figure(symbol, context.reading, member, field);
    };
    const auto line = read("r_1", &CircuitReading::ringLine, "ringLine_ohm");
    const auto neutral = read("r_n", &CircuitReading::ringNeutral, "ringNeutral_ohm");
    const auto protective = read("r_2", &CircuitReading::ringProtective, "ringProtective_ohm");
    const auto continuity = read("R_1+R_2", &CircuitReading::continuity, "continuity_ohm");

    Deciding deciding;
    if (line && neutral)
        comparePair(rules,
                    {"Δ(r_1, r_n)", *line, *neutral, rules.ringTolerance, "ringTolerance",
                     "check.ring.fails-neutral"},
                    sheet, deciding);
    const auto expected = line ? expectedProtective(context, *line, sheet) : std::nullopt;
    if (expected && protective)
        comparePair(rules,
                    {"Δ(r_2)", *protective, *expected, rules.ringProtectiveTolerance,
                     "ringProtectiveTolerance", "check.ring.fails-protective"},
                    sheet, deciding);
    if (line && protective && continuity) {
        const auto whole =
            rising(physics::ringLineAndProtective(line->value, protective->value), *line, *protective);
        sheet.show([&] { return computedTerm("(r_1+r_2)/4", whole.value, units::ohm); });
        const Pair pair{"Δ(R_1+R_2)",
                        *continuity,
                        whole,
                        rules.ringProtectiveTolerance,
                        "ringProtectiveTolerance",
                        "check.ring.fails-continuity"};
        if (!isSpur(*continuity, whole, rules)) {
            comparePair(rules, pair, sheet, deciding);
        } else if (!sheet.hasVerdict() || sheet.verdict() == Verdict::Holds) {
            comparePair(rules, pair, sheet, deciding);
            sheet.atWorst(Verdict::Close);
            sheet.phrase(Verdict::Close, "check.ring.spur");
        }
    }
    return sheet.conclude(measure(deciding.read, units::ohm), measure(deciding.expected, units::ohm));
}

} // namespace loopwright
