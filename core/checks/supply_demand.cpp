// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/demand.h"

namespace loopwright {
namespace {

/// I_z of the tails. Nothing is recorded of how they run: they are taken as copper with PVC insulation,
/// clipped to the wall, which is how tails usually are (common practice). Better insulation bears more, so
/// that no failure rests on this.
std::optional<Figure<Current>> tailsCapacity(const VisitContext& context, Worksheet& sheet) {
    const Supply& supply = *context.supply;
    const auto size = sheet.exact("S", supply, supply.tails, "tails_mm2");
    if (!size) return std::nullopt;
    const CableKey cable{InstallationMethod::C, Material::Copper, Insulation::Pvc70,
                         supply.phases == Phases::Three ? 3 : 2, *size};
    const auto capacity = context.tables.capacity(context.rules.capacityStandard, cable);
    if (!capacity) {
        sheet.unpublished(supply, "tails_mm2");
        return std::nullopt;
    }
    sheet.show([&] {
        return assumedTerm("I_z", capacity->value, units::ampere, {"check.note.tails-clipped", {}},
                           capacity->source);
    });
    sheet.leansOn(supply, "tails_mm2");
    return Figure<Current>{capacity->value, Bound::OrMore};
}

} // namespace

/// The demand of all boards in the most loaded line against the supply fuse and the tails (IEC 60364-1, 311;
/// IEC 60364-4-43, 433.1).
Finding checkSupplyDemand(const VisitContext& context) {
    const Supply& supply = *context.supply;
    Worksheet sheet(phrasing<"supply-demand">, context, {RecordKind::Supply, supply.id});
    // Boards do not say which of several supplies feeds them; they are taken to hang on the first.
    const bool isFirst = &supply == &context.installation.supplies.front();
    if (!isFirst && !supply.demand.hasFigure()) return sheet.doesNotApply("check.supply-demand.no-circuits");
    sheet.formula("I_d ≤ I_n; I_d ≤ I_z");
    sheet.clause("supply-demand");
    const Demand demand = demandAtIntake(context, sheet);
    if (demand.circuits == 0) return sheet.doesNotApply("check.supply-demand.no-circuits");
    const std::size_t line = demand.most();
    const Figure<Current>& asked = demand.lines[line];
    sheet.show([&] {
        return computedTerm("I_d", asked.value, units::ampere, {"check.note.demand-most", {lineWord(line)}});
    });

    Measure limit;
    Word word{"check.word.supply-fuse"};
    if (const auto rated = sheet.exact("I_n", supply, supply.fuse.ratedCurrent, "fuse.ratedCurrent_A"))
        if (sheet.compare(Relation::AtMost, "I_d", asked, Figure<Current>{*rated}, units::ampere))
            limit = measure(*rated, units::ampere);
    if (const auto capacity = tailsCapacity(context, sheet))
        if (sheet.compare(Relation::AtMost, "I_d", asked, *capacity, units::ampere)) {
            limit = measure(capacity->value, units::ampere);
            word = {"check.word.tails"};
        }
    return sheet.conclude(measure(asked, units::ampere), lineWord(line), limit, word);
}

} // namespace loopwright
