// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/shared_text.h"

namespace loopwright {

/// Where a figure, a limit or a rule was published. Copying one allocates nothing: look-ups hand them out by
/// the thousand.
struct Source {
    SharedText title;        ///< short: "IEC 60364-6:2016, table 6.1"
    SharedText confidence;   ///< of the row: "seen", "high", ...; empty where it does not apply
    bool fromMemory = false; ///< recalled, not seen on a page; said wherever the source is shown
    SharedText detail;       ///< the row's own account: table, page, where it was seen; too long for a sheet
    friend bool operator==(const Source&, const Source&) = default;
};

} // namespace loopwright
