// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/checks/checks.h"

#include "core/checks/capacity.h"
#include "core/checks/load_current.h"
#include "core/checks/load_over_time.h"

namespace loopwright {
namespace {

/// By when a sound device is sure to have ended this load; nothing where it is not.
std::optional<Time> endedAfter(const CircuitContext& context, const LoadOverTime& load) {
    Worksheet scratch(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    const auto rated = overloadRating(context, scratch);
    const bool isExact = load.current.bound == Bound::Exact;
    if (!rated || !context.family || !isExact || load.current.value <= *rated) return std::nullopt;
    const auto endsUnder = [&](const overload::Load& asked) {
        const auto question = ownOverloadQuestion(context, *rated, asked, scratch);
        return question ? overload::sureToOperate(*question) : overload::Edge{};
    };
    if (!endsUnder(load.load).operates()) return std::nullopt;
    overload::Load together = load.load;
    together.apart = {together.together};
    const overload::Edge edge = endsUnder(together);
    return edge.operates() ? std::optional(edge.after) : std::nullopt;
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

bool hasRests(const CircuitContext& context) {
    return std::ranges::any_of(context.equipment, [](const Equipment* piece) {
        return usable(piece->onTime) && usable(piece->offTime);
    });
}

/// Whether the load runs without rests and within its device's rating, so that nothing need be laid out over
/// time.
bool isPlain(const CircuitContext& context, Current load) {
    if (hasRests(context)) return false;
    Worksheet scratch(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    const auto rated = overloadRating(context, scratch);
    return !rated || load <= *rated;
}

Measure warm(Temperature temperature) {
    return measure(temperature, units::celsius);
}

/// What conductors reach at most and at least, and what they may.
void compareRises(const overload::Conductor& conductor, const overload::Warmth& heat, Temperature limit,
                  const Figure<Current>& load, Worksheet& sheet) {
    const TemperatureDifference allowed = limit - conductor.ambient;
    const bool mayStay = heat.leastPeak <= limit;
    const Temperature reached = mayStay ? heat.peak : heat.leastPeak;
    sheet.compare(Relation::AtMost, "Δθ", rising(reached - conductor.ambient, load),
                  Figure<TemperatureDifference>{allowed}, units::kelvin);
    if (mayStay && sheet.verdict() == Verdict::Fails) {
        sheet.atWorst(Verdict::Close);
        sheet.phrase(Verdict::Close, "check.conductor-heat.may-pass");
    }
}

Finding judge(const overload::Conductor& conductor, const overload::Warmth& heat, const Figure<Current>& load,
              Worksheet& sheet) {
    compareRises(conductor, heat, conductor.limit, load, sheet);
    const bool mayStay = heat.leastPeak <= conductor.limit;
    constexpr TemperatureDifference alike = kelvins(1);
    const Measure bears = warm(conductor.limit);
    if (mayStay || heat.peak - heat.leastPeak < alike)
        return sheet.conclude(warm(mayStay ? heat.peak : heat.leastPeak), bears);
    sheet.phrase(Verdict::Fails, "check.conductor-heat.fails-between");
    return sheet.conclude(warm(heat.leastPeak), bears, warm(heat.peak));
}

/// The same of a load that nothing had to be laid out over time to judge.
void showPlain(const CircuitContext& context, const Figure<Current>& current, Current capacity,
               Worksheet& sheet) {
    VisitContext unseen = context;
    unseen.detail = Detail::VerdictOnly;
    Worksheet aside(phrasing<"conductor-heat">, unseen, {RecordKind::Circuit, context.circuit.id});
    const LoadOverTime load = loadOverTime(unseen, context, current, aside);
    if (const auto conductor = conductorOf(context, capacity, true, aside))
        showHeat(context, context.circuit, *conductor, load, sheet);
}

/// Where what was measured or typed keeps within the limit, and the recorded equipment draws far more and,
/// over its own runs and rests, does not.
std::optional<Finding> doubtRests(const CircuitContext& context, const overload::Conductor& conductor,
                                  Worksheet& sheet) {
    const auto loads = hasRests(context) ? loadAndEquipment(context, context) : std::nullopt;
    if (!loads || !loads->disagree()) return std::nullopt;
    Worksheet aside(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    const LoadOverTime drawn = loadOverTime(context, context, loads->drawn, aside);
    if (overload::warmthUnder(conductor, drawn.load.together).peak <= conductor.limit) return std::nullopt;
    return doubtLoad(context, context, 1, loads->counted, sheet);
}

/// A load that the device ends may warm conductors as much as the conventional operating current does: what
/// the rule for overload accepts (IEC 60364-4-43, 433.1).
Finding judgeUntil(Time ended, const overload::Conductor& conductor, const LoadOverTime& load,
                   const RuleSet& rules, Worksheet& sheet) {
    const physics::DutyStep conventional =
        overload::steadyStep(conductor.capacity * rules.conventionalFactor);
    const Temperature accepted = overload::warmthUnder(conductor, std::span(&conventional, 1)).mean;
    const auto within = [&](Time constant) {
        return overload::warmestWithin(conductor, constant, load.load.together, ended);
    };
    overload::Warmth heat{within(conductor.quick), conductor.ambient, conductor.ambient};
    if (conductor.slow) heat.leastPeak = within(*conductor.slow);
    if (heat.peak <= accepted) return sheet.doesNotApply("check.conductor-heat.device-ends-it");
    compareRises(conductor, heat, accepted, load.current, sheet);
    if (sheet.verdict() == Verdict::Close)
        sheet.phrase(Verdict::Close, "check.conductor-heat.may-pass-before-the-end");
    sheet.phrase(Verdict::Fails, "check.conductor-heat.before-the-end");
    const bool fails = sheet.verdict() == Verdict::Fails;
    return sheet.conclude(warm(fails ? heat.leastPeak : heat.peak), warm(accepted), spanOf(ended));
}

} // namespace

/// The conductors' temperature over the load's duty against what their insulation bears for ever. Two time
/// constants bound it: of the conductor alone, and of the whole cable; what holds with one and not with the
/// other is close. Where a sound device is sure to end the load they are judged until then.
Finding checkConductorHeat(const CircuitContext& context) {
    Worksheet sheet(phrasing<"conductor-heat">, context, {RecordKind::Circuit, context.circuit.id});
    sheet.formula("(θ_max − θ_a) (I/I_z)^2 ≤ θ_max − θ_a");
    sheet.clause("overload");
    const auto current = loadCurrent(context, context, sheet);
    const auto capacity = wiringCapacity(context, context, sheet);
    if (!current || !capacity) return sheet.conclude();
    // With rests in between equipment may draw more than the wiring carries for ever: see doubtRests.
    if (!hasRests(context))
        if (auto doubt =
                doubtLoad(context, context, legShare(context.rules, context.circuit), *capacity, sheet))
            return std::move(*doubt);
    if (isPlain(context, current->value)) {
        const auto conductor = conductorOf(context, *capacity, false, sheet);
        if (!conductor) return sheet.conclude();
        if (sheet.isFull()) showPlain(context, *current, *capacity, sheet);
        const physics::DutyStep steady = overload::steadyStep(current->value);
        return judge(*conductor, overload::warmthUnder(*conductor, std::span(&steady, 1)), *current, sheet);
    }
    const LoadOverTime load = loadOverTime(context, context, *current, sheet);
    const auto conductor = conductorOf(context, *capacity, true, sheet);
    if (!conductor) return sheet.conclude();
    if (const auto ended = endedAfter(context, load))
        return judgeUntil(*ended, *conductor, load, context.rules, sheet);

    const overload::Warmth heat = overload::warmthUnder(*conductor, load.load.together);
    if (heat.peak <= conductor->limit)
        if (auto doubt = doubtRests(context, *conductor, sheet)) return std::move(*doubt);
    if (sheet.isFull()) showHeat(context, context.circuit, *conductor, load, sheet);
    return judge(*conductor, heat, load.current, sheet);
}

} // namespace loopwright
