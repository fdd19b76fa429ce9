// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/schedule_cells.h"

#include <QCoreApplication>

namespace loopwright::report {

using namespace cells;

/// Widths add up to what lies between the margins of a lying page.
std::vector<ScheduleColumn> scheduleColumns() {
    using Row = const ScheduleRow&;
    using R = CircuitReading;
    const auto column = [](double width, const QString& title, auto cell, Align align = Align::Right) {
        return ScheduleColumn{width * mm, {}, false, title, align, cell};
    };
    const auto group = [](const QString& heading, ScheduleColumn first) {
        first.group = heading;
        first.beginsGroup = true;
        return first;
    };
    return {
        column(8, QCoreApplication::translate("Report", "Way"),
               [](Row row) {
                   return ScheduleCell{text(row.circuit.way), strong};
               }),
        column(
            38.2, QCoreApplication::translate("Report", "Circuit"),
            [](Row row) { return ScheduleCell{text(row.circuit.name)}; }, Align::Left),
        column(6.8, QCoreApplication::translate("Report", "Pts", "points, short"),
               [](Row row) { return ofCircuit(row, toText(row.circuit.points, units::ratio), "points"); }),
        group(QCoreApplication::translate("Report", "Device"),
              column(12.5, QCoreApplication::translate("Report", "type"), deviceType, Align::Left)),
        column(7.5, QStringLiteral("A"),
               [](Row row) {
                   return ofCircuit(row, toText(row.circuit.device.ratedCurrent, units::ampere),
                                    "device.ratedCurrent_A");
               }),
        column(8.2, QStringLiteral("kA"),
               [](Row row) {
                   return ofCircuit(row, toText(row.circuit.device.breakingCapacity, units::kiloampere),
                                    "device.breakingCapacity_kA");
               }),
        column(10.5, QStringLiteral("mA"), residualRating),
        group(QCoreApplication::translate("Report", "Wiring, mm²"),
              column(11.7, QCoreApplication::translate("Report", "method"), method, Align::Left)),
        column(8.5, QCoreApplication::translate("Report", "live"),
               [](Row row) {
                   return ofCircuit(row, toText(row.circuit.wiring.lineSize, units::squareMillimetre),
                                    "wiring.lineSize_mm2");
               }),
        column(8.5, QCoreApplication::translate("Report", "cpc"),
               [](Row row) {
                   return ofCircuit(row, toText(row.circuit.wiring.protectiveSize, units::squareMillimetre),
                                    "wiring.protectiveSize_mm2");
               }),
        column(8.7, QStringLiteral("m"),
               [](Row row) {
                   return ofCircuit(row, toText(row.circuit.wiring.length, units::metre), "wiring.length_m");
               }),
        group(QCoreApplication::translate("Report", "Load"), column(12.2, QStringLiteral("A"), load)),
        group(QCoreApplication::translate("Report", "Continuity, Ω"),
              column(9.5, QStringLiteral("r_1"),
                     [](Row row) { return read(row, &R::ringLine, units::ohm, "ringLine_ohm"); })),
        column(9.5, QStringLiteral("r_n"),
               [](Row row) { return read(row, &R::ringNeutral, units::ohm, "ringNeutral_ohm"); }),
        column(9.5, QStringLiteral("r_2"),
               [](Row row) { return read(row, &R::ringProtective, units::ohm, "ringProtective_ohm"); }),
        column(10.2, QStringLiteral("R_1+R_2"),
               [](Row row) { return read(row, &R::continuity, units::ohm, "continuity_ohm"); }),
        group(QCoreApplication::translate("Report", "Insulation, MΩ"),
              column(10.6, QCoreApplication::translate("Report", "L–L/N"),
                     [](Row row) {
                         return read(row, &R::insulationLive, units::megohm, "insulationLive_Mohm");
                     })),
        column(10.6, QCoreApplication::translate("Report", "L–E"),
               [](Row row) { return read(row, &R::insulationEarth, units::megohm, "insulationEarth_Mohm"); }),
        group(QString(QChar::Space),
              column(
                  6.8, QCoreApplication::translate("Report", "Pol", "polarity, short"),
                  [](Row row) { return ofTest(row, &R::polarity, "polarity"); }, Align::Centre)),
        group(QCoreApplication::translate("Report", "Loop, Ω"),
              column(11.6, QStringLiteral("Z_s"),
                     [](Row row) { return read(row, &R::loopImpedance, units::ohm, "loopImpedance_ohm"); })),
        column(9, QCoreApplication::translate("Report", "limit"), loopLimit),
        group(QCoreApplication::translate("Report", "Residual, ms"),
              column(8.3, QCoreApplication::translate("Report", "at 1", "times the rated residual current"),
                     [](Row row) {
                         return read(row, &R::residualTime, units::millisecond, "residualTime_ms");
                     })),
        column(8.3, QCoreApplication::translate("Report", "at 5", "times the rated residual current"),
               [](Row row) {
                   return read(row, &R::residualTimeFive, units::millisecond, "residualTimeFive_ms");
               }),
        column(
            6.8, QCoreApplication::translate("Report", "test", "button of a residual current device"),
            [](Row row) { return ofTest(row, &R::residualButton, "residualButton"); }, Align::Centre),
        group(QCoreApplication::translate("Report", "Verdict"),
              column(17, QCoreApplication::translate("Report", "worst check"), worst, Align::Left)),
    };
}

} // namespace loopwright::report
