// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/report.h"

#include "app/report/composition.h"
#include "app/report/page_painter.h"
#include "app/report/running_heads.h"

#include <QCoreApplication>
#include <QPainter>

namespace loopwright {
namespace report {
namespace {

/// References settle at the second attempt unless a number gains a digit and moves a line.
constexpr int attempts = 5;

PageIndex indexOf(const Manuscript& manuscript, const std::vector<PagePlan>& plans) {
    PageIndex index;
    for (std::size_t page = 0; page < plans.size(); ++page)
        for (const Placed& placed : plans[page].placed) {
            if (placed.part != Placed::Part::Block) continue;
            const auto [from, to] = manuscript.anchors.equal_range(placed.index);
            for (auto each = from; each != to; ++each)
                index[each->second] = static_cast<int>(page) + 1;
        }
    return index;
}

const Box& boxOf(const Manuscript& manuscript, const Placed& placed) {
    const auto index = static_cast<std::size_t>(placed.index);
    switch (placed.part) {
    case Placed::Part::Block:
        return manuscript.boxes[index];
    case Placed::Part::Foot:
        return manuscript.foots[index];
    default:
        return manuscript.heads[index];
    }
}

/// That of the first block on the page.
QString sectionOf(const Manuscript& manuscript, const PagePlan& plan) {
    for (const Placed& placed : plan.placed)
        if (placed.part == Placed::Part::Block) {
            const int section = manuscript.sections[static_cast<std::size_t>(placed.index)];
            return section < 0 ? QString() : manuscript.sectionTitles[static_cast<std::size_t>(section)];
        }
    return {};
}

Report::Page drawn(const Composing& composing, const Manuscript& manuscript, const PagePlan& plan, int page,
                   int pages) {
    const Sheet sheet = sheetOf(plan.form);
    Report::Page result{plan.form,
                        runningHeads(composing, plan.form, sectionOf(manuscript, plan), page, pages)};
    for (const Placed& placed : plan.placed)
        for (const Ink& ink : boxOf(manuscript, placed).inks)
            result.inks.push_back(moved(ink, {sheet.left, sheet.bodyTop + placed.top}));
    return result;
}

} // namespace
} // namespace report

using namespace report;

Report composeReport(const ReportInput& input) {
    const Visit* visit = find(input.installation.visits, input.assessment.visit);
    if (!visit) return {};
    const Typesetter type;
    const PageRoom room{sheetOf(PageForm::Portrait).bodyHeight, sheetOf(PageForm::Landscape).bodyHeight};

    PageIndex pages;
    const PhotoAlbum album(input.attachments);
    // Half the width of a page, a little wider than high, in pixels of 1/96 inch; logs the whole width.
    constexpr double pixelsPerMm = 96 / 25.4, plotShape = 0.84;
    const double plotWidth = columnWidth / mm * pixelsPerMm;
    const QSizeF plot(plotWidth, plotWidth * plotShape);
    constexpr double logHeight = 1.55; // of the others': it has three panels
    const OverloadAlbum overloads(
        input, plot, {(2 * columnWidth + columnGap) / mm * pixelsPerMm, plot.height() * logHeight});
    const Composing composing{input, *visit, type, album, overloads, pages};
    Manuscript manuscript;
    std::vector<PagePlan> plans;
    for (int attempt = 0; attempt < attempts; ++attempt) {
        manuscript = compose(composing);
        plans = paginate(manuscript.blocks, manuscript.tables, room);
        PageIndex found = indexOf(manuscript, plans);
        if (found == pages) break;
        pages = std::move(found);
    }

    Report report;
    report.title = QCoreApplication::translate("Report", "Report on the electrical installation: %1")
                       .arg(text(input.installation.site.name));
    report.author = text(visit->inspector);
    const int count = static_cast<int>(plans.size());
    for (int page = 1; page <= count; ++page)
        report.pages.push_back(
            drawn(composing, manuscript, plans[static_cast<std::size_t>(page - 1)], page, count));
    return report;
}

QSizeF paperOf(const Report::Page& page) {
    return sheetOf(page.form).paper / mm;
}

void paintPage(QPainter& painter, const Report::Page& page) {
    painter.save();
    painter.scale(1 / mm, 1 / mm);
    paintInks(painter, page.inks, printLook());
    painter.restore();
}

} // namespace loopwright
