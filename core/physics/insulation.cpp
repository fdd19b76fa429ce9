// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/insulation.h"

namespace loopwright::physics {

Resistance inParallel(std::span<const Resistance> parts) {
    auto conductance = 1 / ohms(1) * 0.0;
    for (const Resistance part : parts)
        conductance += 1 / part;
    return 1 / conductance;
}

Resistance insulationOfLength(Resistance known, Length knownLength, Length length) {
    return known * (knownLength / length);
}

} // namespace loopwright::physics
