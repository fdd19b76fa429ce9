// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/drop.h"

#include <numbers>

namespace loopwright::physics {

namespace {

Voltage nominal(Voltage lineToEarth, bool threePhase) {
    return threePhase ? std::numbers::sqrt3 * lineToEarth : lineToEarth;
}

} // namespace

Voltage voltageDrop(VoltagePerCurrentLength published, Current load, Length length) {
    return published * length * load;
}

VoltagePerCurrentLength dropFromResistance(ResistancePerLength conductor, bool threePhase) {
    return conductor * (threePhase ? std::numbers::sqrt3 : 2.0);
}

Ratio dropShare(Voltage drop, Voltage lineToEarth, bool threePhase) {
    return drop / nominal(lineToEarth, threePhase);
}

Length longestRun(VoltagePerCurrentLength published, Current load, Voltage lineToEarth, bool threePhase,
                  Ratio share) {
    return share * nominal(lineToEarth, threePhase) / (published * load);
}

} // namespace loopwright::physics
