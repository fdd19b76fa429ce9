// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/overloaded_circuit.h"

namespace loopwright {

/// Where a circuit of its own begins: a spare way of the board that nothing hangs on and nothing was read of,
/// for as many phases as the circuit has; nullptr where there is none.
const Circuit* spareWay(const OverloadedCircuit& about);

/// What equipment gets that is taken off: a circuit on the spare way, or with a spare way of nullptr a new
/// one of that id. It is as long as the one that the equipment comes off, laid and bunched like it, which is
/// marked as assumed, and has its residual device; device and sizes are open.
Circuit unlaidCircuit(const OverloadedCircuit& about, const Equipment& equipment, const Circuit* spare,
                      Id fresh);

/// The same with the smallest standard device of the first family that has one, and for that the smallest
/// standard conductors, at which every check that they decide holds, or where that cannot be told does not
/// fail; those of load, device and wiring have to hold. `moved` is the installation with the circuit in it
/// and the equipment on it. Nothing where there are none, or too little is known.
std::optional<Circuit> laidOut(const OverloadedCircuit& about, Installation moved, Id circuit);

} // namespace loopwright
