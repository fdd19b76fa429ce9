// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {
namespace {

/// Whether the earthing is recorded, by which the tables part. Where it is not that is noted.
bool knowsEarthing(const VisitContext& context, Worksheet& sheet) {
    if (context.supply->earthing != Earthing::Unknown) return true;
    sheet.lacks(*context.supply, "earthing");
    return false;
}

/// Compares a conductor's recorded size with the least that the table of the rule set gives.
void compareSize(const VisitContext& context, MainConductor conductor, std::string_view symbol,
                 std::optional<CrossSection> size, std::optional<CrossSection> by, std::string_view field,
                 Worksheet& sheet, std::optional<CrossSection>& needed) {
    if (!size || !by) return;
    const auto least = context.tables.leastMainConductor(context.rules.bondingStandard, conductor,
                                                         context.supply->earthing, *by);
    if (!least) return sheet.unpublished(*context.supply, field);
    sheet.show([&] { return tableTerm("S_min", least->value, units::squareMillimetre, least->source); });
    sheet.compareRatings(Relation::AtLeast, symbol, *size, least->value, units::squareMillimetre);
    needed = least->value;
}

} // namespace

/// The earthing conductor against the size that goes with the tails (IEC 60364-5-54, table 54.2). A smaller
/// one may be shown by calculation to bear a fault, so that the worst verdict is close.
Finding checkEarthingConductor(const VisitContext& context) {
    Worksheet sheet(phrasing<"earthing-conductor">, context, {RecordKind::Supply, context.supply->id});
    const Supply& supply = *context.supply;
    if (supply.earthing == Earthing::Tt) return sheet.doesNotApply("check.earthing-conductor.tt");
    sheet.formula("S_E ≥ S_min");
    sheet.clause("earthing-conductor");
    const auto size = sheet.exact("S_E", supply, supply.earthingConductor, "earthingConductor_mm2");
    const auto tails = sheet.exact("S", supply, supply.tails, "tails_mm2");
    std::optional<CrossSection> needed;
    if (knowsEarthing(context, sheet))
        compareSize(context, MainConductor::Earthing, "S_E", size, tails, "tails_mm2", sheet, needed);
    sheet.phrase(Verdict::Close, "check.earthing-conductor.smaller");
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(measure(size.value_or(CrossSection{}), units::squareMillimetre),
                          measure(needed.value_or(CrossSection{}), units::squareMillimetre));
}

/// Main bonding by the supply's neutral where it also is the earth (TN-C-S; the tails stand for it),
/// otherwise by the earthing conductor (IEC 60364-5-54, 544.1; BS 7671, table 54.8).
Finding checkMainBonding(const VisitContext& context) {
    Worksheet sheet(phrasing<"main-bonding">, context, {RecordKind::Supply, context.supply->id});
    const Supply& supply = *context.supply;
    sheet.formula("S_B ≥ S_min");
    sheet.clause("main-bonding");
    const auto size = sheet.exact("S_B", supply, supply.mainBonding, "mainBonding_mm2");
    const bool byNeutral = supply.earthing == Earthing::TnCS;
    const auto by = byNeutral ? sheet.exact("S", supply, supply.tails, "tails_mm2")
                              : sheet.exact("S_E", supply, supply.earthingConductor, "earthingConductor_mm2");
    std::optional<CrossSection> needed;
    if (knowsEarthing(context, sheet))
        compareSize(context, MainConductor::Bonding, "S_B", size, by,
                    byNeutral ? std::string_view("tails_mm2") : "earthingConductor_mm2", sheet, needed);
    return sheet.conclude(measure(size.value_or(CrossSection{}), units::squareMillimetre),
                          measure(needed.value_or(CrossSection{}), units::squareMillimetre));
}

} // namespace loopwright
