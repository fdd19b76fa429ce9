// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/motor.h"

#include <algorithm>

namespace loopwright::physics {

Power apparentPower(Voltage lineToEarth, Current line, bool threePhase) {
    return lineToEarth * line * (threePhase ? 3.0 : 1.0);
}

Ratio motorEfficiency(Power shaft, Voltage lineToEarth, Current line, Ratio powerFactor, bool threePhase) {
    return shaft / (apparentPower(lineToEarth, line, threePhase) * powerFactor);
}

Current startingCurrent(Current rated, Ratio directMultiple, const Starter& starter) {
    const Current direct = rated * directMultiple;
    switch (starter.kind) {
    case StarterKind::Direct:
        return direct;
    case StarterKind::StarDelta:
        return direct / 3;
    case StarterKind::Autotransformer:
        return direct * (starter.setting * starter.setting);
    case StarterKind::Soft:
        return std::min(direct, rated * starter.setting);
    }
    return direct;
}

} // namespace loopwright::physics
