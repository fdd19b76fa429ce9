// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "core/model/change.h"

#include <optional>
#include <tl/expected.hpp>
#include <vector>

/// A change tried on a copy: every check before and after, side by side. Nothing is written; whoever likes
/// the result commits the same Change.
namespace loopwright {

/// One check about one record, before and after.
struct CheckShift {
    Subject subject;
    std::string_view check;
    std::optional<Finding> before; ///< nothing: was not there
    std::optional<Finding> after;
    /// By verdict alone: fails, can't tell, close, then holds and does not apply alike.
    bool isBetter() const;
    bool isWorse() const;
};

struct WhatIf {
    Installation changed;
    std::vector<CheckShift> circuit;   ///< every check of the circuit, worst after the change first
    std::vector<CheckShift> elsewhere; ///< checks of other records whose verdict changes, without detail
    std::vector<CheckShift> made; ///< every check of circuits that the change brings into use, worst first
};

/// The installation with `change` in it, and with what follows from it for the readings of `visit`: a clamp
/// reading does not outlive another load; resistances go with the conductors' sizes (IEC 60228, by the
/// tables), and the loop with them; a circuit that the change brings into use has what can be predicted of
/// its readings. Readings that are foretold say that they are computed, and so does a load, which the
/// equipment that is recorded is no witness against. The refusal is that of the change.
tl::expected<Installation, Message> foretold(const Installation& installation, Id visit, Id circuit,
                                             const Change& change, const ReferenceTables& tables);

tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules);

/// The shifts from one list of findings to another.
std::vector<CheckShift> shiftsBetween(std::vector<Finding> before, std::vector<Finding> after);

} // namespace loopwright
