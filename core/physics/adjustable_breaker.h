// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/time_current.h"

#include <optional>

/// Circuit-breakers whose releases are set on site (IEC 60947-2).
namespace loopwright::physics {

/// What the dials of a breaker say, in amperes and seconds.
struct BreakerSettings {
    Current overload; ///< I_r
    std::optional<TimeCurrent>
        overloadTime; ///< t_r, and the current (a multiple of I_r) that it is stated at
    std::optional<TimeCurrent>
        shortTime; ///< I_sd and its delay t_sd; a delay of 0 leaves the time of an instantaneous release
    std::optional<Current> instantaneous; ///< I_i
};

/// From the least to the most of a setting, as multiples of it.
struct Spread {
    Ratio low = 1;
    Ratio high = 1;
};

/// How far a sound breaker may depart from its settings.
struct BreakerSpreads {
    Spread conventional; ///< of I_r: does not operate, and operates, within the conventional time
    Time conventionalTime;
    Spread overloadTime;     ///< of t_r
    Spread shortTimeCurrent; ///< of I_sd
    Spread shortTimeDelay;   ///< of t_sd
    Spread instantaneous;    ///< of I_i
    Time instantaneousTime;  ///< within which it operates above, and does not below
};

/// What settings and spreads promise. The overload release is promised at its conventional currents and at
/// the point that t_r is stated for, and no shape of its curve between them is assumed; a quicker release
/// that may act below that point takes its promise away.
DeviceTimes breakerTimes(const BreakerSettings& settings, const BreakerSpreads& spreads);

} // namespace loopwright::physics
