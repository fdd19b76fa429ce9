// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule.h"

#include "app/report/facts.h"
#include "app/report/places.h"
#include "app/report/running_heads.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

constexpr int rowsOnAPage = 20;

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

void writeRows(const Composing& composing, Flow& flow, const std::vector<ScheduleRow>& rows) {
    const std::vector<ScheduleColumn> columns = scheduleColumns();
    flow.openTable(scheduleHead(composing.type, columns), scheduleKey(composing), rowsOnAPage);
    std::string section;
    for (const ScheduleRow& row : rows) {
        if (row.circuit.section != section && !row.circuit.section.empty())
            flow.row({sectionRow(composing.type, text(row.circuit.section))}, Keep::WithNext, false);
        section = row.circuit.section;
        if (&row == &rows.back()) flow.anchor(lastScheduleAnchor);
        const bool isSpare = row.circuit.use == CircuitUse::Spare;
        flow.row(
            {isSpare ? spareRow(composing.type, columns, row) : scheduleRow(composing.type, columns, row)},
            Keep::Free, !isSpare);
    }
    flow.closeTable();
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
        writeScheduleNotes(composing, flow, rows);
    }
}

} // namespace loopwright::report
