// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/flow.h"

#include <gtest/gtest.h>

#include <string>

namespace loopwright::report {
namespace {

/// A letter a row: "k" for one that is kept with the next, "." for one after which a page may end.
std::string keptRows(int count, int partsOfARow = 1) {
    Flow flow;
    flow.section(QStringLiteral("Section"), PageForm::Portrait);
    flow.openTable({});
    for (int row = 0; row < count; ++row)
        flow.row(Stack(static_cast<std::size_t>(partsOfARow), Box{10, 10, {}}));
    flow.closeTable();
    std::string kept;
    for (const Block& block : flow.finish().blocks)
        kept += block.keepWithNext ? 'k' : '.';
    return kept;
}

TEST(Flow, keepsTheFirstAndTheLastRowsOfATableTogether) {
    EXPECT_EQ(keptRows(0), "");
    EXPECT_EQ(keptRows(1), ".");
    EXPECT_EQ(keptRows(2), "k.");
    EXPECT_EQ(keptRows(3), "kk.");
    EXPECT_EQ(keptRows(5), "kkkk.");
    EXPECT_EQ(keptRows(6), "kk.kk.");
    EXPECT_EQ(keptRows(9), "kk....kk.");
}

TEST(Flow, letsARowInPartsGoOverPages) {
    EXPECT_EQ(keptRows(2, 3), "..k...");
}

TEST(Flow, keepsTheNextTableApart) {
    Flow flow;
    for (int table = 0; table < 2; ++table) {
        flow.openTable({});
        flow.row({Box{10, 10, {}}});
        flow.closeTable();
    }
    for (const Block& block : flow.finish().blocks)
        EXPECT_FALSE(block.keepWithNext);
}

} // namespace
} // namespace loopwright::report
