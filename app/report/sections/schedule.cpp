// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule.h"

#include "app/report/facts.h"
#include "app/report/places.h"
#include "app/report/running_heads.h"

#include <QCoreApplication>

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr int rowsOnAPage = 20;
constexpr double aboveNotes = 1.6 * mm;

std::vector<ScheduleRow> rowsOf(const Composing& composing, const Board& board) {
    const ReportInput& input = composing.input;
    std::vector<ScheduleRow> rows;
    for (const Circuit* circuit : circuitsOf(input.installation, board.id))
        rows.push_back({input, *circuit,
                        findReading(input.installation.circuitReadings, composing.visit.id,
                                    &CircuitReading::circuit, circuit->id),
                        input.assessment.about(circuit->id)});
    return rows;
}

/// "Readings of 9 to 11 March 2026. Tester 2, in calibration to 1 March 2027."
QString readWith(const Composing& composing) {
    const Words& words = composing.input.words;
    QStringList said;
    if (const QString days = daysOf(composing.visit, words); !days.isEmpty())
        said << QCoreApplication::translate("Report", "Readings of %1.").arg(days);
    std::vector<const Instrument*> instruments;
    for (const Instrument& instrument : composing.input.installation.instruments)
        if (instrument.visit == composing.visit.id) instruments.push_back(&instrument);
    if (instruments.size() == 1 && instruments.front()->calibrationDue)
        said << QCoreApplication::translate("Report", "%1, in calibration to %2.")
                    .arg(text(instruments.front()->name), words.date(*instruments.front()->calibrationDue));
    else if (!instruments.empty())
        said << QCoreApplication::translate("Report", "Instruments: page %1.")
                    .arg(words.number(std::int64_t{composing.pageOf(instrumentsAnchor)}));
    return said.join(u' ');
}

void writeBoardTitle(const Composing& composing, Flow& flow, const Board& board) {
    const double width = sheetOf(PageForm::Landscape).width;
    constexpr TextStyle name{PageText::Title, Weight::Semibold, &Look::ink, false, 0.8};
    const double rightWidth =
        std::min(width * 0.4, composing.type.width(readWith(composing), style::soft) + 1);
    const Stack right = composing.type.fitted(readWith(composing), style::soft, rightWidth, Align::Right);
    const Stack left = composing.type.fitted(nameOf(board), name, width - rightWidth - 8 * mm);
    Box box{width, std::max(heightOf(left), heightOf(right)) + 1.5 * mm, {}};
    box.put(joined(left), {0, 0});
    box.put(joined(right), {width - rightWidth, std::max(0.0, heightOf(left) - heightOf(right)) / 2});
    box.add(LineInk{{0, box.height}, {width, box.height}, hairline, &Look::lineStrong});
    flow.add(box, 0, Keep::WithNext);
}

/// What stands between the head and the foot of the table: headings and ways.
struct TableRow {
    Box box;
    const ScheduleRow* way = nullptr; ///< nullptr: a heading
    bool counts() const { return way && way->circuit.use != CircuitUse::Spare; }
};

/// People type it as they like.
QString asHeading(QString said) {
    if (!said.isEmpty()) said[0] = said.at(0).toUpper();
    return said;
}

std::vector<TableRow> tableRows(const Composing& composing, const std::vector<ScheduleColumn>& columns,
                                const std::vector<ScheduleRow>& rows, const RowSpacing& spacing) {
    std::vector<TableRow> table;
    std::string section;
    for (const ScheduleRow& row : rows) {
        if (row.circuit.section != section && !row.circuit.section.empty())
            table.push_back({sectionRow(composing.type, asHeading(text(row.circuit.section)), spacing)});
        section = row.circuit.section;
        const bool isSpare = row.circuit.use == CircuitUse::Spare;
        table.push_back({isSpare ? spareRow(composing.type, columns, row, spacing)
                                 : scheduleRow(composing.type, columns, row, spacing),
                         &row});
    }
    return table;
}

/// Rows stand closer only where that brings the notes onto the page of their table.
void writeRows(const Composing& composing, Flow& flow, const std::vector<ScheduleRow>& rows) {
    const std::vector<ScheduleColumn> columns = scheduleColumns();
    const Box head = scheduleHead(composing.type, columns);
    const Box key = scheduleKey(composing, rows);
    const Stack notes = scheduleNotes(composing, rows);
    const double room = sheetOf(PageForm::Landscape).bodyHeight - flow.heightOnPage() - head.height -
                        key.height - aboveNotes - heightOf(notes);
    const auto fits = [&](const std::vector<TableRow>& table) {
        double height = 0;
        for (const TableRow& row : table)
            height += row.box.height;
        return height <= room && std::ranges::count_if(table, &TableRow::counts) <= rowsOnAPage;
    };
    std::vector<TableRow> table = tableRows(composing, columns, rows, usualRows);
    if (!fits(table)) {
        std::vector<TableRow> closer = tableRows(composing, columns, rows, closeRows);
        if (fits(closer)) table = std::move(closer);
    }

    flow.openTable(head, key, rowsOnAPage);
    for (const TableRow& row : table) {
        const bool isLast = &row == &table.back();
        if (isLast) flow.anchor(lastScheduleAnchor);
        flow.row({row.box}, !row.way || (isLast && !notes.empty()) ? Keep::WithNext : Keep::Free,
                 row.counts());
    }
    flow.closeTable();
    for (const Box& part : notes)
        flow.add(part, aboveNotes);
}

} // namespace

void writeSchedules(const Composing& composing, Flow& flow) {
    for (const Board& board : composing.input.installation.boards) {
        flow.section(QCoreApplication::translate("Report", "%1: schedule").arg(nameOf(board)),
                     PageForm::Landscape);
        flow.startPage();
        flow.anchor(boardAnchor(board.id));
        writeBoardTitle(composing, flow, board);
        writeBoardFacts(composing, flow, board);
        const std::vector<ScheduleRow> rows = rowsOf(composing, board);
        if (rows.empty()) {
            flow.anchor(lastScheduleAnchor);
            flow.add(composing.type.paragraph(
                         QCoreApplication::translate("Report", "No circuits are recorded for this board."),
                         style::soft, sheetOf(PageForm::Landscape).width),
                     2 * mm);
            continue;
        }
        writeRows(composing, flow, rows);
    }
}

} // namespace loopwright::report
