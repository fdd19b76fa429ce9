// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/clock.h"
#include "core/model/installation.h"
#include "core/reference/rule_set.h"
#include "forms/words/words.h"

namespace loopwright {

/// A site to begin with: one supply, one board, one open visit that starts today and is judged by `rules`.
Installation newSite(IdSource& ids, const Clock& clock, const RuleSet& rules);

/// An open visit of the site that starts today.
Visit newVisit(const Installation& installation, IdSource& ids, const Clock& clock, const RuleSet& rules);

} // namespace loopwright
