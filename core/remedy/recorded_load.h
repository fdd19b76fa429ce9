// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/context.h"

#include <optional>
#include <span>
#include <vector>

/// What equipment is recorded to draw by itself, whatever the load of its circuit was taken from. A load that
/// a clamp read or somebody typed is often more than that; what nobody can explain stays where it is when
/// equipment goes.
namespace loopwright {

struct RecordedPiece {
    const Equipment* equipment = nullptr;
    std::optional<Current> each; ///< nothing: not known exactly
    double count = 1;            ///< on the phase with most of them
    bool isSinglePhase = true;

    std::optional<Current> together() const;
};

/// In the order of the circuit's equipment, to which it refers.
std::vector<RecordedPiece> recordedPieces(const VisitContext& visit, const CircuitRecords& circuit);

/// Together in the phase that is loaded most, of those that are known.
Current knownSum(std::span<const RecordedPiece> pieces);

/// By how much less the circuit's equipment draws `after` than `before`; negative where it draws more.
/// Nothing where what differs is not known exactly.
std::optional<Current> drawnLess(std::span<const RecordedPiece> before, std::span<const RecordedPiece> after);

/// What stays of a load that goes down by `less`: no less than what `others` draw that stay, as far as the
/// load had them in it.
Current loadLeft(Current load, Current less, Current others);

} // namespace loopwright
