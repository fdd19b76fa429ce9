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

/// C_a, at most 1: the share of its rated current that a device carries in the warmth of its board, by
/// makers' tables; where they do not have its rating, or do not reach so far for it, by the strictest of the
/// others, which hardly differ. A cool place is no reason for more, since 433.1 of IEC 60364-4-43 compares
/// with I_n (condition 1). 1 where no temperature is recorded, and of devices whose standard names none that
/// they are calibrated at, which is shown. Beyond all tables, or where the record holds on one side only, it
/// comes with a bound, and is noted on the sheet.
Figure<Ratio> shareInWarmth(const VisitContext& visit, const Board& board, const DeviceFamily* family,
                            Current rated, Worksheet& sheet);

/// How many times its currents a device may need in the cold of its board before heat operates it, at least
/// 1: the most that makers publish for any rating. Nothing in a place colder than any of theirs. A bounded
/// temperature says nothing of the cold.
std::optional<Ratio> shareInCold(const ReferenceTables& tables, const Board& board,
                                 const DeviceFamily* family);

/// Times of a device; nullptr where nothing is promised.
using OvercurrentTimes = std::shared_ptr<const Sourced<physics::DeviceTimes>>;

/// Where a release acts that is set to `setting`, in multiples of `rated`.
InstantaneousBand setBand(Current setting, Current rated, const physics::Spread& spread,
                          const Source& source);

/// When a device operates: an adjustable breaker by its settings, any other by what is published about its
/// family; that belongs to the tables. Nothing where family or rated current are not known.
OvercurrentTimes overcurrentTimes(const ReferenceTables& tables, const Device& device);

} // namespace loopwright
