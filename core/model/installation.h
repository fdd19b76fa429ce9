// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/model/records.h"

#include <vector>

namespace loopwright {

/// One site with everything recorded about it, over all visits. A plain value: copied for a what-if, compared
/// in tests. Rows keep the order in which they were added; a board's circuits are shown in that order.
struct Installation {
    Site site;
    std::vector<Supply> supplies; ///< usually one
    std::vector<Board> boards;
    std::vector<Circuit> circuits;
    std::vector<Equipment> equipment;
    std::vector<Visit> visits; ///< oldest first
    std::vector<Instrument> instruments;
    std::vector<SupplyReading> supplyReadings;
    std::vector<BoardReading> boardReadings;
    std::vector<CircuitReading> circuitReadings;
    std::vector<InspectionOutcome> inspectionOutcomes;
    std::vector<Observation> observations;
    std::vector<Photo> photos;
    std::vector<CurrentLog> currentLogs;
    friend bool operator==(const Installation&, const Installation&) = default;
};

/// The row of that id, or nullptr.
template <class Record>
const Record* find(const std::vector<Record>& rows, Id id) {
    for (const Record& row : rows)
        if (row.id == id) return &row;
    return nullptr;
}

/// The reading of `subject` in `visit`, or nullptr. `member` says which column names the subject.
template <class Reading>
const Reading* findReading(const std::vector<Reading>& rows, Id visit, Id Reading::*member, Id subject) {
    for (const Reading& row : rows)
        if (row.visit == visit && row.*member == subject) return &row;
    return nullptr;
}

/// "Board C / F1": how a person finds it. A circuit is named by its way, or by its name where it has no way.
std::string pathOf(const Installation& installation, const Board& board);
std::string pathOf(const Installation& installation, const Circuit& circuit);
std::string pathOf(const Installation& installation, const Equipment& equipment);
/// The same where the circuit's board is at hand.
std::string pathOf(const Board& board, const Circuit& circuit);

} // namespace loopwright
