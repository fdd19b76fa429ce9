// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/relations.h"

#include <map>
#include <unordered_set>

namespace loopwright::sitefile {
namespace {

class Settling {
  public:
    Settling(Installation& installation, const Rows& rows, Problems& problems)
      : installation_(installation)
      , rows_(rows)
      , problems_(problems) {
        for (const Board& board : installation.boards)
            boards_.emplace(board.id, &board);
        for (const Circuit& circuit : installation.circuits)
            circuits_.emplace(circuit.id, &circuit);
    }

    void run() {
        for (SupplyReading& reading : installation_.supplyReadings)
            if (reading.supply.isNone()) takeOnlySupply(reading);
        for (Observation& observation : installation_.observations)
            settlePlace(observation);
        onceEach(installation_.supplyReadings, &SupplyReading::supply);
        onceEach(installation_.boardReadings, &BoardReading::board);
        onceEach(installation_.circuitReadings, &CircuitReading::circuit);
        onceEach(installation_.inspectionOutcomes, &InspectionOutcome::item);
        const auto site = [](const Board&) { return Id{}; };
        namesApart(installation_.boards, site, [](const Board& board) { return board.name; });
        namesApart(
            installation_.circuits, [](const Circuit& circuit) { return circuit.board; },
            [](const Circuit& circuit) { return circuit.way.empty() ? circuit.name : circuit.way; });
        refuseLoops();
    }

  private:
    const std::string& where(Id id) const { return rows_.at(id).where; }
    void refuse(Id id, std::string_view key, std::vector<Argument> arguments = {}) {
        problems_.add(where(id), {key, std::move(arguments)});
    }

    void takeOnlySupply(SupplyReading& reading) {
        if (installation_.supplies.size() == 1)
            reading.supply = installation_.supplies.front().id;
        else
            refuse(reading.id, "sitefile.which-supply",
                   {static_cast<std::int64_t>(installation_.supplies.size())});
    }

    void settlePlace(Observation& observation) {
        if (observation.circuit.isNone()) return;
        const Circuit* circuit = circuits_.at(observation.circuit);
        if (observation.board.isNone()) observation.board = circuit->board;
        if (observation.board != circuit->board)
            refuse(observation.id, "sitefile.circuit-of-other-board", {pathOf(installation_, *circuit)});
    }

    /// Refuses two rows of one visit about the same subject.
    template <class Record, class Subject>
    void onceEach(const std::vector<Record>& rows, Subject Record::*subject) {
        std::map<std::pair<Id, Subject>, Id> seen;
        for (const Record& row : rows) {
            const auto [first, isNew] = seen.emplace(std::pair(row.visit, row.*subject), row.id);
            if (!isNew) refuse(row.id, "sitefile.said-twice", {where(first->second)});
        }
    }

    /// Refuses two rows of one name under one holder, unless both can be told apart by their ids.
    template <class Record, class HolderOf, class NameOf>
    void namesApart(const std::vector<Record>& rows, HolderOf holderOf, NameOf nameOf) {
        std::map<std::pair<Id, std::string>, Id> seen;
        for (const Record& row : rows) {
            if (nameOf(row).empty()) continue;
            const auto [first, isNew] = seen.emplace(std::pair(holderOf(row), nameOf(row)), row.id);
            if (isNew || (rows_.at(row.id).hasOwnId && rows_.at(first->second).hasOwnId)) continue;
            refuse(row.id, "sitefile.name-twice", {nameOf(row), where(first->second)});
        }
    }

    /// Walks from every board towards the supply, over ground that is not known to be sound.
    void refuseLoops() {
        std::unordered_set<Id> sound{Id{}};
        for (const Board& start : installation_.boards) {
            std::unordered_set<Id> walked;
            Id at = start.id;
            while (!sound.contains(at) && walked.insert(at).second)
                at = boardFeeding(at);
            if (!sound.contains(at)) refuse(at, "sitefile.feeds-itself", {boards_.at(at)->name});
            sound.merge(walked);
        }
    }
    /// None where the supply feeds it.
    Id boardFeeding(Id board) const {
        const auto feeder = circuits_.find(boards_.at(board)->fedFrom);
        return feeder == circuits_.end() ? Id{} : feeder->second->board;
    }

    Installation& installation_;
    const Rows& rows_;
    Problems& problems_;
    std::unordered_map<Id, const Board*> boards_;
    std::unordered_map<Id, const Circuit*> circuits_;
};

} // namespace

void settleRelations(Installation& installation, const Rows& rows, Problems& problems) {
    Settling(installation, rows, problems).run();
}

} // namespace loopwright::sitefile
