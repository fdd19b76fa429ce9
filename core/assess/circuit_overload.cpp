// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_overload.h"

#include "core/assess/visit_records.h"
#include "core/checks/device.h"
#include "core/checks/fault.h"
#include "core/checks/load_current.h"

#include <algorithm>

namespace loopwright {
namespace {

/// What the circuit's equipment draws as its largest piece starts while the others run.
std::optional<Current> startCurrent(const CircuitContext& context, Current load, Worksheet& sheet) {
    std::optional<Current> largest;
    for (const Equipment* equipment : context.equipment) {
        const auto multiple = usable(equipment->startMultiple);
        const auto drawn =
            multiple ? equipmentCurrent(context, context.circuit, *equipment, sheet) : std::nullopt;
        if (!drawn) continue;
        const Current start = load + drawn->each.value * (*multiple - 1);
        if (!largest || start > *largest) largest = start;
    }
    return largest;
}

/// k2S2 of the line conductors.
std::optional<JouleIntegral> withstandOf(const CircuitContext& context) {
    const Wiring& wiring = context.circuit.wiring;
    const auto size = usable(wiring.lineSize);
    const auto k = context.tables.adiabaticFactor(ConductorRole::Line, wiring.material, wiring.insulation);
    if (!size || !k) return std::nullopt;
    return physics::withstand(k->value, *size * usable(wiring.parallelConductors).value_or(1));
}

/// The longest run of the load at a time; nothing where it runs without end.
std::optional<Time> longestRun(const OverloadAnswer& found) {
    if (found.load.load.isSteady) return std::nullopt;
    return found.answer.overRating.above > Time() ? std::optional(found.answer.overRating.above)
                                                  : std::nullopt;
}

overload::TimeCurrentPicture bandOf(const CircuitContext& context, const OverloadAnswer& found,
                                    const overload::Question& question, Worksheet& sheet) {
    overload::TimeCurrentPicture band;
    band.device = deviceWord(context.family).key;
    band.rated = found.rated;
    band.loadName = context.circuit.name;
    band.load = found.load.load.peak;
    band.onTime = longestRun(found);
    band.start = startCurrent(context, found.load.load.peak, sheet);
    if (const auto fault = faultCurrent(context, context.rules.voltageFactorMin, sheet))
        band.fault = fault->value;
    band.withstand = withstandOf(context);
    band.adiabaticUpTo = context.rules.adiabaticTime;
    band.required = requiredTime(context, found.rated, sheet);
    const Current highest = found.rated * 100;
    if (const auto times =
            context.tables.deviceTimes(*context.family, *usable(context.circuit.device.ratedCurrent)))
        overload::addEdges(band, question, times->value, highest);
    return band;
}

} // namespace

std::optional<CircuitOverload> circuitOverload(const Installation& installation, Id visit, Id circuit,
                                               const ReferenceTables& tables, const RuleSet& rules) {
    const Visit* visitRow = find(installation.visits, visit);
    const Circuit* row = find(installation.circuits, circuit);
    const Board* board = row ? find(installation.boards, row->board) : nullptr;
    if (!visitRow || !board || !isInUse(*row)) return std::nullopt;
    const VisitRecords records(installation, *visitRow, tables, rules, Detail::VerdictOnly);
    const BoardContext boardContext = records.forBoard(*board);
    const CircuitContext context = records.forCircuit(boardContext, *row);
    auto found = overloadAnswer(context);
    if (!found) return std::nullopt;
    auto question = overloadQuestion(context, *context.family, row->device, *usable(row->device.ratedCurrent),
                                     found->load.load);
    if (!question) return std::nullopt;
    question->conductor = found->conductor;
    Worksheet scratch(phrasing<"hidden-overload">, context, {RecordKind::Circuit, circuit});
    CircuitOverload result{*found, bandOf(context, *found, *question, scratch),
                           overload::heatPicture(*question)};
    result.heat.device = result.band.device;
    result.heat.loadName = row->name;
    return result;
}

} // namespace loopwright
