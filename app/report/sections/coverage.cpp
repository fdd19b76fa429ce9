// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/page_one.h"

#include "core/model/fields.h"

#include <algorithm>

namespace loopwright::report {
namespace {

/// What an entry's stored form says about it; read through the catalogue, so that a new field counts as well.
template <class Record>
EntryState stateOf(const Field<Record>& field, const Record& record) {
    const auto entry = parseEntry(field.get(record), field.info.unit);
    return entry ? entry->state : EntryState::Missing;
}

template <class Record, class Match>
int countEntries(const Record& record, Match&& match) {
    int count = 0;
    for (const Field<Record>& field : fieldsOf<Record>())
        if (field.info.kind == FieldKind::Figure && match(stateOf(field, record))) ++count;
    return count;
}

bool isFigure(EntryState state) {
    return state == EntryState::Value || state == EntryState::Above || state == EntryState::Below;
}

template <class Record>
bool wasRead(const Record& record) {
    return countEntries(record, isFigure) > 0;
}

template <class Record>
int limitedIn(const std::vector<Record>& rows, Id visit) {
    int count = 0;
    for (const Record& row : rows)
        if (row.visit == visit)
            count += countEntries(row, [](EntryState state) { return state == EntryState::Limited; });
    return count;
}

} // namespace

Coverage coverageOf(const ReportInput& input) {
    const Installation& site = input.installation;
    const Id visit = input.assessment.visit;
    Coverage coverage;
    std::vector<Id> boardsRead;
    for (const BoardReading& reading : site.boardReadings)
        if (reading.visit == visit && wasRead(reading)) boardsRead.push_back(reading.board);
    for (const Circuit& circuit : site.circuits) {
        if (!isInUse(circuit)) continue;
        ++coverage.circuits;
        const CircuitReading* reading =
            findReading(site.circuitReadings, visit, &CircuitReading::circuit, circuit.id);
        if (!reading || !wasRead(*reading)) continue;
        ++coverage.circuitsRead;
        boardsRead.push_back(circuit.board);
    }
    for (const Board& board : site.boards) {
        ++coverage.boards;
        if (std::ranges::find(boardsRead, board.id) != boardsRead.end()) ++coverage.boardsRead;
    }
    const Progress progress = readingsDone(site, input.assessment);
    coverage.readings = progress.needed;
    coverage.readingsDone = progress.done;
    coverage.limited = limitedIn(site.circuitReadings, visit) + limitedIn(site.boardReadings, visit) +
                       limitedIn(site.supplyReadings, visit);
    return coverage;
}

} // namespace loopwright::report
