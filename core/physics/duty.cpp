// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/duty.h"

namespace loopwright::physics {

Time lengthOf(Duty duty) {
    Time length;
    for (const DutyStep& step : duty)
        length += step.duration;
    return length;
}

} // namespace loopwright::physics
