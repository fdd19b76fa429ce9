// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

#include <memory>

namespace loopwright {

/// "fuse", "breaker", ...: how a sentence calls the device; "device" where the family is not known.
Word deviceWord(const DeviceFamily* family);

bool isFuse(const DeviceFamily& family);

/// I_n of the circuit's device.
std::optional<Current> ratedCurrent(const CircuitRecords& circuit, Worksheet& sheet);

/// The device's family. Where it is not known that is noted as missing.
const DeviceFamily* deviceFamily(const CircuitRecords& circuit, Worksheet& sheet);

/// Times of a device; nullptr where nothing is promised.
using OvercurrentTimes = std::shared_ptr<const Sourced<physics::DeviceTimes>>;

/// Where a release acts that is set to `setting`, in multiples of `rated`.
InstantaneousBand setBand(Current setting, Current rated, const physics::Spread& spread,
                          const Source& source);

/// When a device operates: an adjustable breaker by its settings, any other by what is published about its
/// family, which belongs to the tables, moved by the temperature of its board where it has one. Nothing where
/// family or rated current are not known.
OvercurrentTimes overcurrentTimes(const ReferenceTables& tables, const Device& device, const Board* board);

} // namespace loopwright
