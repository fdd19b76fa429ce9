// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/time_current.h"

#include <limits>
#include <optional>
#include <vector>

/// Whether of two devices in series only the one nearer to the fault operates (IEC 60050-441: overcurrent
/// discrimination).
namespace loopwright::physics {

/// The rated currents of two fuses over each other, to one decimal: preferred ratings are rounded, and 100 A
/// to 63 A counts as 1.6 (IEC 60269-1, 5.7.4).
Ratio ratioOfRatings(Current upstream, Current downstream);

/// Fuses of one kind whose rated currents stand at least in `ratio`, which has one decimal.
bool fusesSelectiveByRatio(Current upstream, Current downstream, Ratio ratio);

/// By energy: what the device downstream lets through at most is no more than the fuse upstream needs at
/// least to begin to melt. For fuses among themselves, and for a breaker of known let-through behind a fuse,
/// where fault currents are so large that times no longer tell them apart (IEC 60269-1, I2t characteristics).
bool selectiveByEnergy(JouleIntegral leastToMeltUpstream, JouleIntegral mostLetThroughDownstream);

/// Overload: the current that is sure to operate the device downstream does not yet operate the one upstream.
bool selectiveInOverload(Current nonOperatingUpstream, Current operatingDownstream);

struct CurrentRange {
    Current above; ///< exclusive
    Current upTo;  ///< inclusive
    friend bool operator==(const CurrentRange&, const CurrentRange&) = default;
};

/// The currents at which every sound device downstream has operated before any sound one upstream may: the
/// latest edge of the one lies below the earliest edge of the other. Rising, never touching each other.
/// Between them the published limits prove nothing, though two real devices may well be selective there.
std::vector<CurrentRange> provenSelectivity(const DeviceTimes& upstream, const DeviceTimes& downstream);

/// The end of the last of those ranges, of those that begin below `reach`; nothing where there is none. There
/// may be gaps before it.
std::optional<Current> provenUpTo(const DeviceTimes& upstream, const DeviceTimes& downstream,
                                  Current reach = amperes(std::numeric_limits<double>::infinity()));

/// The ranges with one more among them: rising, and those that touch are one.
std::vector<CurrentRange> joined(std::vector<CurrentRange> ranges, const CurrentRange& more);

/// The current from which on a fuse lets through no more than `energy`; nothing where no promise bounds it
/// so.
std::optional<Current> fuseWithinEnergy(const DeviceTimes& fuse, JouleIntegral energy);

} // namespace loopwright::physics
