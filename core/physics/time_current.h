// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <cstdint>
#include <optional>
#include <vector>

/// When a sound overcurrent device operates: a band, because a standard limits a whole set of conforming
/// devices.
namespace loopwright::physics {

struct TimeCurrent {
    Current current;
    Time time;
};

/// What standard and tables promise of a device of one family and rating.
struct DeviceTimes {
    std::vector<TimeCurrent> notBefore;  ///< at this current or less it holds out for at least this time
    std::vector<TimeCurrent> operatedBy; ///< at this current or more it has operated within this time
    std::vector<TimeCurrent> curve;      ///< published points of the slowest sound device, current rising
};

enum class EdgeKind : std::uint8_t {
    At,        ///< published for this current, or between two published points of a curve
    Within,    ///< beyond the published points; a limit that still holds there (time falls as current rises)
    Unlimited, ///< nothing is promised: on the latest side it may never operate, on the earliest it may do so
               ///< at once
};

/// One edge of the band. `time` counts only with At and Within.
struct TimeEdge {
    EdgeKind kind = EdgeKind::Unlimited;
    Time time;
    bool isLimited() const { return kind != EdgeKind::Unlimited; }
    friend bool operator==(const TimeEdge&, const TimeEdge&) = default;
};

struct TimeBand {
    TimeEdge earliest; ///< Within: it holds out at least this long
    TimeEdge latest;   ///< Within: it has operated at the latest by then
    friend bool operator==(const TimeBand&, const TimeBand&) = default;
};

/// The band at one current. Time falls as current rises, so a promise at one current is kept on its far side
/// too; between two points of the curve the time is interpolated on logarithmic scales (real curves sag below
/// that chord, so the latest time errs on the late side). Nothing is extrapolated: past the last point the
/// answer is Within the last time, below every promise it is Unlimited.
TimeBand operatingTime(const DeviceTimes& device, Current current);

/// One edge of a band of currents. `current` counts only with At and Within.
struct CurrentEdge {
    EdgeKind kind = EdgeKind::Unlimited;
    Current current;
    bool isLimited() const { return kind != EdgeKind::Unlimited; }
    friend bool operator==(const CurrentEdge&, const CurrentEdge&) = default;
};

struct CurrentBand {
    CurrentEdge holds;    ///< the largest current that a sound device carries for so long without operating
    CurrentEdge operates; ///< the smallest current that is sure to operate it by then
    friend bool operator==(const CurrentBand&, const CurrentBand&) = default;
};

/// The band at one time: the converse of operatingTime, by the same promises and the same interpolation. At
/// means that the limit is published for this time or lies between two points of the curve; Within, that it
/// is published for a longer (holds) or a shorter time (operates) and therefore holds here too.
CurrentBand currentForTime(const DeviceTimes& device, Time time);

/// The most I2t that a sound fuse lets through at one current. A fuse melts by energy, so at a larger current
/// it lets through no more than at a smaller one (IEC 60269-1, I2t characteristics: they fall towards that of
/// adiabatic melting); a promise at a smaller current therefore bounds it as well. Nothing where no time is
/// promised.
std::optional<JouleIntegral> largestFuseEnergy(const DeviceTimes& device, Current current);

} // namespace loopwright::physics
