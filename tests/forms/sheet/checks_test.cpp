// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/context.h"
#include "forms/sheet/columns.h"

#include <gtest/gtest.h>

#include <set>

using namespace loopwright;

namespace {

/// Checks that no single cell answers for: the verdict column and Reasons say them.
const std::set<std::string_view> withoutCell{"completeness", "phases", "plug-fuse"};

TEST(SheetColumns, EveryCheckOfACircuitHasItsCellOrIsKnownToHaveNone) {
    for (const auto& check : circuitChecks()) {
        Finding finding;
        finding.check = check.key;
        EXPECT_NE(columnOf(finding).has_value(), withoutCell.contains(check.key)) << check.key;
    }
}

} // namespace
