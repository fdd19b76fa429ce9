// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command_line/loaded_site.h"

namespace loopwright {

/// What a person reads at a terminal: the answer, what fails, is close or cannot be told by board, what was
/// observed, and how many of each.
std::string summary(const LoadedSite& site, const Words& words);

} // namespace loopwright
