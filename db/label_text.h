// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/phrases/message.h"

#include <string>
#include <string_view>

/// The labels of changes as the journal keeps them: key and arguments, put into words when somebody reads
/// them.
namespace loopwright {

/// The arguments as a JSON array: "Board C" is a text, 3 a whole number,
/// {"value":0.5,"unit":"Ω","decimals":2} a figure,
/// {"word":"record.board"} a word.
std::string argumentsText(const Message& label);

/// Reads a label back. A key or word that this program does not know (a newer one has written it) becomes one
/// that says so; a unit that it does not know is written out beside its number.
Message labelFrom(std::string_view key, std::string_view argumentsText);

} // namespace loopwright
