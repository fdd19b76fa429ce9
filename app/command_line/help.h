// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <CLI/App.hpp>

namespace loopwright {

/// Lets the program and its commands explain themselves, and say what they did not understand, in this
/// program's words. To be called before commands are added, which take it over.
void speakPlainly(CLI::App& app);

} // namespace loopwright
