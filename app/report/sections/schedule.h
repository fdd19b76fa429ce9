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
    bool isLimited = false;                  ///< could not be read
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

/// How close rows stand.
struct RowSpacing {
    double least = 0;  ///< height of a row
    double around = 0; ///< above and below what is higher than that, together
};
inline constexpr RowSpacing usualRows{5.55 * mm, 1.2 * mm};
/// For a board that then fits on its page with its notes.
inline constexpr RowSpacing closeRows{4.7 * mm, 0.5 * mm};

/// Head of the table: groups, then columns.
Box scheduleHead(const Typesetter& type, const std::vector<ScheduleColumn>& columns);
Box scheduleRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row,
                const RowSpacing& spacing);
/// A way without a circuit.
Box spareRow(const Typesetter& type, const std::vector<ScheduleColumn>& columns, const ScheduleRow& row,
             const RowSpacing& spacing);
/// A heading between rows: "Old fuse ways, beside the board".
Box sectionRow(const Typesetter& type, const QString& heading, const RowSpacing& spacing);
/// What the marks and signs of these rows mean; stands below them on each page.
Box scheduleKey(const Composing& composing, const std::vector<ScheduleRow>& rows);

/// The board's own facts, between its title and its circuits.
void writeBoardFacts(const Composing& composing, Flow& flow, const Board& board);
/// What has no column: devices and methods in full, cables, reasons why something could not be read, remarks.
/// In two columns, in one box unless there is much of it.
Stack scheduleNotes(const Composing& composing, const std::vector<ScheduleRow>& rows);

} // namespace loopwright::report
