// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/context.h"
#include "core/checks/device.h"

#include <type_traits>
#include <unordered_map>

namespace loopwright {

/// The records of one visit, found by what they are about, and the contexts that checks are given. Refers to
/// the installation, tables and rules it was made from, which must outlive it and not change.
class VisitRecords {
  public:
    VisitRecords(const Installation& installation, const Visit& visit, const ReferenceTables& tables,
                 const RuleSet& rules, Detail detail);

    VisitContext forSupply(const Supply& supply) const;
    BoardContext forBoard(const Board& board) const;
    CircuitContext forCircuit(const BoardContext& board, const Circuit& circuit) const;
    InstrumentContext forInstrument(const Instrument& instrument) const;

    /// In the order in which they are recorded.
    std::span<const Circuit* const> circuitsOf(Id board) const;

  private:
    using Readings = std::unordered_map<Id, const CircuitReading*>;
    template <class Row>
    using Groups = std::unordered_map<Id, std::vector<const Row*>>;

    VisitContext base(const Supply* supply) const;
    CircuitRecords recordsOf(const Circuit& circuit) const;
    void distribute();
    /// From the board to the supply, the nearest first. Stops where boards feed each other in a circle.
    std::vector<Feeder> feedersOf(const Board& board) const;

    const Installation& installation_;
    const Visit& visit_;
    const Visit* before_; ///< nullptr: it is the first
    const ReferenceTables& tables_;
    const RuleSet& rules_;
    Detail detail_;
    Uncertainties uncertainties_;
    Distribution distribution_;
    std::unordered_map<Id, OvercurrentTimes> times_; ///< of the device of each circuit and supply
    std::unordered_map<Id, const Board*> boards_;
    std::unordered_map<Id, const Circuit*> circuits_;
    std::unordered_map<Id, const SupplyReading*> supplyReadings_;
    std::unordered_map<Id, const BoardReading*> boardReadings_;
    std::unordered_map<Id, const CircuitReading*> circuitReadings_;
    std::unordered_map<Id, const BoardReading*> boardReadingsBefore_;
    std::unordered_map<Id, const CircuitReading*> circuitReadingsBefore_;
    Groups<Circuit> circuitsOfBoard_;
    Groups<Equipment> equipmentOfCircuit_;
    std::unordered_map<Id, std::vector<Feeder>> feeders_; ///< of each board
};

/// Calls `action` with the context of one circuit in one visit, for its verdicts only. An empty result where
/// the visit or the circuit is not there, or there is no circuit to judge.
template <class Action>
std::invoke_result_t<Action, const CircuitContext&> inCircuit(const Installation& installation, Id visit,
                                                              Id circuit, const ReferenceTables& tables,
                                                              const RuleSet& rules, Action&& action) {
    const Visit* visitRow = find(installation.visits, visit);
    const Circuit* row = find(installation.circuits, circuit);
    const Board* board = row ? find(installation.boards, row->board) : nullptr;
    if (!visitRow || !board || !isInUse(*row)) return {};
    const VisitRecords records(installation, *visitRow, tables, rules, Detail::VerdictOnly);
    const BoardContext boardContext = records.forBoard(*board);
    return action(records.forCircuit(boardContext, *row));
}

} // namespace loopwright
