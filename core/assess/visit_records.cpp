// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/visit_records.h"

#include "core/checks/verdict.h"

#include <algorithm>

namespace loopwright {
namespace {

template <class Map>
typename Map::mapped_type foundIn(const Map& map, Id id) {
    const auto found = map.find(id);
    return found == map.end() ? typename Map::mapped_type{} : found->second;
}

template <class Row>
std::span<const Row* const> groupIn(const std::unordered_map<Id, std::vector<const Row*>>& groups, Id id) {
    const auto found = groups.find(id);
    return found == groups.end() ? std::span<const Row* const>{} : std::span<const Row* const>{found->second};
}

/// Of several rows about the same subject the first counts, as findReading() has it.
template <class Row>
std::unordered_map<Id, const Row*> bySubject(const std::vector<Row>& rows, Id Row::*subject, Id visit) {
    std::unordered_map<Id, const Row*> found;
    for (const Row& row : rows)
        if (row.visit == visit) found.try_emplace(row.*subject, &row);
    return found;
}

/// The visit that is recorded just before this one; visits run from the oldest to the newest.
const Visit* visitBefore(const Installation& installation, Id visit) {
    const Visit* before = nullptr;
    for (const Visit& each : installation.visits) {
        if (each.id == visit) return before;
        before = &each;
    }
    return nullptr;
}

Uncertainties uncertaintiesOf(const Installation& installation, Id visit, const ReferenceTables& tables) {
    Uncertainties found{};
    for (const Instrument& instrument : installation.instruments) {
        if (instrument.visit != visit) continue;
        for (std::size_t i = 0; i < measurandCount; ++i)
            if (const auto recorded = usable(instrument.*recordedUncertainties[i].entry))
                found[i].share = std::max(found[i].share, *recorded);
    }
    for (std::size_t i = 0; i < measurandCount; ++i) {
        if (found[i].share > 0) continue;
        const Sourced<Ratio>& standard = tables.operatingUncertainty(static_cast<Measurand>(i));
        found[i] = {standard.value, &standard.source};
    }
    return found;
}

} // namespace

VisitRecords::VisitRecords(const Installation& installation, const Visit& visit,
                           const ReferenceTables& tables, const RuleSet& rules, Detail detail)
  : installation_(installation)
  , visit_(visit)
  , before_(visitBefore(installation, visit.id))
  , tables_(tables)
  , rules_(rules)
  , detail_(detail)
  , uncertainties_(uncertaintiesOf(installation, visit.id, tables))
  , supplyReadings_(bySubject(installation.supplyReadings, &SupplyReading::supply, visit.id))
  , boardReadings_(bySubject(installation.boardReadings, &BoardReading::board, visit.id))
  , circuitReadings_(bySubject(installation.circuitReadings, &CircuitReading::circuit, visit.id)) {
    if (before_) {
        boardReadingsBefore_ = bySubject(installation.boardReadings, &BoardReading::board, before_->id);
        circuitReadingsBefore_ =
            bySubject(installation.circuitReadings, &CircuitReading::circuit, before_->id);
    }
    for (const Board& board : installation.boards)
        boards_.try_emplace(board.id, &board);
    for (const Supply& supply : installation.supplies)
        times_.try_emplace(supply.id, overcurrentTimes(tables, supply.fuse, nullptr));
    for (const Circuit& circuit : installation.circuits) {
        times_.try_emplace(circuit.id,
                           overcurrentTimes(tables, circuit.device, foundIn(boards_, circuit.board)));
        circuits_.try_emplace(circuit.id, &circuit);
        circuitsOfBoard_[circuit.board].push_back(&circuit);
    }
    for (const Equipment& equipment : installation.equipment)
        equipmentOfCircuit_[equipment.circuit].push_back(&equipment);
    for (const Board& board : installation.boards)
        feeders_.try_emplace(board.id, feedersOf(board));
    distribute();
}

void VisitRecords::distribute() {
    distribution_.boards = installation_.boards.size();
    for (const Board& board : installation_.boards) {
        if (circuits_.contains(board.fedFrom))
            distribution_.fedBy[board.fedFrom].push_back(&board);
        else
            distribution_.atSupply.push_back(&board);
    }
    for (const Circuit& circuit : installation_.circuits)
        distribution_.outgoing[circuit.board].push_back(
            {recordsOf(circuit), groupIn(distribution_.fedBy, circuit.id)});
}

std::span<const Circuit* const> VisitRecords::circuitsOf(Id board) const {
    return groupIn(circuitsOfBoard_, board);
}

VisitContext VisitRecords::base(const Supply* supply) const {
    return {installation_,
            tables_,
            rules_,
            detail_,
            visit_,
            supply,
            supply ? foundIn(supplyReadings_, supply->id) : nullptr,
            uncertainties_,
            distribution_,
            before_,
            supply ? times_.at(supply->id).get() : nullptr};
}

VisitContext VisitRecords::forSupply(const Supply& supply) const {
    return base(&supply);
}

CircuitRecords VisitRecords::recordsOf(const Circuit& circuit) const {
    return {circuit, foundIn(circuitReadings_, circuit.id), groupIn(equipmentOfCircuit_, circuit.id),
            tables_.deviceFamily(circuit.device.family), times_.at(circuit.id).get()};
}

std::vector<Feeder> VisitRecords::feedersOf(const Board& board) const {
    std::vector<Feeder> feeders;
    for (const Board* fed = &board; feeders.size() < installation_.boards.size();) {
        const Circuit* feeder = foundIn(circuits_, fed->fedFrom);
        const Board* from = feeder ? foundIn(boards_, feeder->board) : nullptr;
        if (!from || from == &board) break;
        feeders.push_back({recordsOf(*feeder), *from, foundIn(boardReadings_, from->id)});
        fed = from;
    }
    return feeders;
}

BoardContext VisitRecords::forBoard(const Board& board) const {
    const std::vector<Feeder>& feeders = feeders_.at(board.id);
    BoardContext context{base(installation_.supplies.empty() ? nullptr : &installation_.supplies.front()),
                         board,
                         foundIn(boardReadings_, board.id),
                         feeders,
                         Earthing::Unknown,
                         nullptr,
                         nullptr,
                         foundIn(boardReadingsBefore_, board.id)};
    if (context.supply) context.earthing = context.supply->earthing;
    const Board* earthedAt = board.earthing == BoardEarthing::OwnElectrode ? &board : nullptr;
    for (auto feeder = feeders.begin(); !earthedAt && feeder != feeders.end(); ++feeder)
        if (feeder->board.earthing == BoardEarthing::OwnElectrode) earthedAt = &feeder->board;
    if (earthedAt) {
        context.earthing = Earthing::Tt;
        context.earthedAt = earthedAt;
        context.earthedAtReading = foundIn(boardReadings_, earthedAt->id);
    }
    return context;
}

CircuitContext VisitRecords::forCircuit(const BoardContext& board, const Circuit& circuit) const {
    return {board, recordsOf(circuit), foundIn(circuitReadingsBefore_, circuit.id)};
}

InstrumentContext VisitRecords::forInstrument(const Instrument& instrument) const {
    return {base(installation_.supplies.empty() ? nullptr : &installation_.supplies.front()), instrument};
}

} // namespace loopwright
