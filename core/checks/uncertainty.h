// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/reference/practice.h"

#include <array>

namespace loopwright {

/// How far the readings of one quantity may be off in a visit: the most that one of its instruments records,
/// otherwise the most that IEC 61557 allows.
struct Uncertainty {
    Ratio share = 0;                  ///< of the reading
    const Source* standard = nullptr; ///< nothing where an instrument records it
};
using Uncertainties = std::array<Uncertainty, measurandCount>; ///< in the order of Measurand

} // namespace loopwright
