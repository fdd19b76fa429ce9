// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/worksheet.h"

namespace loopwright {

/// An instrument was in calibration on the last day of the visit (ISO/IEC 17025 practice; IEC 60364-6,
/// 6.4.3.1: instruments by IEC 61557). Readings of one that was not are not traceable, whatever they say.
Finding checkCalibration(const InstrumentContext& context) {
    Worksheet sheet(phrasing<"calibration">, context, {RecordKind::Instrument, context.instrument.id});
    sheet.clause("calibration");
    const auto& day = context.visit.ended ? context.visit.ended : context.visit.started;
    if (!context.instrument.calibrationDue) sheet.lacks(context.instrument, "calibrationDue");
    if (!day) sheet.lacks(context.visit, "started");
    if (day && context.instrument.calibrationDue)
        sheet.decide(*day <= *context.instrument.calibrationDue ? Verdict::Holds : Verdict::Fails);
    return sheet.conclude(context.instrument.name);
}

} // namespace loopwright
