// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

namespace loopwright {

/// A residual current device through which a circuit is fed, and the record that holds it.
struct ResidualInPath {
    const ResidualDevice* device = nullptr;
    RecordKind kind = RecordKind::Circuit;
    Id owner;
};

/// Calls `visit` with each residual current device between the circuit's end and the supply, the nearest
/// first.
template <class Visitor>
void forEachResidual(const CircuitContext& context, Visitor&& visit) {
    const auto offer = [&](const ResidualDevice& device, RecordKind kind, Id owner) {
        if (device.fitted) visit(ResidualInPath{&device, kind, owner});
    };
    offer(context.circuit.residual, RecordKind::Circuit, context.circuit.id);
    offer(context.board.residual, RecordKind::Board, context.board.id);
    for (const Feeder& feeder : context.feeders) {
        offer(feeder.circuit.residual, RecordKind::Circuit, feeder.circuit.id);
        offer(feeder.board.residual, RecordKind::Board, feeder.board.id);
    }
}

/// Of the residual current devices between the supply and the circuit's end, the one with the smallest rated
/// residual current, which is the first to act on a fault; of those whose rating is not known the nearest.
/// Nothing when there is none. `accepts` may leave devices out.
template <class Accepts>
std::optional<ResidualInPath> mostSensitive(const CircuitContext& context, Accepts&& accepts) {
    std::optional<ResidualInPath> best;
    forEachResidual(context, [&](const ResidualInPath& path) {
        if (!accepts(*path.device)) return;
        const auto current = usable(path.device->residualCurrent);
        const auto bestCurrent = best ? usable(best->device->residualCurrent) : std::nullopt;
        const bool better = !best || (current && (!bestCurrent || *current < *bestCurrent));
        if (better) best = path;
    });
    return best;
}
std::optional<ResidualInPath> mostSensitive(const CircuitContext& context);

/// The first residual current device before the circuit's own place.
std::optional<ResidualInPath> nextResidualUpstream(const CircuitContext& context);

/// I_delta_n of a device in the path. Noted as missing where it is not recorded.
std::optional<Current> residualCurrent(const ResidualInPath& path, Worksheet& sheet);

/// Where a residual current device is fitted whose rating nobody recorded, so that it may end what the
/// devices that are known do not: notes its rating as missing and returns whether there is one.
bool lacksResidualRating(const CircuitContext& context, Worksheet& sheet);

/// The latest a residual current device operates at this fault current: the published limit for the largest
/// tested multiple of its rated residual current that the fault reaches. Nothing below that current itself.
std::optional<Sourced<Time>> residualLatest(const ReferenceTables& tables, ResidualDelay delay, Current rated,
                                            Current fault);

/// The largest loop through which the device protects against shock: enough current for it to operate within
/// `time`, and no more than the conventional touch voltage on the parts at its rated residual current.
std::optional<Resistance> loopForResidual(const VisitContext& visit, ResidualDelay delay, Current rated,
                                          Time time);

} // namespace loopwright
