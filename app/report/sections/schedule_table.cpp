// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr double groupHeight = 4.7 * mm;
constexpr double titleHeight = 4.9 * mm;
constexpr double cellPadding = 0.9 * mm;
constexpr double groupRule = 0.2 * mm;
constexpr double markSide = 2.3 * mm;
constexpr double markGap = 0.5 * mm;
constexpr double markReach = 0.6 * mm; ///< by which a mark goes into the padding at its left
constexpr double leastScale = 0.85;    ///< of a name, and of a figure beside its mark

double widthOf(const std::vector<ScheduleColumn>& columns) {
    double sum = 0;
    for (const ScheduleColumn& column : columns)
        sum += column.width;
    return sum;
}

/// Vertical rules where a group begins.
void addGroupRules(Box& box, const std::vector<ScheduleColumn>& columns) {
    double at = 0;
    for (const ScheduleColumn& column : columns) {
        if (column.beginsGroup) box.add(LineInk{{at, 0}, {at, box.height}, groupRule, &Look::lineStrong});
        at += column.width;
    }
}

void addFloor(Box& box) {
    box.add(LineInk{{0, box.height}, {box.width, box.height}, hairline, &Look::line});
}

/// A figure below its mark.
Box markedAbove(const Typesetter& type, const ScheduleCell& cell, const TextStyle& style, double room,
                Align align) {
    const Box figure = joined(type.fitted(cell.said, style, room, align, Notation::Plain, smallestFigure));
    Box box{room, markSide + figure.height, {}};
    const double free = room - markSide;
    box.add(MarkInk{QRectF(align == Align::Right ? free : free / 2, 0, markSide, markSide),
                    markOf(cell.verdict), inkOf(cell.verdict)});
    box.put(figure, {0, markSide});
    return box;
}

/// Text of a cell with its mark at the left, or above a figure that would be too small beside it; as high as
/// it must be.
Box cellBox(const Typesetter& type, const ScheduleColumn& column, const ScheduleCell& cell) {
    const double room = column.width - 2 * cellPadding;
    if (cell.isMissing) {
        constexpr double wide = 5.4 * mm, high = 2.6 * mm;
        const double width = std::min(wide, room);
        Box box{room, high, {}};
        const double left = column.align == Align::Right  ? room - width
                            : column.align == Align::Left ? 0
                                                          : (room - width) / 2;
        box.add(CornersInk{QRectF(left, 0, width, high), &Look::cannotTell});
        return box;
    }
    const bool isText = column.align == Align::Left;
    const bool isVerdict = isText && cell.verdict != Verdict::DoesNotApply;
    if (!isLoud(cell.verdict) && !isVerdict)
        return joined(type.fitted(cell.said, cell.style, room, column.align, Notation::Plain,
                                  isText ? leastScale : smallestFigure));

    TextStyle style = cell.style;
    style.ink = inkOf(cell.verdict);
    if (isLoud(cell.verdict)) style.weight = Weight::Semibold;
    const double indent = markSide + (isVerdict ? 2 * markGap : markGap - markReach);
    // Whole steps of size take a little of what is free.
    if (!isText && leastScale * type.width(cell.said, style) > 0.98 * (room - indent))
        return markedAbove(type, cell, style, room, column.align);
    const Box words =
        joined(type.fitted(cell.said, style, room - indent, column.align, Notation::Plain, leastScale));
    Box box{room, std::max(words.height, markSide), {}};
    box.put(words, {indent, (box.height - words.height) / 2});
    double left = isVerdict ? 0 : -markReach;
    if (column.align == Align::Right && !words.inks.empty())
        if (const auto* said = std::get_if<TextInk>(&words.inks.front()))
            left = std::max(left, room - markSide - markGap - type.width(said->text, said->style));
    box.add(MarkInk{QRectF(left, (box.height - markSide) / 2, markSide, markSide), markOf(cell.verdict),
                    inkOf(cell.verdict)});
    return box;
}

} // namespace

Box scheduleHead(const Typesetter& type, const std::vector<ScheduleColumn>& columns) {
    constexpr TextStyle group{PageText::Head, Weight::Semibold, &Look::ink};
    Box box{widthOf(columns), groupHeight + titleHeight, {}};
    box.add(FillInk{QRectF(0, 0, box.width, groupHeight), &Look::header});
    double at = 0;
    for (std::size_t index = 0; index < columns.size(); ++index) {
        const ScheduleColumn& column = columns[index];
        if (!column.group.trimmed().isEmpty()) {
            double room = column.width;
            for (std::size_t next = index + 1; next < columns.size() && !columns[next].beginsGroup; ++next)
                room += columns[next].width;
            const Box heading = joined(type.fitted(column.group, group, room - 2 * cellPadding));
            box.put(heading, {at + cellPadding, (groupHeight - heading.height) / 2});
        }
        const Box title = joined(type.fitted(column.title, style::head, column.width - 2 * cellPadding,
                                             column.align, Notation::Symbols));
        box.put(title, {at + cellPadding, groupHeight + (titleHeight - title.height) / 2});
        at += column.width;
    }
    box.add(LineInk{{0, box.height}, {box.width, box.height}, headLine, &Look::ink});
    return box;
}

Box scheduleRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row,
                const RowSpacing& spacing) {
    std::vector<Box> cells;
    double height = spacing.least;
    for (const ScheduleColumn& column : columns) {
        cells.push_back(cellBox(type, column, column.cell(row)));
        height = std::max(height, cells.back().height + spacing.around);
    }
    Box box{widthOf(columns), height, {}};
    addFloor(box);
    addGroupRules(box, columns);
    double at = 0;
    for (std::size_t index = 0; index < columns.size(); ++index) {
        box.put(cells[index], {at + cellPadding, (height - cells[index].height) / 2});
        at += columns[index].width;
    }
    return box;
}

Box spareRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row,
             const RowSpacing& spacing) {
    constexpr std::size_t named = 2; // way and name stand before what an empty way has not
    Box box{widthOf(columns), spacing.least, {}};
    addFloor(box);
    double at = 0;
    for (std::size_t index = 0; index < named; ++index) {
        const Box cell = cellBox(type, columns[index], columns[index].cell(row));
        box.height = std::max(box.height, cell.height + spacing.around);
        box.put(cell, {at + cellPadding, (box.height - cell.height) / 2});
        at += columns[index].width;
    }
    constexpr TextStyle soft{PageText::Schedule, Weight::Regular, &Look::inkSoft};
    const Box said = type.line(QCoreApplication::translate("Report", "no circuit"), soft, 40 * mm);
    box.put(said, {at + cellPadding, (box.height - said.height) / 2});
    return box;
}

Box sectionRow(const Typesetter& type, const QString& heading, const RowSpacing& spacing) {
    constexpr TextStyle style{PageText::Schedule, Weight::Semibold, &Look::inkSoft};
    const double width = sheetOf(PageForm::Landscape).width;
    const Box said = joined(type.paragraph(heading, style, width - 2 * cellPadding));
    Box box{width, std::max(spacing.least, said.height + spacing.around), {}};
    box.add(FillInk{QRectF(0, 0, width, box.height), &Look::header});
    box.put(said, {cellPadding, (box.height - said.height) / 2});
    addFloor(box);
    return box;
}

} // namespace loopwright::report
