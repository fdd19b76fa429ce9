// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/remedy/overloaded_circuit.h"

#include <tl/expected.hpp>

namespace loopwright {

/// Where a circuit of its own begins: a spare way of the board of which nothing is recorded but where it is,
/// and which nothing hangs on, for as many phases as the piece takes; nullptr where there is none. A single
/// single-phase piece takes one, others as many as the circuit has that they come off.
const Circuit* spareWay(const OverloadedCircuit& about, const RecordedPiece& piece);

/// How many circuits lie in the bunch of `wiring` with one more, assumed.
Entry<Ratio> withOneMore(const Entry<Ratio>& groupedCircuits);

/// What equipment gets that is taken off: a circuit on the spare way, or with a spare way of nullptr a new
/// one of that id. It is as long as the one that the equipment comes off, of a ring half as long, laid like
/// it, and one more in its bunch, which is marked as assumed, and has its residual device; device and sizes
/// are open.
Circuit unlaidCircuit(const OverloadedCircuit& about, const RecordedPiece& piece, const Circuit* spare,
                      Id fresh);

/// Why a circuit of its own has to be planned.
enum class Unlaid : std::uint8_t {
    LoadOpen,   ///< nobody knows exactly what it would carry
    WiringOpen, ///< nor what any conductors would carry along its way
    NoneHolds,  ///< no standard device with standard conductors is sure to hold
};

/// The same with the smallest standard device of the first family that has one, and for that the smallest
/// standard conductors, at which every check that they decide holds, or where that cannot be told does not
/// fail; those of load, device and wiring have to hold. Where what it is for asks for a residual device, and
/// nothing on its way has one, the device is of a family with one. Armour and conduit stay without a size.
/// `moved` is the installation with the circuit in it and the equipment on it.
tl::expected<Circuit, Unlaid> laidOut(const OverloadedCircuit& about, Installation moved, Id circuit);

} // namespace loopwright
