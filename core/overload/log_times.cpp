// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/log_times.h"

#include <charconv>
#include <chrono>
#include <cmath>

namespace loopwright::overload {

namespace {

constexpr double dayLength = 86400;

/// Takes digits from the front, as many as `least` to `most`.
std::optional<int> takeDigits(std::string_view& text, std::size_t least, std::size_t most) {
    std::size_t count = 0;
    int value = 0;
    while (count < most && count < text.size() && text[count] >= '0' && text[count] <= '9')
        value = value * 10 + (text[count++] - '0');
    if (count < least) return std::nullopt;
    text.remove_prefix(count);
    return value;
}

bool take(std::string_view& text, char expected) {
    if (text.empty() || text.front() != expected) return false;
    text.remove_prefix(1);
    return true;
}

std::optional<double> daysOf(int year, int month, int day) {
    const std::chrono::year_month_day date{std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day))};
    if (!date.ok()) return std::nullopt;
    return static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count()) * dayLength;
}

std::optional<double> takeDate(std::string_view& text) {
    const auto first = takeDigits(text, 1, 4);
    if (!first || text.empty()) return std::nullopt;
    const char divider = text.front();
    if (divider != '-' && divider != '.') return std::nullopt;
    text.remove_prefix(1);
    const auto second = takeDigits(text, 1, 2);
    if (!second || !take(text, divider)) return std::nullopt;
    const auto third = takeDigits(text, 1, 4);
    if (!third) return std::nullopt;
    // The year stands first between dashes, last between points.
    return divider == '-' ? daysOf(*first, *second, *third) : daysOf(*third, *second, *first);
}

/// "+01:00", "-0530", "Z", or nothing, in seconds.
std::optional<double> takeOffset(std::string_view& text) {
    if (take(text, 'Z') || take(text, 'z')) return 0;
    const bool east = take(text, '+');
    if (!east && !take(text, '-')) return 0;
    const auto hours = takeDigits(text, 2, 2);
    take(text, ':');
    const auto minutes = takeDigits(text, 0, 2);
    if (!hours || !minutes) return std::nullopt;
    return (east ? 1 : -1) * (*hours * 3600.0 + *minutes * 60.0);
}

std::optional<double> takeClock(std::string_view& text) {
    const auto hour = takeDigits(text, 1, 2);
    if (!hour || *hour > 24 || !take(text, ':')) return std::nullopt;
    const auto minute = takeDigits(text, 2, 2);
    if (!minute || *minute > 59) return std::nullopt;
    double time = *hour * 3600.0 + *minute * 60.0;
    if (!take(text, ':')) return time;
    const auto second = takeDigits(text, 2, 2);
    if (!second || *second > 60) return std::nullopt;
    time += *second;
    if (!take(text, '.') && !take(text, ',')) return time;
    double place = 0.1;
    for (; !text.empty() && text.front() >= '0' && text.front() <= '9'; place /= 10) {
        time += place * (text.front() - '0');
        text.remove_prefix(1);
    }
    return time;
}

} // namespace

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blank = " \r\"'";
    const std::size_t first = text.find_first_not_of(blank);
    if (first == text.npos) return {};
    return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

std::optional<double> logNumber(std::string_view cell, char decimalPoint) {
    constexpr std::size_t longest = 48;
    char digits[longest];
    if (cell.empty() || cell.size() > longest) return std::nullopt;
    if (cell.front() == '+') cell.remove_prefix(1);
    for (std::size_t i = 0; i < cell.size(); ++i) {
        const bool isMark = cell[i] == '.' || cell[i] == ',';
        if (isMark && decimalPoint == 0) decimalPoint = cell[i];
        if (isMark && cell[i] != decimalPoint) return std::nullopt;
        digits[i] = isMark ? '.' : cell[i];
    }
    double value = 0;
    const auto [end, failure] = std::from_chars(digits, digits + cell.size(), value);
    if (failure != std::errc{} || end != digits + cell.size()) return std::nullopt;
    return value;
}

std::optional<double> logDate(std::string_view cell) {
    const auto date = takeDate(cell);
    return cell.empty() ? date : std::nullopt;
}

std::optional<double> logClock(std::string_view cell) {
    const auto clock = takeClock(cell);
    return cell.empty() ? clock : std::nullopt;
}

std::optional<double> logDateTime(std::string_view cell) {
    const auto date = takeDate(cell);
    if (!date || (!take(cell, 'T') && !take(cell, ' '))) return std::nullopt;
    while (take(cell, ' ')) {
    }
    const auto clock = takeClock(cell);
    if (!clock) return std::nullopt;
    const auto offset = takeOffset(cell);
    return offset && cell.empty() ? std::optional(*date + *clock - *offset) : std::nullopt;
}

} // namespace loopwright::overload
