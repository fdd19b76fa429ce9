// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/entry.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace loopwright {
namespace {

/// More digits than a double carries, or than any instrument shows, would not come back as they were typed.
constexpr std::size_t mostDigits = 15;
constexpr std::string_view limitMark = "LIM:";
constexpr std::string_view notApplicableText = "N/A";

struct OriginWord {
    Origin origin;
    std::string_view word;
};
constexpr std::array originWords{OriginWord{Origin::Read, "read"}, OriginWord{Origin::Typed, "typed"},
                                 OriginWord{Origin::Carried, "carried"},
                                 OriginWord{Origin::Computed, "computed"},
                                 OriginWord{Origin::Assumed, "assumed"}};

constexpr std::string_view noBreakSpace = "\u00A0";

std::string_view trimmed(std::string_view text) {
    for (bool again = true; again && !text.empty();) {
        again = false;
        if (text.front() == ' ' || text.front() == '\t')
            text.remove_prefix(1), again = true;
        else if (text.starts_with(noBreakSpace))
            text.remove_prefix(noBreakSpace.size()), again = true;
        if (text.empty()) break;
        if (text.back() == ' ' || text.back() == '\t')
            text.remove_suffix(1), again = true;
        else if (text.ends_with(noBreakSpace))
            text.remove_suffix(noBreakSpace.size()), again = true;
    }
    return text;
}

bool sameLetters(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, [](char x, char y) {
        return std::tolower(static_cast<unsigned char>(x)) == std::tolower(static_cast<unsigned char>(y));
    });
}

Message refusal(std::string_view key, std::string_view text) {
    return {key, {std::string(text)}};
}

/// Takes a trailing "(carried)" off `text`.
std::optional<Origin> takeOrigin(std::string_view& text) {
    if (!text.ends_with(')')) return std::nullopt;
    const std::size_t open = text.rfind('(');
    if (open == std::string_view::npos) return std::nullopt;
    const std::optional<Origin> origin = originNamed(text.substr(open + 1, text.size() - open - 2));
    if (origin) text = trimmed(text.substr(0, open));
    return origin;
}

struct Digits {
    std::string text; ///< C form
    std::uint8_t decimals = 0;
};

/// The number at the start of `text`, which is left with what follows it. Nothing if there is none.
std::optional<Digits> takeNumber(std::string_view& text, const NumberFormat& format) {
    Digits digits;
    std::string_view rest = text;
    if (rest.starts_with("\u2212"))
        digits.text = "-", rest.remove_prefix(std::string_view("\u2212").size());
    else if (rest.starts_with('-'))
        digits.text = "-", rest.remove_prefix(1);
    bool seenDigit = false, seenPoint = false;
    while (!rest.empty()) {
        const char c = rest.front();
        const bool point = c == format.decimalPoint || c == '.' || c == ',';
        if (c >= '0' && c <= '9') {
            digits.text += c;
            seenDigit = true;
            if (seenPoint) ++digits.decimals;
            rest.remove_prefix(1);
        } else if (!format.groupSeparator.empty() && seenDigit && !seenPoint &&
                   rest.starts_with(format.groupSeparator)) {
            rest.remove_prefix(format.groupSeparator.size());
        } else if (point && !seenPoint) {
            digits.text += '.';
            seenPoint = true;
            rest.remove_prefix(1);
        } else {
            break;
        }
    }
    if (!seenDigit) return std::nullopt;
    text = rest;
    return digits;
}

/// The number that `digits` spells, counted in `from`, as `to` counts it. Keeps the typed precision: 8.5 kW
/// are 8500 W, 24 ms are 0.024 s.
tl::expected<EntryText, Message> converted(const Digits& digits, const Unit& from, const Unit& to,
                                           std::string_view typed) {
    double value = 0;
    const auto [end, problem] =
        std::from_chars(digits.text.data(), digits.text.data() + digits.text.size(), value);
    const auto count = std::ranges::count_if(digits.text, [](char c) { return c >= '0' && c <= '9'; });
    if (problem != std::errc{} || !std::isfinite(value) || static_cast<std::size_t>(count) > mostDigits)
        return tl::unexpected(refusal("entry.too-many-digits", typed));
    EntryText entry;
    entry.state = EntryState::Value;
    entry.decimals = digits.decimals;
    entry.value = value;
    if (from == to) return entry;
    entry.value = to.fromBase(from.toBase(value));
    const double shift = std::log10(to.toBase(1) / from.toBase(1));
    const int decimals =
        std::max(0, static_cast<int>(digits.decimals) + static_cast<int>(std::lround(shift)));
    entry.decimals = static_cast<std::uint8_t>(std::min(decimals, static_cast<int>(mostDigits)));
    return entry;
}

} // namespace

std::string_view originWord(Origin origin) {
    for (const OriginWord& known : originWords)
        if (known.origin == origin) return known.word;
    return {};
}

std::optional<Origin> originNamed(std::string_view word) {
    for (const OriginWord& known : originWords)
        if (known.word == word) return known.origin;
    return std::nullopt;
}

tl::expected<EntryText, Message> parseEntry(std::string_view typed, const Unit& unit,
                                            const NumberFormat& format) {
    std::string_view text = trimmed(typed);
    const std::optional<Origin> origin = takeOrigin(text);
    EntryText entry;
    if (text.empty()) {
        if (origin) return tl::unexpected(refusal("entry.origin-alone", typed));
        return entry;
    }
    if (text.size() >= limitMark.size() && sameLetters(text.substr(0, limitMark.size()), limitMark)) {
        entry.state = EntryState::Limited;
        entry.reason = trimmed(text.substr(limitMark.size()));
        if (entry.reason.empty()) return tl::unexpected(refusal("entry.limitation-without-reason", typed));
    } else if (sameLetters(text, notApplicableText)) {
        entry.state = EntryState::NotApplicable;
    } else {
        EntryState state = EntryState::Value;
        if (text.starts_with('>'))
            state = EntryState::Above, text = trimmed(text.substr(1));
        else if (text.starts_with('<'))
            state = EntryState::Below, text = trimmed(text.substr(1));
        const std::optional<Digits> digits = takeNumber(text, format);
        if (!digits) return tl::unexpected(refusal("entry.not-a-number", typed));
        Unit from = unit;
        if (const std::string_view unitText = trimmed(text); !unitText.empty()) {
            const std::optional<Unit> named = unitNamed(unitText);
            if (!named || named->dimension != unit.dimension || named->isTemperature != unit.isTemperature)
                return tl::unexpected(
                    Message{"entry.wrong-unit",
                            {std::string(typed), std::string(unitText), std::string(unit.symbol)}});
            from = *named;
        }
        tl::expected<EntryText, Message> number = converted(*digits, from, unit, typed);
        if (!number) return number;
        entry = *number;
        entry.state = state;
    }
    entry.origin = origin.value_or(Origin::Read);
    return entry;
}

std::string formatFigure(const EntryText& entry, const NumberFormat& format) {
    switch (entry.state) {
    case EntryState::Missing:
        return {};
    case EntryState::Limited:
        return fmt::format("{} {}", limitMark, entry.reason);
    case EntryState::NotApplicable:
        return std::string(notApplicableText);
    case EntryState::Value:
    case EntryState::Above:
    case EntryState::Below:
        break;
    }
    std::string number = fmt::format("{:.{}f}", entry.value, entry.decimals);
    std::ranges::replace(number, '.', format.decimalPoint);
    if (entry.state == EntryState::Above) return ">" + number;
    if (entry.state == EntryState::Below) return "<" + number;
    return number;
}

std::string formatEntry(const EntryText& entry, const NumberFormat& format) {
    std::string text = formatFigure(entry, format);
    if (text.empty() || entry.origin == Origin::Read) return text;
    return fmt::format("{} ({})", text, originWord(entry.origin));
}

} // namespace loopwright
