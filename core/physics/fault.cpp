// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/fault.h"

namespace loopwright::physics {

Current prospectiveCurrent(Voltage lineToEarth, Ratio voltageFactor, Resistance loop) {
    return lineToEarth * voltageFactor / loop;
}

Current threePhaseFromLineToNeutral(Current lineToNeutral) {
    return 2 * lineToNeutral;
}

} // namespace loopwright::physics
