// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/paginate.h"

#include <gtest/gtest.h>

#include <cmath>

#include <string>

namespace loopwright::report {
namespace {

constexpr PageRoom room{100, 60};

Block block(double height, double gapBefore = 0, bool keepWithNext = false) {
    return {height, gapBefore, keepWithNext};
}
Block row(int table, double height, bool keepWithNext = false, bool counts = true) {
    Block made{height, 0, keepWithNext};
    made.table = table;
    made.counts = counts;
    return made;
}

/// "P b0@0 b1@40 | L h0@0 b2@10 f0@30": a page after the other, what stands on it and how far down.
std::string drawn(const std::vector<PagePlan>& pages) {
    std::string all;
    for (const PagePlan& page : pages) {
        if (!all.empty()) all += " | ";
        all += page.form == PageForm::Portrait ? "P" : "L";
        for (const Placed& placed : page.placed) {
            const char* part = placed.part == Placed::Part::Block          ? "b"
                               : placed.part == Placed::Part::Head         ? "h"
                               : placed.part == Placed::Part::RepeatedHead ? "H"
                                                                           : "f";
            all += std::string(" ") + part + std::to_string(placed.index) + "@" +
                   std::to_string(std::lround(placed.top));
        }
    }
    return all;
}

TEST(Paginate, putsBlocksBelowEachOtherWithTheirGaps) {
    EXPECT_EQ(drawn(paginate(std::vector{block(40), block(30, 10)}, {}, room)), "P b0@0 b1@50");
}

TEST(Paginate, beginsAPageWhereABlockHasNoRoomAndDropsItsGap) {
    EXPECT_EQ(drawn(paginate(std::vector{block(70), block(21, 10)}, {}, room)), "P b0@0 | P b1@0");
    EXPECT_EQ(drawn(paginate(std::vector{block(70), block(20, 10)}, {}, room)), "P b0@0 b1@80");
}

TEST(Paginate, keepsAHeadingWithWhatItHeads) {
    EXPECT_EQ(drawn(paginate(std::vector{block(80), block(10, 0, true), block(20)}, {}, room)),
              "P b0@0 | P b1@0 b2@10");
}

TEST(Paginate, takesApartAChainThatNoPageHolds) {
    EXPECT_EQ(drawn(paginate(std::vector{block(10), block(60, 0, true), block(60)}, {}, room)),
              "P b0@0 b1@10 | P b2@0");
}

TEST(Paginate, beginsAPageWhenAskedOrWhenTheFormChanges) {
    Block first = block(10);
    Block second = block(10);
    second.startsPage = true;
    Block lying = block(10);
    lying.form = PageForm::Landscape;
    EXPECT_EQ(drawn(paginate(std::vector{first, second, lying, first}, {}, room)),
              "P b0@0 | P b1@0 | L b2@0 | P b3@0");
}

TEST(Paginate, repeatsHeadAndFootOfATableOnEachPage) {
    const std::vector<TableRule> tables{{10, 5, 0}};
    const std::vector rows{row(0, 40), row(0, 40), row(0, 40)};
    EXPECT_EQ(drawn(paginate(rows, tables, room)), "P h0@0 b0@10 b1@50 f0@90 | P H0@0 b2@10 f0@50");
}

TEST(Paginate, leavesRoomForTheFoot) {
    const std::vector<TableRule> tables{{10, 11, 0}};
    EXPECT_EQ(drawn(paginate(std::vector{row(0, 40), row(0, 40)}, tables, room)),
              "P h0@0 b0@10 f0@50 | P H0@0 b1@10 f0@50");
}

TEST(Paginate, closesATableBeforeWhatFollows) {
    const std::vector<TableRule> tables{{10, 5, 0}, {8, 0, 0}};
    EXPECT_EQ(drawn(paginate(std::vector{row(0, 20), block(10), row(1, 20)}, tables, room)),
              "P h0@0 b0@10 f0@30 b1@35 h1@45 b2@53");
}

TEST(Paginate, neverStrandsAHeadBelowARowOfAnotherTable) {
    const std::vector<TableRule> tables{{10, 0, 0}};
    EXPECT_EQ(drawn(paginate(std::vector{block(85), row(0, 10)}, tables, room)), "P b0@0 | P h0@0 b1@10");
}

TEST(Paginate, limitsTheRowsOfAPage) {
    const std::vector<TableRule> tables{{10, 0, 2}};
    const std::vector rows{row(0, 5), row(0, 5), row(0, 5), row(0, 5), row(0, 5)};
    EXPECT_EQ(drawn(paginate(rows, tables, room)), "P h0@0 b0@10 b1@15 | P H0@0 b2@10 b3@15 | P H0@0 b4@10");
}

TEST(Paginate, doesNotLeaveAHeadingBetweenRowsBehind) {
    const std::vector<TableRule> tables{{10, 0, 2}};
    const std::vector rows{row(0, 5), row(0, 5), row(0, 5, true, false), row(0, 5)};
    EXPECT_EQ(drawn(paginate(rows, tables, room)), "P h0@0 b0@10 b1@15 | P H0@0 b2@10 b3@15");
}

/// Whatever the blocks are: each stands once, in order, none reaches below the page unless it is higher than
/// one.
TEST(Paginate, losesNothingAndCutsNothing) {
    std::vector<Block> blocks;
    unsigned state = 7;
    const auto next = [&](unsigned below) { return (state = state * 1103515245U + 12345U) / 65536U % below; };
    const std::vector<TableRule> tables{{7, 3, 4}, {0, 9, 0}, {12, 0, 0}};
    for (int index = 0; index < 2000; ++index) {
        Block made = block(1 + next(45), next(6), next(4) == 0);
        made.table = index / 9 % 4 - 1;
        made.counts = next(5) != 0;
        made.startsPage = next(60) == 0;
        made.form = index / 100 % 3 == 2 ? PageForm::Landscape : PageForm::Portrait;
        blocks.push_back(made);
    }
    int expected = 0;
    for (const PagePlan& page : paginate(blocks, tables, room)) {
        EXPECT_FALSE(page.placed.empty());
        for (const Placed& placed : page.placed) {
            const auto index = static_cast<std::size_t>(placed.index);
            const double height = placed.part == Placed::Part::Block  ? blocks[index].height
                                  : placed.part == Placed::Part::Foot ? tables[index].footHeight
                                                                      : tables[index].headHeight;
            EXPECT_LE(placed.top + height, room.of(page.form) + 1e-6)
                << "below the page before block " << expected;
            if (placed.part != Placed::Part::Block) continue;
            EXPECT_EQ(placed.index, expected);
            EXPECT_EQ(page.form, blocks[index].form);
            ++expected;
        }
    }
    EXPECT_EQ(expected, 2000);
}

} // namespace
} // namespace loopwright::report
