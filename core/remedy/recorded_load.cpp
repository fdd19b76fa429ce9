// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/recorded_load.h"

#include "core/checks/load_current.h"

#include <algorithm>

namespace loopwright {
namespace {

/// One where nobody recorded how many; nothing where what is recorded cannot be used.
std::optional<Ratio> countOf(const Equipment& equipment) {
    const bool isSilent = equipment.count.isMissing() || equipment.count.state == EntryState::NotApplicable;
    return isSilent ? std::optional<Ratio>(1) : usable(equipment.count);
}

RecordedPiece recorded(const VisitContext& visit, const Circuit& circuit, const Equipment& equipment) {
    Worksheet scratch(phrasing<"load-device">, visit, {RecordKind::Circuit, circuit.id});
    RecordedPiece piece{&equipment, std::nullopt, 1, circuit.phases != Phases::Three};
    const auto drawn = equipmentCurrent(visit, circuit, equipment, scratch);
    const auto count = countOf(equipment);
    if (!drawn || !count) return piece;
    piece.isSinglePhase = drawn->singlePhase;
    piece.count = piecesOnOnePhase(circuit, *drawn, *count);
    if (drawn->each.bound == Bound::Exact && isUsable(drawn->each.value)) piece.each = drawn->each.value;
    return piece;
}

const RecordedPiece* pieceOf(std::span<const RecordedPiece> pieces, Id equipment) {
    for (const RecordedPiece& piece : pieces)
        if (piece.equipment->id == equipment) return &piece;
    return nullptr;
}

} // namespace

std::optional<Current> RecordedPiece::together() const {
    return each ? std::optional(*each * count) : std::nullopt;
}

std::vector<RecordedPiece> recordedPieces(const VisitContext& visit, const CircuitRecords& records) {
    VisitContext unseen = visit;
    unseen.detail = Detail::VerdictOnly;
    std::vector<RecordedPiece> pieces;
    for (const Equipment* equipment : records.equipment)
        pieces.push_back(recorded(unseen, records.circuit, *equipment));
    return pieces;
}

Current knownSum(std::span<const RecordedPiece> pieces) {
    Current sum;
    for (const RecordedPiece& piece : pieces)
        sum += piece.together().value_or(Current());
    return sum;
}

std::optional<Current> drawnLess(std::span<const RecordedPiece> before,
                                 std::span<const RecordedPiece> after) {
    Current less;
    for (const RecordedPiece& piece : before) {
        const RecordedPiece* stays = pieceOf(after, piece.equipment->id);
        if (stays && *stays->equipment == *piece.equipment) continue;
        const auto was = piece.together(), is = stays ? stays->together() : Current();
        if (!was || !is) return std::nullopt;
        less += *was - *is;
    }
    for (const RecordedPiece& piece : after) {
        if (pieceOf(before, piece.equipment->id)) continue;
        const auto is = piece.together();
        if (!is) return std::nullopt;
        less = less - *is;
    }
    return less;
}

Current loadLeft(Current load, Current less, Current others) {
    return std::max(load - less, std::min(load, others));
}

} // namespace loopwright
