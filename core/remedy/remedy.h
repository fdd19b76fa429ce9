// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/what_if.h"

/// Changes that make load, device and wiring of a circuit belong together again, out of the standard ratings
/// and sizes. Advice for a competent person: each is tried by what-if, and says what else it changes.
namespace loopwright {

/// What is done, the smallest intervention first.
enum class RemedyKind : std::uint8_t {
    OtherSetting,       ///< set the overload release of an adjustable breaker
    RunInTurns,         ///< interlock the pieces: no two run at once
    LessLoad,           ///< take load off
    OtherDevice,        ///< another rating, and where need be another family
    WithoutPlugFuse,    ///< connect the only piece to the circuit itself: its device serves it then
    SeparateCircuit,    ///< move a piece, or pieces alike, to a circuit of its own, which is laid out
    LargerConductor,    ///< same device
    DeviceAndConductor, ///< both
    UnlaidCircuit,      ///< a circuit of its own as well, but no standard one is sure to hold along this way
};

struct Remedy {
    RemedyKind kind = RemedyKind::LessLoad;
    Change change; ///< what to commit when it is taken; its label is the proposal's sentence
    std::vector<CheckShift> circuit;   ///< checks of the circuit whose verdict changes, without detail
    std::vector<CheckShift> elsewhere; ///< and of other records
    std::vector<CheckShift> made; ///< checks of a circuit that it brings into use which fail or cannot tell
    bool holdsThroughout = false; ///< no check of the circuit fails any more
    std::vector<Message> notes;   ///< what it takes for granted
    bool isClampStale = false;    ///< WhatIf::isClampStale: the load has to be measured anew after it
    /// Checks of the circuit that fail where a circuit that is made joins its bunch, without detail.
    std::vector<Finding> failingInBunch;
};

/// Whether something about a circuit's load, device and wiring fails, so that a remedy is asked for. There
/// may be none all the same.
bool asksForRemedy(const Finding& finding);

/// Remedies in the order of their kinds, at most one of each, none of which makes any check of the circuit
/// fail, or one that cannot be told of one that held, or one that fails fail by more; some that held may get
/// close, which is told. Each settles every check of load, device and wiring that failed: it is known then,
/// and does not. Of one kind rather that which makes every check hold. Never a device larger than the wiring
/// or a board that the circuit feeds carries. None where none of those checks fails, or the circuit is not
/// known well enough.
/// A circuit of its own has the smallest standard device and for that the smallest standard conductors, as
/// long as this one, laid like it and one more in its bunch, at which its checks of load, device and wiring
/// hold and any other that those decide, its loop being predicted from the board's. Where one of the others
/// cannot be told whatever the conductors, it must not fail; what only tests can tell does not count. A new
/// one takes its id from `ids`.
std::vector<Remedy> remedies(const Installation& installation, Id visit, Id circuit,
                             const ReferenceTables& tables, const RuleSet& rules, IdSource& ids);

} // namespace loopwright
