// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sitefile/problems.h"

#include <unordered_map>

namespace loopwright::sitefile {

/// Where a record stood in the file, and whether it came with an id of its own.
struct Row {
    std::string where;
    bool hasOwnId = false;
};
using Rows = std::unordered_map<Id, Row>;

/// Fills in the references that may be left out where only one record can be meant (the only supply, the
/// circuit's board), and refuses what contradicts itself: a second reading of the same thing, a name that two
/// neighbours bear without ids, a board that feeds itself, an observation about a circuit of another board.
void settleRelations(Installation& installation, const Rows& rows, Problems& problems);

} // namespace loopwright::sitefile
