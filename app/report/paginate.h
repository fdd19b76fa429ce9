// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <span>
#include <vector>

/// Which block stands on which page, and where. Numbers in, numbers out: nothing here knows what a block
/// shows.
namespace loopwright::report {

enum class PageForm : std::uint8_t { Portrait, Landscape };

/// Something that is never cut by the end of a page. Lengths in any one unit.
struct Block {
    double height = 0;
    double gapBefore = 0;      ///< above it; falls away at the top of a page
    bool keepWithNext = false; ///< not the last block of a page while a next one follows in the same form
    bool startsPage = false;
    PageForm form = PageForm::Portrait; ///< a change of form begins a new page
    int table = -1;                     ///< the table that it is a row of; -1: none
    bool counts = true;                 ///< of a row: among those that TableRule::maxRows limits
};

/// A table's head is repeated above its rows on each page, and its foot below them. The rows are the blocks
/// that name the table and stand one after the other; head and foot are not among the blocks.
struct TableRule {
    double headHeight = 0;
    double footHeight = 0;
    int maxRows = 0; ///< on a page; 0: as many as have room
};

/// What to draw of a block or of a table on a page.
struct Placed {
    enum class Part : std::uint8_t { Block, Head, RepeatedHead, Foot };
    Part part = Part::Block;
    int index = 0;  ///< of the block, or of the table
    double top = 0; ///< from the top of the page's room
    friend bool operator==(const Placed&, const Placed&) = default;
};

struct PagePlan {
    PageForm form = PageForm::Portrait;
    std::vector<Placed> placed;
};

/// Heights that blocks may fill.
struct PageRoom {
    double portrait = 0;
    double landscape = 0;
    double of(PageForm form) const { return form == PageForm::Portrait ? portrait : landscape; }
};

/// Every block once, in order. Blocks that are kept together move to the next page together, unless they are
/// higher than a whole page. A block that is itself higher than a page stands alone and runs over: makers of
/// blocks see to that.
std::vector<PagePlan> paginate(std::span<const Block> blocks, std::span<const TableRule> tables,
                               const PageRoom& room);

} // namespace loopwright::report
