// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/device.h"
#include "core/checks/fault.h"

namespace loopwright {
namespace {

/// No time is promised at this current: what would be needed, where that is published.
Finding nothingPromised(const CircuitContext& context, Current rated, const Figure<Current>& fault,
                        Time required, Worksheet& sheet) {
    const auto needed = context.tables.operatingCurrent(*context.family, rated, required);
    if (needed) {
        sheet.show([&] { return tableTerm("I_a", needed->value, units::ampere, needed->source); });
        sheet.compare(Relation::AtLeast, "I_f", fault, Figure<Current>{needed->value}, units::ampere);
    } else {
        sheet.decide(Verdict::Fails);
    }
    sheet.phrase(Verdict::Fails, "check.disconnection.fails-unlimited");
    return sheet.conclude(measure(fault, units::ampere), measure(required, units::second));
}

/// What is cut off in time, and by how much more current than that needs.
Finding cutOffInTime(const Figure<Current>& fault, const Sourced<Current>& needed, Time latest, Time required,
                     Worksheet& sheet) {
    sheet.show([&] { return tableTerm("I_a", needed.value, units::ampere, needed.source); });
    sheet.compare(Relation::AtLeast, "I_f", fault, Figure<Current>{needed.value}, units::ampere);
    const Measure time = measure(latest, units::second), allowed = measure(required, units::second);
    if (sheet.verdict() != Verdict::Close) return sheet.conclude(time, allowed);
    sheet.phrase(Verdict::Close, "check.disconnection.close-by-current");
    return sheet.conclude(time, allowed, measure(fault, units::ampere), measure(needed.value, units::ampere));
}

/// The current if the loop is as much higher as its reading may be off.
Current leastCurrent(const Figure<Current>& fault) {
    return fault.uncertainty ? fault.value / (1 + fault.uncertainty->share) : fault.value;
}

/// Whether that current might no longer be cut off in time. Times are published in steps, so that one which
/// is met with much to spare may be missed at little less current.
bool mayBeTooLate(const CircuitContext& context, const Figure<Current>& fault, Time required) {
    Worksheet aside(phrasing<"disconnection">, context, {RecordKind::Circuit, context.circuit.id});
    const auto predicted = predictedDisconnection(context, leastCurrent(fault), aside);
    if (!predicted) return false;
    const bool byDevice = predicted->latest.isLimited() && predicted->latest.time <= required;
    return !byDevice && !(predicted->byResidual && predicted->byResidual->value <= required);
}

} // namespace

/// t ≤ t_max at the measured loop, by the latest that a sound device operates (IEC 60364-4-41, 411.3.2).
/// Where the current that does it in that time is published, I_f ≥ I_a says the same and how near it is:
/// times are published in steps.
Finding checkDisconnection(const CircuitContext& context) {
    Worksheet sheet(phrasing<"disconnection">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("t(I_f) ≤ t_max, I_f = c_min U_0 / Z_s");
    sheet.clause("disconnection");
    const auto rated = ratedCurrent(context, sheet);
    const auto required = requiredTime(context, rated, sheet);
    const auto fault = faultCurrent(context, context.rules.voltageFactorMin, sheet);
    const auto predicted =
        rated && fault ? predictedDisconnection(context, fault->value, sheet) : std::nullopt;
    if (!required || !predicted) return sheet.conclude();

    const bool byDevice = predicted->latest.isLimited() && predicted->latest.time <= *required;
    const bool residualIsLatest = !byDevice && predicted->byResidual;
    if (!residualIsLatest && !predicted->latest.isLimited()) {
        if (lacksResidualRating(context, sheet)) return sheet.conclude();
        return nothingPromised(context, *rated, *fault, *required, sheet);
    }

    const auto needed =
        byDevice ? context.tables.operatingCurrent(*context.family, *rated, *required) : std::nullopt;
    const Time latest = residualIsLatest ? predicted->byResidual->value : predicted->latest.time;
    sheet.show([&] {
        return tableTerm(
            "t", latest, units::second, residualIsLatest ? predicted->byResidual->source : predicted->source,
            {residualIsLatest ? std::string_view("check.note.latest-residual") : "check.note.latest", {}});
    });
    if (needed && fault->value >= needed->value)
        return cutOffInTime(*fault, *needed, latest, *required, sheet);
    sheet.compare(Relation::AtMost, "t", Figure<Time>{latest, reversed(fault->bound)},
                  Figure<Time>{*required}, units::second);
    if (sheet.verdict() == Verdict::Holds && mayBeTooLate(context, *fault, *required)) {
        sheet.show([&] {
            return computedTerm("I_f,u", leastCurrent(*fault), units::ampere,
                                {"check.note.least-by-uncertainty", {}});
        });
        sheet.decide(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.disconnection.close-by-uncertainty");
    }
    const bool tt = context.earthing == Earthing::Tt;
    if (residualIsLatest && !tt) {
        if (sheet.verdict() == Verdict::Holds) sheet.decide(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.disconnection.only-residual");
    }
    if (sheet.verdict() == Verdict::Fails && lacksResidualRating(context, sheet)) return sheet.cannotTell();
    return sheet.conclude(measure(latest, units::second), measure(*required, units::second));
}

} // namespace loopwright
