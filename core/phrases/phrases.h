// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"

#include <optional>
#include <span>

namespace loopwright {

/// One sentence or word that the core can say. `text` holds the places {0}, {1}, ... for a message's
/// arguments; `arguments` names what goes there, for translators and for the test that compares both.
struct Phrase {
    std::string_view key;       ///< "check.load-device.fails"
    std::string_view text;      ///< English
    std::string_view arguments; ///< "current, current", one word an argument; empty when there are none
};

/// Every phrase, sorted by key.
std::span<const Phrase> phrases();
/// The phrase of that key, or nothing.
std::optional<Phrase> phrase(std::string_view key);

} // namespace loopwright
