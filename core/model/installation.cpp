// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/installation.h"

namespace loopwright {
namespace {

constexpr std::string_view step = " / ";

const std::string& ownName(const Circuit& circuit) {
    return circuit.way.empty() ? circuit.name : circuit.way;
}

} // namespace

std::string pathOf(const Installation&, const Board& board) {
    return board.name;
}

std::string pathOf(const Board& board, const Circuit& circuit) {
    return board.name + std::string(step) + ownName(circuit);
}

std::string pathOf(const Installation& installation, const Circuit& circuit) {
    const Board* board = find(installation.boards, circuit.board);
    return board ? pathOf(*board, circuit) : ownName(circuit);
}

std::string pathOf(const Installation& installation, const Equipment& equipment) {
    const Circuit* circuit = find(installation.circuits, equipment.circuit);
    return circuit ? pathOf(installation, *circuit) + std::string(step) + equipment.name : equipment.name;
}

} // namespace loopwright
