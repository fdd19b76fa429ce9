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

/// C_a, at most 1: the share of its rated current that the circuit's device carries in the warmth of its
/// board, by makers' tables. A cool place is no reason for more, since 433.1 of IEC 60364-4-43 compares with
/// I_n (condition 1). 1 where no temperature is recorded, and of devices whose standard names none that they
/// are calibrated at. For a rating of which nothing is published the strictest figure of the others is
/// assumed, which hardly differ. Where no table reaches so far, or the record holds on one side only, it is
/// the most that it can be, with the bound that says so, and noted on the sheet.
Figure<Ratio> shareInWarmth(const CircuitContext& context, Current rated, Worksheet& sheet);

/// Times of a device; nullptr where nothing is promised.
using OvercurrentTimes = std::shared_ptr<const Sourced<physics::DeviceTimes>>;

/// Where a release acts that is set to `setting`, in multiples of `rated`.
InstantaneousBand setBand(Current setting, Current rated, const physics::Spread& spread,
                          const Source& source);

/// When a device operates: an adjustable breaker by its settings, any other by what is published about its
/// family; that belongs to the tables. Nothing where family or rated current are not known.
OvercurrentTimes overcurrentTimes(const ReferenceTables& tables, const Device& device);

} // namespace loopwright
