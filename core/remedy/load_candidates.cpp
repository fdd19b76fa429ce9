// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"

#include <algorithm>
#include <cmath>

namespace loopwright {

namespace {

/// What the pieces draw together where no two of them that rest run at once; nothing where fewer than two
/// rest, their runs leave no time for turns, or of any nobody knows what it draws.
std::optional<Current> inTurns(std::span<const RecordedPiece> pieces) {
    constexpr Ratio allTime = 1 + 1e-9;
    Current steady, largest;
    int turns = 0;
    Ratio share = 0;
    for (const RecordedPiece& piece : pieces) {
        const auto on = usable(piece.equipment->onTime), off = usable(piece.equipment->offTime);
        const auto together = piece.together();
        if (!together) return std::nullopt;
        if (!on || !off) {
            steady += *together;
            continue;
        }
        largest = std::max(largest, *piece.each);
        turns += piece.count > 1 ? 2 : 1;
        share += std::max(piece.count, 1.0) * (*on / (*on + *off));
    }
    return turns >= 2 && share <= allTime ? std::optional(steady + largest) : std::nullopt;
}

} // namespace

std::optional<Remedy> runInTurns(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    const auto least = inTurns(about.pieces);
    if (!least || !about.isLoadExact()) return std::nullopt;
    const Current all = knownSum(about.pieces);
    const Current load = inTenths(loadLeft(about.load.load.peak, all - *least, *least));
    return trial.offer(RemedyKind::RunInTurns, {{"remedy.run-in-turns", {measure(load, units::ampere)}},
                                                {setLoad(about.circuit.id, load)}});
}

std::optional<Remedy> lessLoad(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    if (!about.ratedInWarmth || !about.isLoadExact()) return std::nullopt;
    Current most = about.allowed(*about.ratedInWarmth);
    if (about.carried) most = std::min(most, about.allowed(*about.carried));
    most = amperes(std::floor(most.base() * 10) / 10);
    const Current load = about.load.load.peak;
    if (!(most < load) || !(most > Current())) return std::nullopt;
    return trial.offer(
        RemedyKind::LessLoad,
        {{"remedy.less-load", {measure(load - most, units::ampere, 1), measure(most, units::ampere, 1)}},
         {setLoad(about.circuit.id, most)}});
}

std::optional<Remedy> withoutPlugFuse(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    if (about.pieces.size() != 1 || about.circuit.use != CircuitUse::Fixed) return std::nullopt;
    const Equipment& only = *about.pieces.front().equipment;
    if (!usable(only.plugFuse) || usable(only.count).value_or(1) > 1) return std::nullopt;
    return trial.offer(RemedyKind::WithoutPlugFuse,
                       {{"remedy.without-plug-fuse", {spokenName(only)}},
                        {setField(RecordKind::Equipment, only.id, "plugFuse_A", "N/A")}});
}

} // namespace loopwright
