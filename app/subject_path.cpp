// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/subject_path.h"

namespace loopwright {
namespace {

const Circuit* circuitOf(const Installation& installation, const Subject& subject) {
    switch (subject.kind) {
    case RecordKind::Circuit:
        return find(installation.circuits, subject.id);
    case RecordKind::CircuitReading: {
        const auto* reading = find(installation.circuitReadings, subject.id);
        return reading ? find(installation.circuits, reading->circuit) : nullptr;
    }
    case RecordKind::Equipment: {
        const auto* equipment = find(installation.equipment, subject.id);
        return equipment ? find(installation.circuits, equipment->circuit) : nullptr;
    }
    default:
        return nullptr;
    }
}

const Supply* supplyOf(const Installation& installation, const Subject& subject) {
    if (subject.kind == RecordKind::Supply) return find(installation.supplies, subject.id);
    if (subject.kind != RecordKind::SupplyReading) return nullptr;
    const auto* reading = find(installation.supplyReadings, subject.id);
    return reading ? find(installation.supplies, reading->supply) : nullptr;
}

} // namespace

const Board* boardOf(const Installation& installation, const Subject& subject) {
    if (const Circuit* circuit = circuitOf(installation, subject))
        return find(installation.boards, circuit->board);
    if (subject.kind == RecordKind::Board) return find(installation.boards, subject.id);
    if (subject.kind != RecordKind::BoardReading) return nullptr;
    const auto* reading = find(installation.boardReadings, subject.id);
    return reading ? find(installation.boards, reading->board) : nullptr;
}

std::string subjectPath(const Installation& installation, const Subject& subject) {
    if (const auto* equipment =
            subject.kind == RecordKind::Equipment ? find(installation.equipment, subject.id) : nullptr)
        return pathOf(installation, *equipment);
    if (const Circuit* circuit = circuitOf(installation, subject)) return pathOf(installation, *circuit);
    if (const Board* board = boardOf(installation, subject)) return pathOf(installation, *board);
    if (const Supply* supply = supplyOf(installation, subject))
        return "supply " + std::to_string(supply - installation.supplies.data() + 1);
    if (const auto* instrument =
            subject.kind == RecordKind::Instrument ? find(installation.instruments, subject.id) : nullptr)
        return instrument->name;
    if (const auto* visit =
            subject.kind == RecordKind::Visit ? find(installation.visits, subject.id) : nullptr)
        return visit->label;
    return installation.site.name;
}

} // namespace loopwright
