// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>

namespace loopwright {

/// The keys of what a check says: "check.<check>.name", ".holds", ".close" and ".fails".
struct CheckPhrasing {
    std::string_view check; ///< "load-device"
    std::string_view name;
    std::string_view holds;
    std::string_view close;
    std::string_view fails;
};

namespace detail {

template <std::size_t Size>
struct FixedText {
    std::array<char, Size> text{};
    consteval FixedText(const char (&literal)[Size]) { std::copy_n(literal, Size, text.begin()); }
    constexpr std::string_view view() const { return {text.data(), Size - 1}; }
};

/// "check." + Check + "." + Ending, put together by the compiler so that keys stay in static storage.
template <FixedText Check, FixedText Ending>
struct PhraseKey {
    static constexpr std::string_view start = "check.";
    static constexpr auto joined = [] {
        std::array<char, start.size() + Check.view().size() + 1 + Ending.view().size()> text{};
        auto end = std::copy(start.begin(), start.end(), text.begin());
        end = std::copy(Check.view().begin(), Check.view().end(), end);
        *end++ = '.';
        std::copy(Ending.view().begin(), Ending.view().end(), end);
        return text;
    }();
    static constexpr std::string_view value{joined.data(), joined.size()};
};

template <FixedText Text>
inline constexpr auto stored = Text;

} // namespace detail

template <detail::FixedText Check>
inline constexpr CheckPhrasing phrasing{detail::stored<Check>.view(), detail::PhraseKey<Check, "name">::value,
                                        detail::PhraseKey<Check, "holds">::value,
                                        detail::PhraseKey<Check, "close">::value,
                                        detail::PhraseKey<Check, "fails">::value};

} // namespace loopwright
