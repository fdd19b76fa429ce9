// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/load_current.h"

namespace loopwright {
namespace {

bool startsAnything(const CircuitContext& context) {
    for (const Equipment* equipment : context.equipment)
        if (equipment->startMultiple.hasFigure()) return true;
    return false;
}

/// The band in which the device operates at once, in multiples of I_n. A start outlasts every short-time
/// delay, so that of an adjustable breaker the lower of both settings counts (IEC 60947-2).
std::optional<InstantaneousBand> bandAtStart(const CircuitContext& context, const DeviceFamily& family,
                                             Current rated, Worksheet& sheet) {
    const Device& device = context.circuit.device;
    if (!family.adjustable) {
        auto band = context.tables.instantaneousBand(family, rated);
        if (!band) sheet.unpublished(context.circuit, "device.ratedCurrent_A");
        return band;
    }
    const auto [spreads, source] = context.tables.breakerSpreads(rated);
    if (const auto shortTime = usable(device.shortTimeSetting)) {
        sheet.show([&] { return recordedTerm("I_sd", device.shortTimeSetting, units::ampere); });
        return setBand(*shortTime, rated, spreads.shortTimeCurrent, source);
    }
    const auto atOnce =
        sheet.exact("I_i", context.circuit, device.instantaneousSetting, "device.instantaneousSetting_A");
    if (!atOnce) return std::nullopt;
    return setBand(*atOnce, rated, spreads.instantaneous, source);
}

} // namespace

/// The starting current against the band in which a breaker operates at once (IEC 60898-1, table 2). Below
/// the band it rides through, above it never starts, inside it may go either way. One piece starts at a time;
/// the first half wave of an asymmetrical start is higher still and not reckoned with.
Finding checkMotorStart(const CircuitContext& context) {
    Worksheet sheet(phrasing<"motor-start">, context, {RecordKind::Circuit, context.circuit.id});
    if (!startsAnything(context)) return sheet.doesNotApply("check.motor-start.none");
    sheet.formula("I_st ≤ m I_n");
    const auto rated = ratedCurrent(context, sheet);
    const DeviceFamily* family = deviceFamily(context, sheet);
    if (family && family->kind != DeviceKind::Breaker && family->kind != DeviceKind::Rcbo)
        return sheet.doesNotApply("check.motor-start.fuse");
    const auto start = largestStart(context, context, sheet);
    if (!rated || !family || !start) return sheet.conclude();
    const auto band = bandAtStart(context, *family, *rated, sheet);
    if (!band) return sheet.conclude();
    const Current holdsTo = *rated * band->above, operatesFrom = *rated * band->upTo;
    sheet.show([&] { return tableTerm("m", band->above, units::ratio, band->source); });
    sheet.show([&] {
        return computedTerm("I_st", start->current.value, units::ampere, {"check.note.start-current", {}});
    });
    sheet.compareTolerance(Relation::AtMost, "I_st", start->current, Figure<Current>{holdsTo}, units::ampere);
    const bool mayStart = start->current.value < operatesFrom;
    if (mayStart && sheet.verdict() == Verdict::Fails) {
        if (start->current.bound != Bound::Exact) return sheet.cannotTell(); // it may lie above the band
        sheet.atWorst(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.motor-start.in-band");
    }
    return sheet.conclude(start->equipment->name, measure(start->current.value, units::ampere),
                          measure(mayStart ? holdsTo : operatesFrom, units::ampere));
}

} // namespace loopwright
