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

/// Far more than what is expected: no poor joint, but a leg that ends somewhere.
bool isOpen(const CircuitContext& context, const Figure<Resistance>& read, Resistance expected) {
    return read.bound != Bound::OrLess &&
           read.value > expected * context.tables.band(Band::RingOpenMultiple).value;
}

/// The highest reading of R_1+R_2 lies above that of the ring itself where a spur hangs on it. What is far
/// above, or beyond the instrument's range, is no spur but an open leg.
bool isSpur(const CircuitContext& context, const Figure<Resistance>& continuity,
            const Figure<Resistance>& whole) {
    return continuity.bound == Bound::Exact && continuity.value > whole.value &&
           !isOpen(context, continuity, whole.value) &&
           physics::difference(continuity.value, whole.value) > context.rules.ringProtectiveTolerance;
}

/// Resistances per length of the line and the protective conductor.
struct PerLength {
    ResistancePerLength line;
    ResistancePerLength protective;
};

std::optional<PerLength> perLength(const CircuitContext& context, Worksheet& sheet) {
    const Wiring& wiring = context.circuit.wiring;
    const auto lineSize = sheet.exact("S", context.circuit, wiring.lineSize, "wiring.lineSize_mm2");
    const auto size = sheet.exact("S_2", context.circuit, wiring.protectiveSize, "wiring.protectiveSize_mm2");
    if (!lineSize || !size) return std::nullopt;
    const auto line = context.tables.conductorResistance(wiring.material, *lineSize);
    const auto protective = context.tables.conductorResistance(wiring.material, *size);
    if (!line || !protective) {
        sheet.unpublished(context.circuit, line ? "wiring.protectiveSize_mm2" : "wiring.lineSize_mm2");
        return std::nullopt;
    }
    sheet.show([&] { return tableTerm("R/l", line->value, units::milliohmPerMetre, line->source); });
    sheet.show(
        [&] { return tableTerm("R_2/l", protective->value, units::milliohmPerMetre, protective->source); });
    return PerLength{line->value, protective->value};
}

/// What a ring's ends read, where they were read.
struct Ends {
    std::optional<Figure<Resistance>> line;
    std::optional<Figure<Resistance>> neutral;
    std::optional<Figure<Resistance>> protective;
    std::optional<PerLength> conductors;
    std::optional<Length> length; ///< recorded, around the ring

    /// r_1 that the recorded length leads to expect.
    std::optional<Resistance> lineByLength() const {
        if (!conductors || !length) return std::nullopt;
        return physics::conductorResistance(conductors->line, *length);
    }
    /// The smaller of line and neutral, which an open leg does not spoil.
    std::optional<Figure<Resistance>> soundLine() const {
        return line && neutral && neutral->value < line->value ? neutral : line;
    }
    /// r_2 that it leads to expect from the sizes of the conductors.
    std::optional<Figure<Resistance>> protectiveExpected() const {
        const auto sound = soundLine();
        if (!sound || !conductors) return std::nullopt;
        return Figure<Resistance>{
            physics::ringProtectiveExpected(sound->value, conductors->protective / conductors->line),
            sound->bound};
    }
};

/// r_1 ≈ r_n. Returns whether a leg of them is open.
bool compareLineAndNeutral(const CircuitContext& context, const Ends& ends, Worksheet& sheet,
                           Deciding& deciding) {
    if (!ends.line || !ends.neutral) return false;
    const RuleSet& rules = context.rules;
    const bool lineOpen = isOpen(context, *ends.line, ends.neutral->value);
    const bool neutralOpen = isOpen(context, *ends.neutral, ends.line->value);
    const std::string_view failure = lineOpen      ? "check.ring.open-line"
                                     : neutralOpen ? "check.ring.open-neutral"
                                                   : "check.ring.fails-neutral";
    comparePair(rules,
                {"Δ(r_1, r_n)", neutralOpen ? *ends.neutral : *ends.line,
                 neutralOpen ? *ends.line : *ends.neutral, rules.ringTolerance, "ringTolerance", failure},
                sheet, deciding);
    return lineOpen || neutralOpen;
}

/// r_2 ≈ r_1 S/S_2. Returns whether its leg is open.
bool compareProtective(const CircuitContext& context, const Ends& ends, Worksheet& sheet,
                       Deciding& deciding) {
    const auto expected = ends.protectiveExpected();
    if (!expected) return false;
    sheet.show([&] { return computedTerm("r_2,exp", expected->value, units::ohm); });
    if (!ends.protective) return false;
    const RuleSet& rules = context.rules;
    const bool open = isOpen(context, *ends.protective, expected->value);
    comparePair(rules,
                {"Δ(r_2)", *ends.protective, *expected, rules.ringProtectiveTolerance,
                 "ringProtectiveTolerance",
                 open ? std::string_view("check.ring.open-protective") : "check.ring.fails-protective"},
                sheet, deciding);
    return open;
}

/// A link across the ring closes a loop inside it to the ends: they then read short of the recorded length,
/// while R_1+R_2 at the far side still follows the whole of it.
bool isFigureOfEight(const CircuitContext& context, const Ends& ends, const Figure<Resistance>& continuity) {
    const auto byLength = ends.lineByLength();
    if (!byLength || !ends.line) return false;
    const bool shortEnds =
        ends.line->value < *byLength * (1 - context.tables.band(Band::ContinuityShare).value);
    const Resistance whole = physics::ringLineAndProtective(
        *byLength, physics::conductorResistance(ends.conductors->protective, *ends.length));
    return shortEnds && continuity.value <= whole * (1 + context.rules.ringProtectiveTolerance);
}

/// R_1+R_2 ≈ (r_1 + r_2) / 4.
void compareContinuity(const CircuitContext& context, const Ends& ends, const Figure<Resistance>& continuity,
                       Worksheet& sheet, Deciding& deciding) {
    const RuleSet& rules = context.rules;
    const auto whole = rising(physics::ringLineAndProtective(ends.line->value, ends.protective->value),
                              *ends.line, *ends.protective);
    sheet.show([&] { return computedTerm("(r_1+r_2)/4", whole.value, units::ohm); });
    const Pair pair{"Δ(R_1+R_2)",
                    continuity,
                    whole,
                    rules.ringProtectiveTolerance,
                    "ringProtectiveTolerance",
                    "check.ring.fails-continuity"};
    if (!isSpur(context, continuity, whole)) {
        comparePair(rules, pair, sheet, deciding);
    } else if (!sheet.hasVerdict() || sheet.verdict() == Verdict::Holds) {
        comparePair(rules, pair, sheet, deciding);
        sheet.atWorst(Verdict::Close);
        sheet.phrase(Verdict::Close, isFigureOfEight(context, ends, continuity)
                                         ? std::string_view("check.ring.figure-of-eight")
                                         : "check.ring.spur");
    }
}

} // namespace

/// A ring that is whole reads r_1 ≈ r_n, r_2 in proportion to the sizes, and R_1+R_2 ≈ (r_1 + r_2) / 4. Where
/// it does not, what is wrong is named as a suspicion: an open leg, a spur, a link across (figure of eight).
Finding checkRing(const CircuitContext& context) {
    Worksheet sheet(phrasing<"ring">, context, {RecordKind::Circuit, context.circuit.id});
    if (context.circuit.topology != Topology::Ring) return sheet.doesNotApply("check.ring.radial");
    sheet.formula("r_1 ≈ r_n, r_2 ≈ r_1 S/S_2, R_1+R_2 ≈ (r_1 + r_2)/4");
    sheet.clause("ring-readings");
    const auto read = [&](std::string_view symbol, Entry<Resistance> CircuitReading::*member,
                          std::string_view field) {
        return sheet.figure(symbol, context.reading, member, field);
    };
    Ends ends;
    ends.line = read("r_1", &CircuitReading::ringLine, "ringLine_ohm");
    ends.neutral = read("r_n", &CircuitReading::ringNeutral, "ringNeutral_ohm");
    ends.protective = read("r_2", &CircuitReading::ringProtective, "ringProtective_ohm");
    const auto continuity = read("R_1+R_2", &CircuitReading::continuity, "continuity_ohm");
    ends.conductors = perLength(context, sheet);
    ends.length = usable(context.circuit.wiring.length);

    Deciding deciding;
    const bool lineOpen = compareLineAndNeutral(context, ends, sheet, deciding);
    const bool protectiveOpen = compareProtective(context, ends, sheet, deciding);
    if (!lineOpen && !protectiveOpen && ends.line && ends.protective && continuity)
        compareContinuity(context, ends, *continuity, sheet, deciding);
    return sheet.conclude(measure(deciding.read, units::ohm), measure(deciding.expected, units::ohm));
}

} // namespace loopwright
