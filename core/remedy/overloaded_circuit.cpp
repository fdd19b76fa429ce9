// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/overloaded_circuit.h"

#include "core/assess/visit_records.h"
#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/checks/surroundings.h"

#include <algorithm>

namespace loopwright {

Current OverloadedCircuit::drawnBy(const Equipment& piece) const {
    const auto at = static_cast<std::size_t>(std::ranges::find(equipment, &piece) - equipment.begin());
    return at < load.pieces.size() ? load.pieces[at].each * load.pieces[at].count : Current();
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
                                    {context.equipment.begin(), context.equipment.end()},
                                    overloadRating(context, scratch),
                                    std::nullopt,
                                    std::nullopt,
                                    context.family && context.family->adjustable};
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
