// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report/sections/page_one.h"

#include "core/checks/needed_readings.h"

#include <algorithm>

namespace loopwright::report {
namespace {

/// Of the readings that one record needs.
struct Needed {
    int all = 0;
    int taken = 0;
    int limited = 0;
};

template <class Record, class Reading>
Needed neededBy(const Record& record, const Reading* reading) {
    Needed count;
    forEachNeeded(record, reading, [&](const NeededReading& needed) {
        if (needed.state == EntryState::NotApplicable) return;
        ++count.all;
        if (needed.state == EntryState::Limited)
            ++count.limited;
        else if (needed.state != EntryState::Missing)
            ++count.taken;
    });
    return count;
}

void add(Coverage& coverage, const Needed& needed) {
    coverage.readings += needed.all;
    coverage.readingsTaken += needed.taken;
    coverage.limited += needed.limited;
}

} // namespace

Coverage coverageOf(const ReportInput& input) {
    const Installation& site = input.installation;
    const Id visit = input.assessment.visit;
    Coverage coverage;
    for (const Supply& supply : site.supplies)
        add(coverage,
            neededBy(supply, findReading(site.supplyReadings, visit, &SupplyReading::supply, supply.id)));
    std::vector<Id> boardsRead;
    for (const Circuit& circuit : site.circuits) {
        if (!isInUse(circuit)) continue;
        const Needed needed =
            neededBy(circuit, findReading(site.circuitReadings, visit, &CircuitReading::circuit, circuit.id));
        add(coverage, needed);
        ++coverage.circuits;
        if (needed.taken == needed.all) ++coverage.circuitsRead;
        if (needed.taken > 0) boardsRead.push_back(circuit.board);
    }
    for (const Board& board : site.boards) {
        const Needed needed =
            neededBy(board, findReading(site.boardReadings, visit, &BoardReading::board, board.id));
        add(coverage, needed);
        ++coverage.boards;
        if (needed.taken > 0 || std::ranges::find(boardsRead, board.id) != boardsRead.end())
            ++coverage.boardsRead;
    }
    return coverage;
}

} // namespace loopwright::report
