// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/place.h"

#include <fmt/format.h>

namespace loopwright::sitefile {

std::string ordinal(std::size_t number) {
    const std::size_t lastTwo = number % 100;
    const bool teen = lastTwo >= 11 && lastTwo <= 13;
    const std::string_view ending = teen               ? "th"
                                    : number % 10 == 1 ? "st"
                                    : number % 10 == 2 ? "nd"
                                    : number % 10 == 3 ? "rd"
                                                       : "th";
    return fmt::format("{}{}", number, ending);
}

std::string Place::text() const {
    if (!parent_) return {};
    const std::string before = parent_->text();
    const std::string own = index_ ? ordinal(*index_ + 1) : std::string(key_);
    return before.empty() ? own : before + ", " + own;
}

} // namespace loopwright::sitefile
