// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/report/sections/schedule.h"

/// What the cells of a circuit's row say. `field` is the catalogue's key: checks name by it what is missing,
/// and the cell answers for the findings that are about it.
namespace loopwright::report::cells {

inline constexpr TextStyle plain{PageText::Schedule, Weight::Regular, &Look::ink};
inline constexpr TextStyle soft{PageText::Schedule, Weight::Regular, &Look::inkSoft};
inline constexpr TextStyle carried{PageText::Schedule, Weight::Regular, &Look::inkSoft, true};
inline constexpr TextStyle strong{PageText::Schedule, Weight::Semibold, &Look::ink};

/// A figure of the circuit.
ScheduleCell ofCircuit(const ScheduleRow& row, const EntryText& entry, std::string_view field);
/// A figure of its readings.
ScheduleCell ofReading(const ScheduleRow& row, const EntryText& entry, std::string_view field);
/// A test that is passed or not.
ScheduleCell ofTest(const ScheduleRow& row, TestOutcome CircuitReading::*member, std::string_view field);

template <class Q>
ScheduleCell read(const ScheduleRow& row, Entry<Q> CircuitReading::*member, const Unit& unit,
                  std::string_view field) {
    return ofReading(row, row.reading ? toText(row.reading->*member, unit) : EntryText{}, field);
}

ScheduleCell deviceType(const ScheduleRow& row);
ScheduleCell residualRating(const ScheduleRow& row);
ScheduleCell method(const ScheduleRow& row);
/// By clamp, else as it was recorded, else as the check worked it out from the equipment.
ScheduleCell load(const ScheduleRow& row);
ScheduleCell loopLimit(const ScheduleRow& row);
ScheduleCell worst(const ScheduleRow& row);

} // namespace loopwright::report::cells
