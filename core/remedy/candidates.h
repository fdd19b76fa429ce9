// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/id.h"
#include "core/remedy/trial.h"

/// The kinds of remedies, a function each: the best of its candidates, or nothing where none is worth
/// anything.
namespace loopwright {

/// The overload release at a position of its dial that carries the load and that frame and wiring carry, the
/// nearest to where it stands; to the ampere where there is none.
std::optional<Remedy> otherSetting(const Trial& trial);

/// Only where there is time for each piece: their runs come to no more than all of it. The load goes down by
/// what is recorded of the others beside the heaviest, which has to be known of all.
std::optional<Remedy> runInTurns(const Trial& trial);
std::optional<Remedy> lessLoad(const Trial& trial);
/// A piece that is alone on its circuit needs no fuse of its own: it is connected to the circuit, whose
/// device serves it.
std::optional<Remedy> withoutPlugFuse(const Trial& trial);

std::optional<Remedy> otherDevice(const Trial& trial);
/// Up to a few sizes more; beyond them it is another circuit. With another device only where none passes by
/// itself: `alsoDevice`.
std::optional<Remedy> largerConductor(const Trial& trial, bool alsoDevice);

/// A circuit of its own for the heaviest piece whose going suffices and that a standard device and conductor
/// hold for; where no piece has such, for the heaviest all the same, not laid out, with the reason. It takes
/// a spare way of the board, or a new one with an id from `ids`. Where the piece is the only one nothing
/// would be left to judge, and one that overloads the fuse in its plug would do so anywhere.
std::optional<Remedy> separateCircuit(const Trial& trial, IdSource& ids);

} // namespace loopwright
