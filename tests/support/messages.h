// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/phrases.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <stdexcept>
#include <string>
#include <tl/expected.hpp>

namespace loopwright {

/// The message as a test's failure shows it.
inline std::string shown(const Message& message) {
    std::string text(message.key);
    for (const Argument& argument : message.arguments) {
        if (const auto* name = std::get_if<std::string>(&argument)) text += " [" + *name + "]";
        if (const auto* number = std::get_if<std::int64_t>(&argument))
            text += " [" + std::to_string(*number) + "]";
        if (const auto* measure = std::get_if<Measure>(&argument))
            text += " [" + std::to_string(measure->value) + "]";
        if (const auto* word = std::get_if<Word>(&argument)) text += " [" + std::string(word->key) + "]";
    }
    return text;
}

inline void PrintTo(const Message& message, std::ostream* out) {
    *out << shown(message);
}

/// The value, or an exception with the refusal, which fails the test.
template <class T>
T must(tl::expected<T, Message> outcome) {
    if (!outcome) throw std::runtime_error("refused: " + shown(outcome.error()));
    if constexpr (!std::is_void_v<T>) return std::move(*outcome);
}

/// The key of the refusal, which must be a phrase whose places the arguments fill; "" when nothing was
/// refused.
template <class T>
std::string refusal(const tl::expected<T, Message>& outcome) {
    if (outcome) return {};
    const Message& message = outcome.error();
    const auto known = phrase(message.key);
    EXPECT_TRUE(known) << shown(message);
    if (known) {
        const auto places = known->arguments.empty() ? 0 : std::ranges::count(known->arguments, ',') + 1;
        EXPECT_EQ(static_cast<std::ptrdiff_t>(message.arguments.size()), places) << shown(message);
    }
    return std::string(message.key);
}

} // namespace loopwright
