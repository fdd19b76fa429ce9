// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/log_heads.h"

#include "core/overload/log_times.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

namespace loopwright::overload {

namespace {

using enum LogHead::Holds;

struct NamedUnit {
    std::string_view name;
    LogHead head;
};

constexpr std::array knownUnits{
    NamedUnit{"ms", {Time, 1e-3}},
    NamedUnit{"s", {Time, 1}},
    NamedUnit{"sec", {Time, 1}},
    NamedUnit{"secs", {Time, 1}},
    NamedUnit{"second", {Time, 1}},
    NamedUnit{"seconds", {Time, 1}},
    NamedUnit{"min", {Time, 60}},
    NamedUnit{"mins", {Time, 60}},
    NamedUnit{"minute", {Time, 60}},
    NamedUnit{"minutes", {Time, 60}},
    NamedUnit{"h", {Time, 3600}},
    NamedUnit{"hr", {Time, 3600}},
    NamedUnit{"hrs", {Time, 3600}},
    NamedUnit{"hour", {Time, 3600}},
    NamedUnit{"hours", {Time, 3600}},
    NamedUnit{"d", {Time, 86400}},
    NamedUnit{"days", {Time, 86400}},
    NamedUnit{"A", {Current, 1}},
    NamedUnit{"amps", {Current, 1}},
    NamedUnit{"ampere", {Current, 1}},
    NamedUnit{"amperes", {Current, 1}},
    NamedUnit{"mA", {Current, 1e-3}},
    NamedUnit{"kA", {Current, 1e3}},
    NamedUnit{"V", {Other}},
    NamedUnit{"mV", {Other}},
    NamedUnit{"kV", {Other}},
    NamedUnit{"W", {Other}},
    NamedUnit{"kW", {Other}},
    NamedUnit{"Wh", {Other}},
    NamedUnit{"kWh", {Other}},
    NamedUnit{"VA", {Other}},
    NamedUnit{"kVA", {Other}},
    NamedUnit{"var", {Other}},
    NamedUnit{"kvar", {Other}},
    NamedUnit{"Hz", {Other}},
    NamedUnit{"%", {Other}},
    NamedUnit{"degC", {Other}},
    NamedUnit{"°C", {Other}},
    NamedUnit{"\xB0"
              "C",
              {Other}}, // in Latin-1
};

/// Words of quantities that are no current, in small letters.
constexpr std::array<std::string_view, 6> otherQuantities{"voltage",     "power",  "frequency",
                                                          "temperature", "energy", "humidity"};

std::string inSmallLetters(std::string_view text) {
    std::string small(text);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

/// Symbols count as they are written, words in whatever letters.
std::optional<LogHead> unitOf(std::string_view text) {
    constexpr std::size_t longestSymbol = 2; // "mA" is no "MA"; "Minutes" is minutes
    const std::string small = inSmallLetters(text);
    for (const NamedUnit& unit : knownUnits)
        if (text == unit.name || (text.size() > longestSymbol && small == unit.name)) return unit.head;
    return std::nullopt;
}

/// "[mA]", "(A)" anywhere; "/ min" at the end.
std::optional<LogHead> unitSetApart(std::string_view name) {
    for (std::size_t from = name.find_first_of("[("); from != name.npos;
         from = name.find_first_of("[(", from + 1)) {
        const std::size_t to = std::min(name.find_first_of("])", from), name.size());
        if (const auto unit = unitOf(trimmed(name.substr(from + 1, to - from - 1)))) return unit;
    }
    const std::size_t stroke = name.rfind('/');
    return stroke == name.npos ? std::nullopt : unitOf(trimmed(name.substr(stroke + 1)));
}

} // namespace

LogHead logHead(std::string_view name) {
    if (const auto unit = unitSetApart(name)) return *unit;
    const std::size_t divider = name.find_last_of(" _,");
    const auto last = unitOf(divider == name.npos ? name : name.substr(divider + 1));
    const std::string small = inSmallLetters(name);
    const auto says = [&](std::string_view word) { return small.find(word) != small.npos; };
    if (says("phase")) return {};
    // "Current V" is the current of phase V, "Voltage A" the voltage of phase A.
    if (says("current")) return last && last->holds == Current ? *last : LogHead{Current};
    if (std::ranges::any_of(otherQuantities, says)) return {Other};
    return last.value_or(LogHead{});
}

} // namespace loopwright::overload
