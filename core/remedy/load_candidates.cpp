// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/candidates.h"
#include "core/remedy/fitting.h"

#include <algorithm>
#include <cmath>

namespace loopwright {

std::optional<Remedy> runInTurns(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    Current steady, largest;
    std::size_t inTurns = 0;
    Ratio share = 0;
    for (const overload::Piece& piece : about.load.pieces) {
        const bool rests = piece.on && piece.off > Time();
        if (!rests) steady += piece.each * piece.count;
        if (!rests) continue;
        largest = std::max(largest, piece.each);
        inTurns += piece.count > 1 ? 2 : 1;
        share += std::max(piece.count, 1.0) * (*piece.on / (*piece.on + piece.off));
    }
    constexpr Ratio allTime = 1 + 1e-9;
    if (inTurns < 2 || share > allTime) return std::nullopt;
    const Current load = amperes(std::ceil((steady + largest).base() * 10 - 1e-6) / 10);
    return trial.offer(RemedyKind::RunInTurns, {{"remedy.run-in-turns", {measure(load, units::ampere)}},
                                                {setLoad(about.circuit.id, load)}});
}

std::optional<Remedy> lessLoad(const Trial& trial) {
    const OverloadedCircuit& about = trial.about();
    if (!about.ratedInWarmth) return std::nullopt;
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
    if (about.equipment.size() != 1 || about.circuit.use != CircuitUse::Fixed) return std::nullopt;
    const Equipment& only = *about.equipment.front();
    if (!usable(only.plugFuse) || usable(only.count).value_or(1) > 1) return std::nullopt;
    return trial.offer(RemedyKind::WithoutPlugFuse,
                       {{"remedy.without-plug-fuse", {only.name}},
                        {setField(RecordKind::Equipment, only.id, "plugFuse_A", "N/A")}});
}

} // namespace loopwright
