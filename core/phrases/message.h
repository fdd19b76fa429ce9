// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/units/bound.h"
#include "core/units/unit.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopwright {

/// A number with its unit on the way to a reader; `app` formats it by the reader's locale.
struct Measure {
    double value = 0; ///< in `unit`
    Unit unit = units::ratio;
    int decimals = -1; ///< digits after the point; -1 lets the formatter choose three significant ones
    Bound bound = Bound::Exact; ///< of a reading beyond the range: shown as ">99.9" or "<0.05"
    friend bool operator==(const Measure&, const Measure&) = default;
};

struct Message;

/// A word that has a phrase of its own ("fuse", "circuit"), translated where the message is.
struct Word {
    std::string_view key;
    friend bool operator==(const Word&, const Word&) = default;
};

/// Something a message mentions. Text is a name that somebody typed and is never translated.
using Argument = std::variant<std::string, std::int64_t, Measure, Word>;

/// A sentence that has not been put into words yet: the key of a phrase and what fills its places, in order.
/// core and db speak only in these; `app` makes the sentence in the reader's language.
struct Message {
    std::string_view key; ///< one of core/phrases; static storage
    std::vector<Argument> arguments;
    friend bool operator==(const Message&, const Message&) = default;
};

} // namespace loopwright
