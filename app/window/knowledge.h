// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"

#include <vector>

namespace loopwright {

/// What the program knows without being told: published tables and rule sets. Read once, outlives every book.
struct Knowledge {
    ReferenceTables tables = ReferenceTables::builtIn();
    std::vector<RuleSet> ruleSets = builtInRuleSets();
};

} // namespace loopwright
