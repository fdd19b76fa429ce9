// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/assess/assessment.h"
#include "forms/words/words.h"

namespace loopwright {

/// An assessment as resources/schema/assessment.schema.json describes it, for other programs. Sentences are
/// those that a person reads, in the language of `words`; everything else does not depend on it.
std::string assessmentJson(const Installation& installation, const Assessment& assessment,
                           const Words& words);

} // namespace loopwright
