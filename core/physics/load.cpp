// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/load.h"

namespace loopwright::physics {

Current loadCurrent(Power power, Voltage lineToEarth, bool threePhase, Ratio powerFactor, Ratio efficiency) {
    const double phases = threePhase ? 3 : 1;
    return power / lineToEarth / (phases * powerFactor * efficiency);
}

Power loadPower(Current current, Voltage lineToEarth, bool threePhase, Ratio powerFactor, Ratio efficiency) {
    const double phases = threePhase ? 3 : 1;
    return current * lineToEarth * (phases * powerFactor * efficiency);
}

Power resistivePower(Power rated, Voltage ratedVoltage, Voltage actual) {
    const Ratio ratio = actual / ratedVoltage;
    return rated * (ratio * ratio);
}

} // namespace loopwright::physics
