// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/paginate.h"

#include <cstddef>

namespace loopwright::report {
namespace {

/// Rounding of heights that were added in another order.
constexpr double tolerance = 1e-6;
constexpr double tooMuch = 1e9;
constexpr int noTable = -1;

class Paginator {
  public:
    Paginator(std::span<const Block> blocks, std::span<const TableRule> tables, const PageRoom& room)
      : blocks_(blocks)
      , tables_(tables)
      , room_(room) {}

    std::vector<PagePlan> run() {
        for (std::size_t index = 0; index < blocks_.size(); ++index)
            place(index);
        closeTable();
        return std::move(pages_);
    }

  private:
    const TableRule& rule(int table) const { return tables_[static_cast<std::size_t>(table)]; }
    bool pageIsEmpty() const { return pages_.back().placed.empty(); }

    void place(std::size_t index) {
        const Block& block = blocks_[index];
        if (block.table != openTable_) closeTable();
        const bool mustStart = pages_.empty() || block.startsPage || block.form != pages_.back().form;
        if (mustStart || (!pageIsEmpty() && !fits(index))) startPage(block.form);
        openTable(block.table);
        if (!pageIsEmpty()) top_ += gapOf(block);
        put(Placed::Part::Block, static_cast<int>(index), block.height);
        if (block.table >= 0 && block.counts) ++rows_;
    }

    /// Directly below its table's head a row needs no distance.
    double gapOf(const Block& block) const { return block.table >= 0 && rows_ == 0 ? 0 : block.gapBefore; }

    void put(Placed::Part part, int index, double height) {
        pages_.back().placed.push_back({part, index, top_});
        top_ += height;
    }

    void startPage(PageForm form) {
        if (openTable_ >= 0) putFoot();
        pages_.push_back({form, {}});
        top_ = 0;
        rows_ = 0;
        if (openTable_ >= 0 && rule(openTable_).headHeight > 0)
            put(Placed::Part::RepeatedHead, openTable_, rule(openTable_).headHeight);
    }

    void openTable(int table) {
        if (table == openTable_) return;
        openTable_ = table;
        rows_ = 0;
        if (table < 0) return;
        if (rule(table).headHeight > 0) put(Placed::Part::Head, table, rule(table).headHeight);
    }

    void closeTable() {
        if (openTable_ >= 0) putFoot();
        openTable_ = noTable;
        rows_ = 0;
    }

    void putFoot() {
        if (rule(openTable_).footHeight > 0) put(Placed::Part::Foot, openTable_, rule(openTable_).footHeight);
    }

    /// Whether the block, with those that it must stay with, has room on this page. A chain that no page
    /// could hold is taken apart.
    bool fits(std::size_t index) const {
        const double room = room_.of(blocks_[index].form) + tolerance;
        const std::size_t end = chainEnd(index);
        if (needed(index, end, openTable_, rows_) <= room - top_) return true;
        return needed(index, end, noTable, 0) > room &&
               needed(index, index + 1, openTable_, rows_) <= room - top_;
    }

    std::size_t chainEnd(std::size_t index) const {
        while (blocks_[index].keepWithNext && index + 1 < blocks_.size() && !breaksAfter(index))
            ++index;
        return index + 1;
    }

    /// Height of these blocks and of what their tables need where `rows` of `table` stand above them; more
    /// than any page has when a table would get more rows than it may.
    double needed(std::size_t from, std::size_t to, int table, int rows) const {
        double height = 0;
        for (std::size_t at = from; at < to; ++at) {
            const Block& block = blocks_[at];
            if (block.table != table) {
                if (table >= 0) height += rule(table).footHeight;
                table = block.table;
                rows = 0;
                if (table >= 0) height += rule(table).headHeight;
            }
            height += (at == from ? gapOf(block) : block.gapBefore) + block.height;
            if (table >= 0 && block.counts && ++rows > rule(table).maxRows && rule(table).maxRows > 0)
                height += tooMuch;
        }
        return table >= 0 ? height + rule(table).footHeight : height;
    }

    bool breaksAfter(std::size_t index) const {
        const Block& next = blocks_[index + 1];
        return next.startsPage || next.form != blocks_[index].form;
    }

    std::span<const Block> blocks_;
    std::span<const TableRule> tables_;
    PageRoom room_;
    std::vector<PagePlan> pages_;
    double top_ = 0;
    int openTable_ = noTable;
    int rows_ = 0; ///< of the open table on this page
};

} // namespace

std::vector<PagePlan> paginate(std::span<const Block> blocks, std::span<const TableRule> tables,
                               const PageRoom& room) {
    return Paginator(blocks, tables, room).run();
}

} // namespace loopwright::report
