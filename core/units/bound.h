// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace loopwright {

/// On which side of a figure the truth may lie.
enum class Bound : std::uint8_t {
    Exact,
    OrLess, ///< the figure or less: "<0.05", or a stand-in known to be on the large side
    OrMore, ///< the figure or more: ">999"
    Open,   ///< either side
};

} // namespace loopwright
