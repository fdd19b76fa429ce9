// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"
#include "core/units/quantity.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

/// What a current logger wrote: columns of text, whatever logger it was.
namespace loopwright::overload {

/// One current over time. Each sample holds until the next; the last for `lastStep`. Where nothing was logged
/// a sample of 0 A stands, and the time counts in `gaps`.
struct LoggedChannel {
    /// A stretch of time in which nothing was logged, in seconds since the first sample.
    struct Gap {
        double from;
        double to;
        friend bool operator==(const Gap&, const Gap&) = default;
    };
    std::string name;            ///< of its column; "1", "2" where columns have no names
    std::vector<double> seconds; ///< rising, the first is 0
    std::vector<double> amperes; ///< as many; finite, not negative
    Time lastStep;
    Time gaps;                  ///< together
    std::vector<Gap> gapsApart; ///< in order, none touching the next; each begins with a sample
};

/// All that was read from one log.
struct LoggedCurrents {
    std::vector<LoggedChannel> channels; ///< at least one; those whose name says so first
};

inline constexpr std::string_view logMediaType = "text/csv";
/// A file larger than this is refused; who reads files looks at their size first.
inline constexpr std::size_t largestLog = 64u << 20;

/// Reads a log: lines of a time and one or more currents, parted by semicolon, tab or comma; what is quoted
/// is one cell. Times are seconds (or what unit the column's name says), ISO dates with times, in one column
/// or two, or clock times; they rise. Numbers have a decimal point or a comma, as the first that has either.
/// Lines before the first that reads so are passed over, the last of them may name the columns ("I1 [mA]");
/// columns whose name says that they hold no current are passed over too. An empty cell is a gap, and so is a
/// step more than ten times the usual one.
///
/// The refusal says what is wrong and in which line.
tl::expected<LoggedCurrents, Message> readCurrentLog(std::string_view bytes);

/// The channel of that name, the first for an empty one; nullptr where the log has none of that name.
const LoggedChannel* channelOf(const LoggedCurrents& log, std::string_view name);

} // namespace loopwright::overload
