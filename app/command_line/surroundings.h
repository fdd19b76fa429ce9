// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/knowledge.h"
#include "core/model/clock.h"
#include "core/model/id.h"
#include "forms/words/words.h"

#include <ostream>
#include <string>

namespace loopwright {

/// What a command works with: where it speaks, in whose words, and what it may not ask for globally.
struct CommandSurroundings {
    std::ostream& out; ///< results only
    std::ostream& err; ///< why something was not done
    const Words& words;
    const Knowledge& knowledge;
    const Clock& clock;
    IdSource& ids;
    std::string author; ///< who the journal says did it
};

/// Exit codes of every command.
inline constexpr int exitDone = 0;
inline constexpr int exitRefused = 1; ///< a sentence on err says why
inline constexpr int exitUsage = 2;   ///< the command was not understood

/// Says a sentence on err and gives exitRefused.
int refuse(const CommandSurroundings& surroundings, const QString& sentence);

} // namespace loopwright
