// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/circuit_log.h"
#include "forms/words/overload_words.h"

#include <vector>

namespace loopwright {

/// What was found in a logged current, in a few sentences: how high it went and for how long, what the
/// earliest and the latest sound device would have done, and how warm the conductors got: from cold, and
/// where that makes a difference had it gone on before as it did in the log.
QString loggedSentences(const CircuitLog& log, const Words& words);

/// The same and more as figures, one a line.
std::vector<OverloadFact> loggedFacts(const CircuitLog& log, const Words& words);

} // namespace loopwright
