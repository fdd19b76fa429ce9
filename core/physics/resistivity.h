// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/quantity.h"

namespace loopwright::physics {

using Resistivity =
    Quantity<Dimension{.ampere = -2, .volt = 2, .metre = -2, .squareMillimetre = 2}>; ///< ohm mm2/m

} // namespace loopwright::physics
