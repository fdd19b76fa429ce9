// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/words/words.h"

#include <string>

namespace loopwright {

/// A sentence where nothing can be set below the line: symbols without their subscript marks ("Zs" for
/// "Z_s").
std::string plainSentence(const Words& words, const Message& message);

} // namespace loopwright
