// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/model/installation.h"
#include "core/remedy/recorded_load.h"

#include <optional>
#include <vector>

namespace loopwright {

/// A circuit that remedies are looked for, and what they go by. Refers to what it was made from.
struct OverloadedCircuit {
    const Installation& installation;
    Id visit;
    const Circuit& circuit;
    const ReferenceTables& tables;
    const RuleSet& rules;
    LoadOverTime load;
    std::vector<RecordedPiece> pieces;    ///< its equipment
    std::optional<Current> rated;         ///< of the overload release
    std::optional<Current> ratedInWarmth; ///< what is carried of it in the warmth of the board
    std::optional<Current> carried;       ///< what its wiring carries of one device's current
    std::optional<Current> ratedOfFed;    ///< of the board that it feeds, the least where it feeds several
    bool isAdjustable = false;
    bool isLoadMeasured = false; ///< by a clamp, which goes before what is typed

    /// With so much left that the check is not even close.
    Current allowed(Current limit) const { return limit * (1 - rules.closeBand); }
    /// Whether the load is a figure to reckon on with, and no mere bound.
    bool isLoadExact() const { return load.current.bound == Bound::Exact; }
    /// What stays of the load without `piece`: no more is taken off than is recorded of it. Nothing where
    /// that or the load is not known exactly, or nothing would stay.
    std::optional<Current> loadWithout(const RecordedPiece& piece) const;
};

/// Nothing where visit or circuit are not there, or nobody knows the load.
std::optional<OverloadedCircuit> overloadedCircuit(const Installation& installation, Id visit, Id circuit,
                                                   const ReferenceTables& tables, const RuleSet& rules);

} // namespace loopwright
