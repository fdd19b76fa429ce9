// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/ink.h"
#include "app/report/paginate.h"

#include <cstddef>
#include <map>
#include <string>

namespace loopwright::report {

/// A place that other pages refer to, and the page it is on, from 1.
using PageIndex = std::map<std::string, int>;

/// What the sections wrote, before it is laid out on pages.
struct Manuscript {
    std::vector<Block> blocks;
    std::vector<Box> boxes;    ///< one a block
    std::vector<int> sections; ///< one a block: an index into sectionTitles
    std::vector<QString> sectionTitles;
    std::vector<TableRule> tables;
    std::vector<Box> heads;                  ///< one a table
    std::vector<Box> foots;                  ///< one a table
    std::multimap<int, std::string> anchors; ///< by block
};

/// Whether a block may be the last one on its page.
enum class Keep : std::uint8_t { Free, WithNext };

/// Where sections write, from top to bottom.
class Flow {
  public:
    /// Following blocks stand under this running head. A new form begins a new page.
    void section(const QString& title, PageForm form);
    /// The next block begins a page.
    void startPage() { startsPage_ = true; }
    /// The next block is what `key` refers to.
    void anchor(const std::string& key) { anchors_.push_back(key); }

    void add(Box box, double gapBefore = 0, Keep keep = Keep::Free);
    /// Lines of a paragraph: neither its first nor its last line is left alone on a page.
    void add(const Stack& lines, double gapBefore, Keep keep = Keep::Free);

    /// Rows follow until closeTable. Of a table that goes over pages at least three rows stand on the first
    /// and on the last, as far as they have room.
    void openTable(Box head, Box foot = {}, int maxRows = 0);
    /// The parts of one row, usually one. `counts`: among those that maxRows limits.
    void row(const Stack& parts, Keep keep = Keep::Free, bool counts = true);
    void closeTable();

    /// Of everything written so far, gaps included.
    double height() const;

    /// Since the last page that was begun on purpose.
    double heightOnPage() const;

    Manuscript finish() { return std::move(manuscript_); }

  private:
    Manuscript manuscript_;
    PageForm form_ = PageForm::Portrait;
    bool startsPage_ = false;
    int table_ = -1;
    std::vector<std::size_t> rowEnds_; ///< of the open table: the last block of each row
    std::vector<std::string> anchors_;
};

} // namespace loopwright::report
