// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string_view>

/// What the head of a log's column says that the column holds.
namespace loopwright::overload {

struct LogHead {
    enum class Holds : std::uint8_t { Unsaid, Time, Current, Other };
    Holds holds = Holds::Unsaid;
    double factor = 1; ///< to seconds, or to amperes
};

/// Reads the unit that a head ends in or bears in brackets or behind a stroke ("I [mA]", "Time / min",
/// "I_A"), and words such as "Voltage" where it bears none.
LogHead logHead(std::string_view name);

} // namespace loopwright::overload
