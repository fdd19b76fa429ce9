// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/load_current.h"

namespace loopwright {

/// R_iso ≥ the minimum for the nominal voltage; the smaller of the two readings decides.
Finding checkInsulation(const CircuitContext& context) {
    Worksheet sheet(phrasing<"insulation">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("R_iso ≥ R_min");
    sheet.clause("insulation");
    const auto live = sheet.figure("R_L", context.reading, &CircuitReading::insulationLive,
                                   "insulationLive_Mohm", Zero::Counts);
    const auto earth = sheet.figure("R_E", context.reading, &CircuitReading::insulationEarth,
                                    "insulationEarth_Mohm", Zero::Counts);
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
