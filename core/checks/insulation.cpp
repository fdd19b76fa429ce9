// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/load_current.h"

namespace loopwright {
namespace {

bool isNotApplicable(const CircuitReading* reading, Entry<Resistance> CircuitReading::*member) {
    return reading && (reading->*member).state == EntryState::NotApplicable;
}

} // namespace

/// R_iso ≥ the minimum for the nominal voltage; the smaller of the two readings decides. One that is not
/// applicable leaves the other to decide: electronics may rule out the test between live conductors, and no
/// circuit is without insulation to earth by that.
Finding checkInsulation(const CircuitContext& context) {
    Worksheet sheet(phrasing<"insulation">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("R_iso ≥ R_min");
    sheet.clause("insulation");
    const bool liveDrops = isNotApplicable(context.reading, &CircuitReading::insulationLive);
    const bool earthDrops = isNotApplicable(context.reading, &CircuitReading::insulationEarth);
    const auto read = [&](bool drops, std::string_view symbol, Entry<Resistance> CircuitReading::*member,
                          std::string_view field) {
        if (drops && !(liveDrops && earthDrops)) return std::optional<Figure<Resistance>>{};
        return sheet.figure(symbol, context.reading, member, field, Zero::Counts);
    };
    const auto live = read(liveDrops, "R_L", &CircuitReading::insulationLive, "insulationLive_Mohm");
    const auto earth = read(earthDrops, "R_E", &CircuitReading::insulationEarth, "insulationEarth_Mohm");
    const auto minimum = context.tables.insulationMinimum(highestVoltage(context));
    if (!minimum) {
        sheet.lacks(RecordKind::Supply, context.supply ? context.supply->id : Id{}, "nominalVoltage_V");
        return sheet.conclude();
    }
    sheet.show([&] { return tableTerm("R_min", minimum->value, units::megohm, minimum->source); });

    const Figure<Resistance> limit{minimum->value};
    Figure<Resistance> deciding;
    if (live && sheet.compare(Relation::AtLeast, "R_L", *live, limit, units::megohm)) deciding = *live;
    if (earth && sheet.compare(Relation::AtLeast, "R_E", *earth, limit, units::megohm)) deciding = *earth;
    return sheet.conclude(measure(deciding, units::megohm), measure(minimum->value, units::megohm, 1));
}

} // namespace loopwright
