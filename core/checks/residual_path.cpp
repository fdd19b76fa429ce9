// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/residual_path.h"

#include "core/checks/load_current.h"
#include "core/physics/loop.h"
#include "core/physics/residual.h"

#include <algorithm>
#include <array>

namespace loopwright {
namespace {

/// The multiples of I_delta_n for which IEC 61008-1 sets times, the largest first.
constexpr std::array testedMultiples{5.0, 2.0, 1.0};

} // namespace

std::optional<ResidualInPath> mostSensitive(const CircuitContext& context) {
    return mostSensitive(context, [](const ResidualDevice&) { return true; });
}

std::optional<ResidualInPath> nextResidualUpstream(const CircuitContext& context) {
    std::optional<ResidualInPath> next;
    forEachResidual(context, [&](const ResidualInPath& path) {
        if (!next && path.device != &context.circuit.residual) next = path;
    });
    return next;
}

std::optional<Current> residualCurrent(const ResidualInPath& path, Worksheet& sheet) {
    const auto rated = usable(path.device->residualCurrent);
    if (rated) {
        sheet.show([&] { return recordedTerm("I_Δn", path.device->residualCurrent, units::milliampere); });
        return rated;
    }
    sheet.lacks(path.kind, path.owner, "residual.residualCurrent_mA");
    return std::nullopt;
}

bool lacksResidualRating(const CircuitContext& context, Worksheet& sheet) {
    bool isLacking = false;
    forEachResidual(context, [&](const ResidualInPath& path) {
        if (usable(path.device->residualCurrent)) return;
        isLacking = true;
        sheet.lacks(path.kind, path.owner, "residual.residualCurrent_mA");
    });
    return isLacking;
}

std::optional<Sourced<Time>> residualLatest(const ReferenceTables& tables, ResidualDelay delay, Current rated,
                                            Current fault) {
    for (const double multiple : testedMultiples) {
        if (fault < rated * multiple) continue;
        if (const auto limit = tables.residualLimit(delay, multiple); limit && limit->atMost)
            return Sourced<Time>{*limit->atMost, limit->source};
    }
    return std::nullopt;
}

std::optional<Resistance> loopForResidual(const VisitContext& visit, ResidualDelay delay, Current rated,
                                          Time time) {
    std::optional<Resistance> largest;
    for (const double multiple : testedMultiples) {
        const auto limit = visit.tables.residualLimit(delay, multiple);
        if (!limit || !limit->atMost || *limit->atMost > time) continue;
        largest =
            physics::permittedLoop(nominalVoltage(visit), visit.rules.voltageFactorMin, rated * multiple);
    }
    if (!largest) return std::nullopt;
    return std::min(*largest, physics::largestElectrodeResistance(visit.rules.touchVoltage, rated));
}

} // namespace loopwright
