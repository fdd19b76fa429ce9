// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/facts.h"
#include "app/report/places.h"

#include <QCoreApplication>

namespace loopwright::report {
namespace {

void writeSupplies(const Composing& composing, Flow& flow) {
    const ReportInput& input = composing.input;
    if (input.installation.supplies.empty())
        flow.add(composing.type.paragraph(QCoreApplication::translate("Report", "No supply is recorded."),
                                          style::soft, sheetOf(PageForm::Portrait).width),
                 0);
    for (const Supply& supply : input.installation.supplies) {
        writeFactColumns(composing, flow, factsOf(supply, input));
        writeSubject(composing, flow, QCoreApplication::translate("Report", "Readings at the supply"));
        const SupplyReading* reading = findReading(input.installation.supplyReadings, composing.visit.id,
                                                   &SupplyReading::supply, supply.id);
        if (reading)
            writeFactColumns(composing, flow, factsOf(*reading, input));
        else
            flow.add(composing.type.paragraph(
                         QCoreApplication::translate("Report", "Nothing was read at the supply."),
                         style::soft, sheetOf(PageForm::Portrait).width),
                     0);
    }
}

QString fedFrom(const ReportInput& input, const Board& board) {
    const Circuit* feeder = find(input.installation.circuits, board.fedFrom);
    if (!feeder) return QCoreApplication::translate("Report", "supply");
    return addressOf(input.installation, {find(input.installation.boards, feeder->board), feeder, nullptr});
}

template <class Record, class Q>
QString readingSaid(const Record* record, Entry<Q> Record::*member, const Unit& unit, const Words& words) {
    return record ? entrySaid(toText(record->*member, unit), unit, words) : QString();
}

void writeBoards(const Composing& composing, Flow& flow) {
    const ReportInput& input = composing.input;
    if (input.installation.boards.empty()) return;
    const Words& words = input.words;
    writeSubject(composing, flow, QCoreApplication::translate("Report", "Boards"));
    const Table table(composing.type,
                      {{54 * mm, QCoreApplication::translate("Report", "Board, where it is")},
                       {32 * mm, words.word("field.board.fedFrom")},
                       {24 * mm, words.word("field.board.earthing")},
                       {14 * mm, QCoreApplication::translate("Report", "Rated")},
                       {15 * mm, QCoreApplication::translate("Report", "Loop"), Align::Right},
                       {18 * mm, QCoreApplication::translate("Report", "Fault current"), Align::Right},
                       {17 * mm, QCoreApplication::translate("Report", "Schedule"), Align::Right}});
    flow.openTable(table.head());
    for (const Board& board : input.installation.boards) {
        const BoardReading* reading =
            findReading(input.installation.boardReadings, composing.visit.id, &BoardReading::board, board.id);
        Stack name = table.text(0, nameOf(board), style::cellStrong);
        append(name, table.text(0, text(board.location), style::cellSoft));
        Stack earthing =
            table.text(2, words.word("choice.board-earthing." + std::string(choiceKey(board.earthing))));
        if (const QString electrode =
                readingSaid(reading, &BoardReading::electrodeResistance, units::ohm, words);
            !electrode.isEmpty())
            append(earthing, table.text(2, electrode, style::cellSoft));
        Stack rated =
            table.text(3, entrySaid(toText(board.ratedCurrent, units::ampere), units::ampere, words));
        append(rated, table.text(3, entrySaid(toText(board.withstandCurrent, units::kiloampere),
                                              units::kiloampere, words)));
        const QString page = QCoreApplication::translate("Report", "page %1")
                                 .arg(words.number(std::int64_t{composing.pageOf(boardAnchor(board.id))}));
        flow.row(
            table.row({name, table.text(1, fedFrom(input, board)), earthing, rated,
                       table.text(4, readingSaid(reading, &BoardReading::loopImpedance, units::ohm, words)),
                       table.text(5, readingSaid(reading, &BoardReading::prospectiveFaultCurrent,
                                                 units::kiloampere, words)),
                       table.text(6, page, style::cellSoft)}));
    }
    flow.closeTable();
}

} // namespace

void writeSupply(const Composing& composing, Flow& flow) {
    const QString title = QCoreApplication::translate("Report", "Supply and earthing");
    flow.section(title, PageForm::Portrait);
    writeTitle(composing, flow, title);
    writeSupplies(composing, flow);
    writeBoards(composing, flow);
}

} // namespace loopwright::report
