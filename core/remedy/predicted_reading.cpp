// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/predicted_reading.h"

#include "core/checks/verdict.h"

namespace loopwright {
namespace {

std::optional<Resistance> loopAtStart(const Installation& installation, Id visit, Id board) {
    const BoardReading* here = findReading(installation.boardReadings, visit, &BoardReading::board, board);
    if (here)
        if (const auto read = usable(here->loopImpedance)) return read;
    const Board* row = find(installation.boards, board);
    if (!row || row->earthing == BoardEarthing::OwnElectrode) return std::nullopt;
    if (find(installation.circuits, row->fedFrom) || installation.supplies.empty()) return std::nullopt;
    const SupplyReading* supply = findReading(installation.supplyReadings, visit, &SupplyReading::supply,
                                              installation.supplies.front().id);
    return supply ? usable(supply->externalLoopImpedance) : std::nullopt;
}

Entry<Resistance> computed(Resistance value) {
    constexpr int milliohms = 3;
    return Entry<Resistance>::of(value, milliohms, Origin::Computed);
}

} // namespace

CircuitReading predictedReading(const Installation& installation, Id visit, const Circuit& circuit,
                                const ReferenceTables& tables) {
    CircuitReading reading{.visit = visit, .circuit = circuit.id};
    const Wiring& wiring = circuit.wiring;
    const auto length = usable(wiring.length);
    const auto line = resistancePerLength(tables, wiring.material, wiring.lineSize,
                                          usable(wiring.parallelConductors).value_or(1));
    const auto protective = protectivePerLength(tables, wiring);
    if (!length || !line || !protective) return reading;
    const Resistance along = (*line + *protective) * *length;
    reading.continuity = computed(along);
    if (const auto start = loopAtStart(installation, visit, circuit.board))
        reading.loopImpedance = computed(*start + along);
    return reading;
}

std::optional<ResistancePerLength> resistancePerLength(const ReferenceTables& tables, Material material,
                                                       const Entry<CrossSection>& size, Ratio parallel) {
    const auto exact = usable(size);
    const auto row = exact ? tables.conductorResistance(material, *exact) : std::nullopt;
    return row ? std::optional(row->value / parallel) : std::nullopt;
}

bool isProtectiveAConductor(const Wiring& wiring) {
    return wiring.protectiveConductor == ProtectiveConductor::InCable ||
           wiring.protectiveConductor == ProtectiveConductor::Separate;
}

std::optional<ResistancePerLength> protectivePerLength(const ReferenceTables& tables, const Wiring& wiring) {
    if (!isProtectiveAConductor(wiring)) return std::nullopt;
    return resistancePerLength(tables, wiring.material, wiring.protectiveSize);
}

} // namespace loopwright
