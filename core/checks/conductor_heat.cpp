// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

namespace loopwright {
namespace {

/// Whether a sound device is sure to end this load, so that the wiring does not carry it for long.
bool deviceEndsIt(const CircuitContext& context, const LoadOverTime& load) {
    Worksheet scratch(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    const auto rated = overloadRating(context, scratch);
    if (!rated || !context.family || load.current.value <= *rated) return false;
    const auto question =
        overloadQuestion(context, *context.family, context.circuit.device, *rated, load.load);
    return question && overload::sureToOperate(*question).operates();
}

void showHeat(const VisitContext& visit, const Circuit& circuit, const overload::Conductor& conductor,
              const LoadOverTime& load, Worksheet& sheet) {
    const overload::ConductorHeat heat = overload::heatUnder(conductor, load.load.together);
    const auto temperature = [&](std::string_view symbol, Temperature value, std::string_view note) {
        sheet.showAside([&] { return computedTerm(symbol, value, units::celsius, {note, {}}); });
    };
    sheet.showAside([&] {
        return Term{
            "τ", spanOf(conductor.quick), TermOrigin::Computed, {"check.note.quick-constant", {}}, {}};
    });
    if (conductor.slow)
        sheet.showAside([&] {
            return Term{"τ_cable",
                        spanOf(*conductor.slow),
                        TermOrigin::Computed,
                        {"check.note.slow-constant", {}},
                        {}};
        });
    temperature("θ_peak", heat.peak, "check.note.conductor-peak");
    temperature("θ_least", heat.leastPeak, "check.note.conductor-least-peak");
    temperature("θ_mean", heat.mean, "check.note.conductor-mean");
    const Source& life = visit.tables.insulationLife(circuit.wiring.insulation).source;
    const auto ageing = [&](std::string_view symbol, Ratio times, std::string_view note) {
        if (std::isfinite(times))
            sheet.showAside([&] { return assumedTerm(symbol, times, units::ratio, {note, {}}, life); });
    };
    ageing("v_least", heat.leastAgeing, "check.note.ageing-least");
    ageing("v_most", heat.mostAgeing, "check.note.ageing-most");
}

/// Whether the load runs without rests and within its device's rating, so that nothing need be laid out over
/// time.
bool isPlain(const CircuitContext& context, Current load) {
    Worksheet scratch(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    const auto rated = overloadRating(context, scratch);
    return (!rated || load <= *rated) && std::ranges::none_of(context.equipment, [](const Equipment* piece) {
               return usable(piece->onTime) && usable(piece->offTime);
           });
}

Finding judge(const overload::Conductor& conductor, const overload::Warmth& heat, const Figure<Current>& load,
              Worksheet& sheet) {
    const TemperatureDifference allowed = conductor.limit - conductor.ambient;
    const auto compare = [&](Temperature reached) {
        sheet.compare(Relation::AtMost, "Δθ", rising(reached - conductor.ambient, load),
                      Figure<TemperatureDifference>{allowed}, units::kelvin);
    };
    const bool mayStay = heat.leastPeak <= conductor.limit;
    compare(mayStay ? heat.peak : heat.leastPeak);
    if (mayStay && sheet.verdict() == Verdict::Fails) {
        sheet.atWorst(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.conductor-heat.may-pass");
    }
    return sheet.conclude(measure(mayStay ? heat.peak : heat.leastPeak, units::celsius),
                          measure(conductor.limit, units::celsius));
}

} // namespace

/// The conductors' temperature over the load's duty against what their insulation bears for ever. Two time
/// constants bound it: of the conductor alone, and of the whole cable; what holds with one and not with the
/// other is close.
Finding checkConductorHeat(const CircuitContext& context) {
    Worksheet sheet(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("(θ_max − θ_a) (I/I_z)^2 ≤ θ_max − θ_a");
    sheet.clause("overload");
    const auto current = loadCurrent(context, context, sheet);
    const auto capacity = wiringCapacity(context, context, sheet);
    if (!current || !capacity) return sheet.conclude();
    if (!sheet.isFull() && isPlain(context, current->value)) {
        const auto conductor = conductorOf(context, *capacity, false, sheet);
        if (!conductor) return sheet.conclude();
        const physics::DutyStep steady = overload::steadyStep(current->value);
        return judge(*conductor, overload::warmthUnder(*conductor, std::span(&steady, 1)), *current, sheet);
    }
    const LoadOverTime load = loadOverTime(context, context, *current, sheet);
    const auto conductor = conductorOf(context, *capacity, sheet.isFull() || !load.load.isSteady, sheet);
    if (!conductor) return sheet.conclude();
    if (deviceEndsIt(context, load)) return sheet.doesNotApply("check.conductor-heat.device-ends-it");

    const overload::Warmth heat = overload::warmthUnder(*conductor, load.load.together);
    if (sheet.isFull()) showHeat(context, context.circuit, *conductor, load, sheet);
    return judge(*conductor, heat, load.current, sheet);
}

} // namespace loopwright
