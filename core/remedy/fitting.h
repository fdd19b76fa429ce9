// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/change.h"
#include "core/remedy/overloaded_circuit.h"

#include <span>
#include <string>

/// Standard devices and conductors for a circuit, as values and as the edits that fit them.
namespace loopwright {

/// With as many decimals as it has, tenths at most; what somebody plans counts as typed.
Entry<Current> planned(Current current);
Entry<CrossSection> planned(CrossSection size);
std::string storedText(const Entry<Current>& current);

/// A load that was worked out: equipment that stays recorded as it was is no witness against it.
Edit setLoad(Id circuit, Current load);
/// To the next tenth of an ampere above.
Current inTenths(Current load);

/// What a sentence calls it: its name, what it is where it has none, or "the equipment".
Argument spokenName(const Equipment& equipment);

/// Families that a new device is chosen from: the circuit's own unless it is no longer fitted in new work or
/// set by hand, then the usual ones. A residual device that is part of the device goes with it.
std::vector<const DeviceFamily*> familiesFor(const OverloadedCircuit& about);

/// The edits that fit another device. What its plate will say of its breaking capacity is not known yet.
std::vector<Edit> fitted(const OverloadedCircuit& about, const DeviceFamily& family, Current rated);

/// The protective conductor for line conductors of `line`, in the proportion of those that are there: the
/// next of `sizes`, smallest first. Nothing where either is not recorded, or none is large enough.
std::optional<CrossSection> inProportion(const Wiring& present, CrossSection line,
                                         std::span<const CrossSection> sizes);

/// The wiring with other line conductors. Where the protective conductor lies in the same cable it keeps its
/// proportion, up to the next standard size.
Wiring withLines(const OverloadedCircuit& about, CrossSection line);
/// The edits that make it.
std::vector<Edit> wired(const OverloadedCircuit& about, const Wiring& wiring);
/// Whether its protective conductor is another one as well.
bool isOtherCable(const OverloadedCircuit& about, const Wiring& wiring);
/// "10 mm2", or "10 mm2" and "4 mm2" of a cable.
std::vector<Argument> sizesOf(const Wiring& wiring, bool cable);

} // namespace loopwright
