// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/inverse_time.h"

#include <cmath>

namespace loopwright::physics {

std::optional<Time> inverseTime(const InverseCurve& curve, Ratio multiple, Ratio timeMultiplier) {
    if (!(multiple > 1)) return std::nullopt;
    return timeMultiplier * curve.k / std::expm1(curve.alpha * std::log(multiple));
}

Ratio inverseMultiple(const InverseCurve& curve, Time time, Ratio timeMultiplier) {
    return std::exp(std::log1p(timeMultiplier * curve.k / time) / curve.alpha);
}

} // namespace loopwright::physics
