// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/composition.h"

/// The parts of a board's schedule.
namespace loopwright::report {

/// What stands in one cell.
struct ScheduleCell {
    QString said;
    TextStyle style{PageText::Schedule, Weight::Regular, &Look::ink};
    Verdict verdict = Verdict::DoesNotApply; ///< drawn where it is loud
    bool isMissing = false;                  ///< needed and not there
};

/// A circuit with what its row is made from.
struct ScheduleRow {
    const ReportInput& input;
    const Circuit& circuit;
    const CircuitReading* reading;        ///< nullptr when nothing was read
    std::vector<const Finding*> findings; ///< about the circuit
};

struct ScheduleColumn {
    double width = 0;
    QString group; ///< heading above it and the columns that follow without one; empty: as the column before
    bool beginsGroup = false;
    QString title; ///< in core's notation
    Align align = Align::Right;
    ScheduleCell (*cell)(const ScheduleRow&) = nullptr;
};

std::vector<ScheduleColumn> scheduleColumns();

/// Head of the table: groups, then columns.
Box scheduleHead(const Typesetter& type, const std::vector<ScheduleColumn>& columns);
Box scheduleRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row);
/// A way without a circuit.
Box spareRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row);
/// A heading between rows: "Old fuse ways, beside the board".
Box sectionRow(const Typesetter& type, const QString& heading);
/// What the marks and signs mean; stands below the rows on each page.
Box scheduleKey(const Composing& composing);

/// The board's own facts, between its title and its circuits.
void writeBoardFacts(const Composing& composing, Flow& flow, const Board& board);
/// What has no column: devices and methods in full, cables, reasons why something could not be read, remarks.
void writeScheduleNotes(const Composing& composing, Flow& flow, const std::vector<ScheduleRow>& rows);

} // namespace loopwright::report
