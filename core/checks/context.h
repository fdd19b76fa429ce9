// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/checks/finding.h"
#include "core/checks/uncertainty.h"
#include "core/model/installation.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"

#include <span>
#include <unordered_map>
#include <vector>

namespace loopwright {

/// A circuit with what is recorded about it.
struct CircuitRecords {
    const Circuit& circuit;
    const CircuitReading* reading;
    std::span<const Equipment* const> equipment;
    const DeviceFamily* family; ///< of the circuit's device; nullptr when unknown
    /// When that device operates in its board; nullptr when nothing is promised of it.
    const Sourced<physics::DeviceTimes>* times;
};

/// A circuit that starts at a board, and the boards that it feeds.
struct Outgoing : CircuitRecords {
    std::span<const Board* const> fed;
};

/// What starts where, seen from the supply outwards. Boards may be recorded as feeding each other in a
/// circle, so that whoever follows it counts the steps.
struct Distribution {
    std::unordered_map<Id, std::vector<Outgoing>> outgoing;  ///< by board, in the order of the records
    std::unordered_map<Id, std::vector<const Board*>> fedBy; ///< by circuit
    std::vector<const Board*> atSupply;                      ///< fed by no circuit
    std::size_t boards = 0;

    std::span<const Outgoing> startingAt(Id board) const {
        const auto found = outgoing.find(board);
        return found == outgoing.end() ? std::span<const Outgoing>{}
                                       : std::span<const Outgoing>{found->second};
    }
};

/// What every check of a visit may look at. The pointers here and below are valid while the installation is;
/// those that may be absent are nullptr when the record does not exist.
struct VisitContext {
    const Installation& installation;
    const ReferenceTables& tables;
    const RuleSet& rules;
    Detail detail;
    const Visit& visit;
    const Supply* supply;
    const SupplyReading* supplyReading;
    const Uncertainties& uncertainties;
    const Distribution& distribution;
    const Visit* visitBefore; ///< the one recorded just before
    /// When the device at the supply operates; nullptr when nothing is promised of it.
    const Sourced<physics::DeviceTimes>* supplyTimes;
};

/// A circuit on the way from the supply to a board, and the board that it starts at.
struct Feeder : CircuitRecords {
    const Board& board;
    const BoardReading* boardReading;
};

/// Everything that a check of one board may look at.
struct BoardContext : VisitContext {
    const Board& board;
    const BoardReading* boardReading;
    std::span<const Feeder> feeders; ///< from this board to the supply, the nearest first
    Earthing earthing;               ///< in force here: an electrode of its own makes a board TT
    const Board* earthedAt; ///< the board whose own electrode is in force; nullptr: the supply's earth is
    const BoardReading* earthedAtReading;
    const BoardReading* boardBefore; ///< of the visit before
};

/// Everything that a check of one circuit may look at.
struct CircuitContext : BoardContext, CircuitRecords {
    const CircuitReading* before; ///< of the visit before
};

/// An instrument that was used in the visit.
struct InstrumentContext : VisitContext {
    const Instrument& instrument;
};

/// A check is a pure function of its context. One file a check, listed in checks/registry.cpp by a stable
/// key.
template <class Context>
struct RegisteredCheck {
    std::string_view key; ///< "load-device"
    Finding (*run)(const Context&);
};
std::span<const RegisteredCheck<CircuitContext>> circuitChecks();
std::span<const RegisteredCheck<BoardContext>> boardChecks();
/// `supply` of the context is never nullptr.
std::span<const RegisteredCheck<VisitContext>> supplyChecks();
std::span<const RegisteredCheck<InstrumentContext>> instrumentChecks();

} // namespace loopwright
