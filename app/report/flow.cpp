// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/flow.h"

namespace loopwright::report {

void Flow::section(const QString& title, PageForm form) {
    manuscript_.sectionTitles.push_back(title);
    form_ = form;
}

void Flow::add(Box box, double gapBefore, Keep keep) {
    const int index = static_cast<int>(manuscript_.blocks.size());
    Block block{box.height, gapBefore, keep == Keep::WithNext, startsPage_, form_, table_};
    manuscript_.blocks.push_back(block);
    manuscript_.boxes.push_back(std::move(box));
    manuscript_.sections.push_back(static_cast<int>(manuscript_.sectionTitles.size()) - 1);
    for (std::string& key : anchors_)
        manuscript_.anchors.emplace(index, std::move(key));
    anchors_.clear();
    startsPage_ = false;
}

void Flow::add(const Stack& lines, double gapBefore, Keep keep) {
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const bool isLast = at + 1 == lines.size();
        const bool holdsNext = isLast ? keep == Keep::WithNext : at == 0 || at + 2 == lines.size();
        add(lines[at], at == 0 ? gapBefore : 0, holdsNext ? Keep::WithNext : Keep::Free);
    }
}

void Flow::openTable(Box head, Box foot, int maxRows) {
    table_ = static_cast<int>(manuscript_.tables.size());
    manuscript_.tables.push_back({head.height, foot.height, maxRows});
    manuscript_.heads.push_back(std::move(head));
    manuscript_.foots.push_back(std::move(foot));
}

void Flow::row(const Stack& parts, Keep keep, bool counts) {
    for (const Box& part : parts) {
        add(part, 0, keep);
        manuscript_.blocks.back().counts = counts;
    }
    if (!parts.empty()) rowEnds_.push_back(manuscript_.blocks.size() - 1);
}

void Flow::closeTable() {
    constexpr std::size_t together = 3;
    for (std::size_t row = 0; row + 1 < rowEnds_.size(); ++row)
        if (row + 1 < together || row + together >= rowEnds_.size())
            manuscript_.blocks[rowEnds_[row]].keepWithNext = true;
    rowEnds_.clear();
    table_ = -1;
}

double Flow::heightOnPage() const {
    double sum = 0;
    for (const Block& block : manuscript_.blocks) {
        if (block.startsPage) sum = -block.gapBefore;
        sum += block.gapBefore + block.height;
    }
    return sum;
}

double Flow::height() const {
    double sum = 0;
    for (const Block& block : manuscript_.blocks)
        sum += block.gapBefore + block.height;
    return sum;
}

} // namespace loopwright::report
