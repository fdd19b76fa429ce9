// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

/// Times and numbers as loggers write them.
namespace loopwright::overload {

/// How a log's first line that could be read wrote them; the others must follow.
struct LogFormat {
    enum class Times : unsigned char { Number, DateTime, DateAndTime, ClockTime };
    char separator = ';';
    char decimalPoint = 0; ///< none was seen yet
    Times times = Times::Number;
    std::size_t timeColumns() const { return times == Times::DateAndTime ? 2 : 1; }
};

/// The number in a cell; nothing where there is none, or more than one. A point or a comma parts its decimals
/// where `decimalPoint` is 0.
std::optional<double> logNumber(std::string_view cell, char decimalPoint);

/// Seconds since an arbitrary moment. "2026-03-10T08:00:05.25Z", "2026-03-10 08:00", "10.03.2026 08:00:05":
/// date and time of day, or one of both.
std::optional<double> logDate(std::string_view cell);
std::optional<double> logClock(std::string_view cell);
std::optional<double> logDateTime(std::string_view cell);

std::string_view trimmed(std::string_view text);

} // namespace loopwright::overload
