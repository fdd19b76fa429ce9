// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {

/// u ≤ u_max for each quantity that the instrument records an uncertainty of, u_max being the largest
/// operating uncertainty of IEC 61557. A larger one is made no allowance for there: either it was typed
/// wrongly, or the instrument is not one of that standard. What it read is judged within that uncertainty all
/// the same, so that the worst verdict is close.
Finding checkInstrumentUncertainty(const InstrumentContext& context) {
    const Instrument& instrument = context.instrument;
    Worksheet sheet(phrasing<"instrument-uncertainty">, context, {RecordKind::Instrument, instrument.id});
    sheet.formula("u ≤ u_max");
    sheet.clause("instrument-uncertainty");
    Measure recorded, most;
    for (std::size_t i = 0; i < measurandCount; ++i) {
        const Entry<Ratio>& entry = instrument.*recordedUncertainties[i].entry;
        const auto share = usable(entry);
        if (!share) continue;
        const Sourced<Ratio>& limit = context.tables.operatingUncertainty(static_cast<Measurand>(i));
        sheet.show([&] { return recordedTerm("u", entry, units::percent); });
        sheet.show([&] { return tableTerm("u_max", limit.value, units::percent, limit.source); });
        if (!sheet.compareRatings(Relation::AtMost, "u", *share, limit.value, units::percent)) continue;
        recorded = measure(*share, units::percent);
        most = measure(limit.value, units::percent);
    }
    if (!sheet.hasVerdict()) return sheet.doesNotApply("check.instrument-uncertainty.not-recorded");
    sheet.atWorst(Verdict::Close);
    return sheet.conclude(instrument.name, recorded, most);
}

} // namespace loopwright
