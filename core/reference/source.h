// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace loopwright {

/// Where a figure, a limit or a rule was published.
struct Source {
    std::string title;       ///< short: "IEC 60364-6:2016, table 6.1"
    std::string confidence;  ///< of the row: "seen", "high", ...; empty where it does not apply
    bool fromMemory = false; ///< recalled, not seen on a page; said wherever the source is shown
    std::string detail;      ///< the row's own account: table, page, where it was seen; too long for a sheet
    friend bool operator==(const Source&, const Source&) = default;
};

} // namespace loopwright
