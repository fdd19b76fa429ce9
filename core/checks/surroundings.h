// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/worksheet.h"

/// What the temperature of its board does to a breaker: makers say what it carries in a warmer or cooler
/// place than the one it was calibrated in.
namespace loopwright {

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

/// shareInWarmth() of a circuit's own device, for a load to be held against: a place that is only known to be
/// no warmer than something may still leave all of the rating, and never more.
Figure<Ratio> shareUnder(const CircuitContext& context, Current load, Current rated, Worksheet& sheet);

/// What is published of a device's times, moved to its place: heat operates the earliest at less current in
/// the warmth, the latest at more in the cold, and what its magnet does stays. Where a share is not known
/// nothing is promised. Nothing where the place changes nothing.
std::optional<physics::DeviceTimes> timesInPlace(const ReferenceTables& tables, const Board& board,
                                                 const DeviceFamily& family, Current rated,
                                                 const physics::DeviceTimes& published);

} // namespace loopwright
