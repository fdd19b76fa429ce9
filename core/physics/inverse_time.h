// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

#include <optional>

/// Relays whose time falls as the current rises, by a formula that the standard gives.
namespace loopwright::physics {

/// t = T k / ((I / I_s)^alpha - 1) (IEC 60255-151, the constant c left out, which is 0 in its curves A to C).
struct InverseCurve {
    Time k;
    double alpha = 1;
};

/// When the relay operates: `multiple` is the current over its setting, `timeMultiplier` the T that is set.
/// Nothing at or below the setting, where it never does.
std::optional<Time> inverseTime(const InverseCurve& curve, Ratio multiple, Ratio timeMultiplier);

/// The multiple of the setting that operates the relay in `time`: the converse of inverseTime.
Ratio inverseMultiple(const InverseCurve& curve, Time time, Ratio timeMultiplier);

} // namespace loopwright::physics
