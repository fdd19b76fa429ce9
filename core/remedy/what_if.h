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
    /// A clamp reading of the visit is foretold as another one, or none: as it is recorded it goes before the
    /// changed load until it is taken anew.
    bool isClampStale = false;
};

/// The installation with `change` in it, and with what follows from it for the readings of `visit`: a clamp
/// reading does not outlive another load that is typed, and is less by what equipment that goes is recorded
/// to draw; resistances go with the conductors' sizes (IEC 60228, by the tables), and the loop with them; a
/// circuit that the change brings into use has what can be predicted of its readings. Readings that are
/// foretold say that they are computed, and so does a load, which the equipment that is recorded is no
/// witness against. The refusal is that of the change.
tl::expected<Installation, Message> foretold(const Installation& installation, Id visit, Id circuit,
                                             const Change& change, const ReferenceTables& tables,
                                             const RuleSet& rules);

tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules);

/// What is found, verdicts only, before any change: the circuit's checks, and assessAround().
struct AsItIs {
    std::vector<Finding> circuit;
    std::vector<Finding> around;
};
/// The same held against what is known already, for its verdicts only. `asItIs` is of the same installation,
/// visit and circuit.
tl::expected<WhatIf, Message> whatIf(const Installation& installation, Id visit, Id circuit,
                                     const Change& change, const ReferenceTables& tables,
                                     const RuleSet& rules, const AsItIs& asItIs);

/// The shifts from one list of findings to another.
std::vector<CheckShift> shiftsBetween(std::vector<Finding> before, std::vector<Finding> after);

} // namespace loopwright
