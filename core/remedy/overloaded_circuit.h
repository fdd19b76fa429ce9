// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/load_over_time.h"
#include "core/model/installation.h"

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
    std::vector<const Equipment*> equipment; ///< in the order of the load's pieces
    std::optional<Current> rated;            ///< of the overload release
    std::optional<Current> ratedInWarmth;    ///< what is carried of it in the warmth of the board
    std::optional<Current> carried;          ///< what its wiring carries of one device's current
    bool isAdjustable = false;

    /// With so much left that the check is not even close.
    Current allowed(Current limit) const { return limit * (1 - rules.closeBand); }
    /// What all the pieces alike draw together as part of the load.
    Current drawnBy(const Equipment& equipment) const;
};

/// Nothing where visit or circuit are not there, or nobody knows the load.
std::optional<OverloadedCircuit> overloadedCircuit(const Installation& installation, Id visit, Id circuit,
                                                   const ReferenceTables& tables, const RuleSet& rules);

} // namespace loopwright
