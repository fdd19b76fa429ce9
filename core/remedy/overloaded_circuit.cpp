// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/overloaded_circuit.h"

#include "core/assess/visit_records.h"
#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/checks/surroundings.h"

#include <algorithm>

namespace loopwright {

namespace {

/// The least rating of the boards that a circuit feeds; nothing where it feeds none, or none has one.
std::optional<Current> leastRatingFed(const Installation& installation, Id circuit) {
    std::optional<Current> least;
    for (const Board& board : installation.boards) {
        const auto rated = board.fedFrom == circuit ? usable(board.ratedCurrent) : std::nullopt;
        if (rated) least = std::min(*rated, least.value_or(*rated));
    }
    return least;
}

} // namespace

std::optional<Current> OverloadedCircuit::loadWithout(const RecordedPiece& piece) const {
    const auto drawn = piece.together();
    if (!isLoadExact() || !drawn) return std::nullopt;
    Current others;
    for (const RecordedPiece& each : pieces)
        if (each.equipment != piece.equipment) others += each.together().value_or(Current());
    const Current left = loadLeft(load.load.peak, *drawn, others);
    return left > Current() ? std::optional(left) : std::nullopt;
}

std::optional<OverloadedCircuit> overloadedCircuit(const Installation& installation, Id visit, Id circuit,
                                                   const ReferenceTables& tables, const RuleSet& rules) {
    return inCircuit(
        installation, visit, circuit, tables, rules,
        [&](const CircuitContext& context) -> std::optional<OverloadedCircuit> {
            Worksheet scratch(phrasing<"load-device">, context, {RecordKind::Circuit, circuit});
            const auto current = loadCurrent(context, context, scratch);
            if (!current) return std::nullopt;
            OverloadedCircuit found{installation,
                                    visit,
                                    context.circuit,
                                    tables,
                                    rules,
                                    loadOverTime(context, context, *current, scratch),
                                    recordedPieces(context, context),
                                    overloadRating(context, scratch),
                                    std::nullopt,
                                    std::nullopt,
                                    leastRatingFed(installation, circuit),
                                    context.family && context.family->adjustable,
                                    context.reading && context.reading->measuredLoad.hasFigure()};
            if (found.rated)
                found.ratedInWarmth =
                    *found.rated *
                    shareInWarmth(context, context.board, context.family, *found.rated, scratch).value;
            if (const auto capacity = wiringCapacity(context, context, scratch))
                found.carried = *capacity / legShare(rules, context.circuit);
            return found;
        });
}

} // namespace loopwright
