// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/overload/logged_current.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::overload {

/// A logged current over time and what it did to conductor and device, as values. A log has more samples than
/// a picture has places: each column keeps the least and the most of what fell into it, so that no peak is
/// lost.
struct LogPicture {
    struct Column {
        Time from;
        Time to;
        bool isLogged = false; ///< something was logged within it
        Current least;         ///< counts only where it is logged
        Current most;
        Temperature conductor; ///< its warmest; counts only with a limit
        /// Highest thermal state of the earliest and the latest sound device, which operates at 1; nothing
        /// once it has operated, and where no limit says how warm it gets.
        std::optional<Ratio> earliest;
        std::optional<Ratio> latest;
    };
    std::string_view device; ///< the phrase that names it: "check.word.fuse"; static storage
    Current rated;
    std::vector<Column> columns;          ///< all of the log, side by side, each as wide as the next
    std::optional<Temperature> limit;     ///< of the conductor's insulation
    std::optional<Time> earliestOperated; ///< when the earliest device would have operated
    std::optional<Time> latestOperated;
};

/// More columns than a page or a screen is wide show nothing more.
inline constexpr std::size_t usualColumns = 1000;

/// From cold, as the answer is: the conductor at its warmest, the earliest device at the worst and the latest
/// at the best that any sound one is. `answer` is that to the same question about the same channel.
LogPicture logPicture(const LoggedQuestion& question, const LoggedChannel& channel,
                      const LoggedAnswer& answer, std::size_t columns = usualColumns);

} // namespace loopwright::overload
