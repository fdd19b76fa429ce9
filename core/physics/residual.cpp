// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/residual.h"

namespace loopwright::physics {

Voltage touchVoltage(Resistance electrode, Current ratedResidual) {
    return electrode * ratedResidual;
}

Resistance largestElectrodeResistance(Voltage touchVoltageLimit, Current ratedResidual) {
    return touchVoltageLimit / ratedResidual;
}

Current largestResidualCurrent(Voltage touchVoltageLimit, Resistance electrode) {
    return touchVoltageLimit / electrode;
}

bool residualDevicesSelective(Current upstream, bool upstreamIsDelayed, Current downstream, Ratio ratio) {
    return upstreamIsDelayed && upstream >= ratio * downstream;
}

} // namespace loopwright::physics
