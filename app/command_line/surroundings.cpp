// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/surroundings.h"

namespace loopwright {

int refuse(const CommandSurroundings& surroundings, const QString& sentence) {
    surroundings.err << utf8(sentence) << '\n';
    return exitRefused;
}

} // namespace loopwright
