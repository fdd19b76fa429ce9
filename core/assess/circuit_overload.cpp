// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_overload.h"

#include "core/assess/visit_records.h"
#include "core/checks/device.h"
#include "core/checks/fault.h"
#include "core/checks/load_current.h"

#include <algorithm>

namespace loopwright {
namespace {

/// k2S2 of the line conductors.
std::optional<JouleIntegral> withstandOf(const CircuitContext& context) {
    const Wiring& wiring = context.circuit.wiring;
    const auto size = usable(wiring.lineSize);
    const auto k =
        context.tables.adiabaticFactor(ConductorRole::Line, wiring.material, wiring.insulation, size);
    if (!size || !k) return std::nullopt;
    return physics::withstand(k->value, *size * usable(wiring.parallelConductors).value_or(1));
}

/// The longest run of the load above its rating at a time; nothing where it runs without end, or never above.
std::optional<Time> longestRun(const OverloadAnswer& found) {
    if (found.load.load.isSteady) return std::nullopt;
    const Time longest = overload::longestAbove(found.load.load.together, found.rated);
    return longest > Time() ? std::optional(longest) : std::nullopt;
}

/// What is asked about: the circuit's own device, or a plug fuse on it.
struct Asked {
    const DeviceFamily& family;
    const Sourced<physics::DeviceTimes>* times; ///< nullptr where nothing is promised
    const std::string& loadName;
    OverloadAnswer found;
};

CircuitOverload pictured(const overload::Question& question, Asked asked) {
    CircuitOverload result{std::move(asked.found), {}, overload::heatPicture(question)};
    overload::TimeCurrentPicture& band = result.band;
    band.device = result.heat.device = deviceWord(&asked.family).key;
    band.loadName = result.heat.loadName = asked.loadName;
    band.rated = result.found.rated;
    band.load = result.found.load.load.peak;
    band.onTime = longestRun(result.found);
    constexpr double drawnUpTo = 100; // multiples of the rating; farther out nothing is shown
    if (asked.times) overload::addEdges(band, question, asked.times->value, band.rated * drawnUpTo);
    return result;
}

/// What stands beside the load in the picture of a circuit's own device.
void addCircuit(const CircuitContext& context, overload::TimeCurrentPicture& band) {
    Worksheet scratch(phrasing<"hidden-overload">, context, {RecordKind::Circuit, context.circuit.id});
    if (const auto start = largestStart(context, context, scratch)) band.start = start->current.value;
    if (const auto fault = faultCurrent(context, context.rules.voltageFactorMin, scratch))
        band.fault = fault->value;
    band.withstand = withstandOf(context);
    band.adiabaticUpTo = context.rules.adiabaticTime;
    band.required = requiredTime(context, usable(context.circuit.device.ratedCurrent), scratch);
}

std::optional<CircuitOverload> ofPlugFuse(const CircuitContext& context) {
    auto plugged = worstOnPlugFuse(context);
    if (!plugged) return std::nullopt;
    OverloadAnswer found{std::move(plugged->load), plugged->rated, nullptr, std::nullopt, {}};
    const auto question = overloadQuestion(context, *plugged->family, {}, found.rated, found.load.load);
    if (!question) return std::nullopt;
    found.device = &question->device;
    found.answer = overload::answer(*question);
    const auto* times = context.tables.deviceTimes(*plugged->family, plugged->rated);
    return pictured(*question, {*plugged->family, times, plugged->equipment->name, found});
}

std::optional<CircuitOverload> ofOwnDevice(const CircuitContext& context) {
    const auto found = overloadAnswer(context);
    if (!found || !usable(context.circuit.device.ratedCurrent)) return std::nullopt;
    auto question =
        overloadQuestion(context, *context.family, context.circuit.device, found->rated, found->load.load);
    if (!question) return std::nullopt;
    question->conductor = found->conductor;
    question->inWarmth = found->inWarmth;
    question->inCold = found->inCold;
    CircuitOverload result =
        pictured(*question, {*context.family, context.times, context.circuit.name, *found});
    addCircuit(context, result.band);
    return result;
}

std::optional<CircuitOverload> overloadOf(const CircuitContext& context) {
    auto own = ofOwnDevice(context);
    if (own && own->found.answer.isHidden()) return own;
    if (auto plugged = ofPlugFuse(context)) return plugged;
    return own;
}

} // namespace

std::optional<CircuitOverload> circuitOverload(const Installation& installation, Id visit, Id circuit,
                                               const ReferenceTables& tables, const RuleSet& rules) {
    return inCircuit(installation, visit, circuit, tables, rules, overloadOf);
}

} // namespace loopwright
