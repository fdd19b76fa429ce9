// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/thermal.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

const Source replica{.title = "IEC 60255-149"};

constexpr Range multiplesOfBase{.least = 1e-3, .most = 100};

constexpr auto reference = number<Current>("referenceCurrent_A", "I_ref", units::ampere);
constexpr auto timeConstant = number<Time>("timeConstant_s", "τ", units::second);
constexpr auto current = orZero(number<Current>("current_A", "I", units::ampere));
constexpr auto preload = orZero(number<Current>("preload_A", "I_p", units::ampere, none));
constexpr auto duration = orZero(number<Time>("time_s", "t", units::second));
constexpr auto stallTime = number<Time>("stallTime_s", "t", units::second);
constexpr auto stallRatio = within(multiplesOfBase, number<Ratio>("stallMultiple", "n", units::ratio));
constexpr auto preloadRatio =
    orZero(within(multiplesOfBase, number<Ratio>("preloadMultiple", "p", units::ratio, none)));
constexpr auto referenceRatio =
    within(multiplesOfBase, number<Ratio>("referenceMultiple", "k", units::ratio));
constexpr auto continuous = number<Current>("continuousCurrent_A", "I_max", units::ampere);
constexpr auto shortCurrent = number<Current>("shortTimeCurrent_A", "I_short", units::ampere);
constexpr auto shortTime = number<Time>("shortTime_s", "t", units::second);
constexpr auto start = number<Temperature>("startTemperature_degC", "θ_0", units::celsius);
constexpr auto end = number<Temperature>("steadyTemperature_degC", "θ_{∞}", units::celsius);
constexpr auto ambient = number<Temperature>("ambientTemperature_degC", "θ_a", units::celsius);
constexpr auto limit = number<Temperature>("limitTemperature_degC", "θ_max", units::celsius);
constexpr auto capacity = number<Current>("capacity_A", "I_z", units::ampere);

constexpr std::string_view operates[]{"operates", "never-operates"};
constexpr auto whether = wordResult("operation", operates);
constexpr auto steady = result<Ratio>("steadyState_percent", "θ_{∞}", units::percent);
constexpr auto state = result<Ratio>("thermalState_percent", "θ", units::percent);
constexpr auto cold = result<Time>("coldTime_s", "t_cold", units::second);
constexpr auto warm = result<Time>("warmTime_s", "t_warm", units::second);
constexpr auto constantResult = result<Time>("timeConstant_s", "τ", units::second);
constexpr auto temperature = result<Temperature>("temperature_degC", "θ", units::celsius);

physics::ThermalElement elementOf(const Given& given) {
    return {given[reference], given[timeConstant]};
}

Sum replicaTime() {
    return {.key = "replica-time",
            .inputs = {reference, timeConstant, current, preload},
            .results = {steady, whether, cold, warm},
            .example = "referenceCurrent_A=11 timeConstant_s=600 current_A=30 preload_A=9",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const physics::ThermalElement element = elementOf(given);
                const auto fromCold = physics::operatingTime(element, given[current]);
                const auto fromWarm = physics::operatingTime(element, given[current],
                                                             physics::steadyState(element, given[preload]));
                Answer answer;
                answer.step("θ_{∞} = (I / I_ref)^2, operates at 100 %", steady,
                            physics::steadyState(element, given[current]), replica);
                answer.word(whether, operates[fromCold || fromWarm ? 0 : 1]);
                if (fromCold) answer.step("t_cold = τ ln(θ_{∞} / (θ_{∞} − 1))", cold, *fromCold, replica);
                if (fromWarm)
                    answer.step("t_warm = τ ln((θ_{∞} − θ_p) / (θ_{∞} − 1)), θ_p = (I_p / I_ref)^2", warm,
                                *fromWarm, replica);
                return answer;
            }};
}

Sum replicaState() {
    return {.key = "replica-state",
            .inputs = {reference, timeConstant, preload, current, duration},
            .results = {steady, state},
            .example = "referenceCurrent_A=11 timeConstant_s=600 current_A=10 time_s=300",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const physics::ThermalElement element = elementOf(given);
                Answer answer;
                answer.step("θ_{∞} = (I / I_ref)^2", steady, physics::steadyState(element, given[current]),
                            replica);
                return answer.step("θ = θ_{∞} + (θ_p − θ_{∞}) exp(−t/τ), θ_p = (I_p / I_ref)^2", state,
                                   physics::stateAfter(element, physics::steadyState(element, given[preload]),
                                                       given[current], given[duration]),
                                   replica);
            }};
}

Sum constantFromStall() {
    return {.key = "time-constant-from-stall",
            .inputs = {stallTime, stallRatio, preloadRatio, referenceRatio},
            .results = {constantResult},
            .example = "stallTime_s=5 stallMultiple=6 referenceMultiple=1.1",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const auto constant = physics::timeConstantFromStall(
                    given[stallTime], given[stallRatio], given[preloadRatio], given[referenceRatio]);
                if (!constant)
                    return tl::unexpected(
                        Refusal{std::string(referenceRatio.key),
                                {"sum.not-between",
                                 {std::string(referenceRatio.key), std::string(preloadRatio.key),
                                  std::string(stallRatio.key)}}});
                return Answer().step("τ = t / ln((n^2 − p^2) / (n^2 − k^2))", constantResult, *constant,
                                     replica);
            }};
}

Sum constantFromShortTime() {
    return {.key = "time-constant-from-short-time",
            .inputs = {continuous, shortCurrent, shortTime},
            .results = {constantResult},
            .example = "continuousCurrent_A=500 shortTimeCurrent_A=22500 shortTime_s=1",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step("τ = (I_short / I_max)^2 t", constantResult,
                                     physics::timeConstantFromShortTime(
                                         given[continuous], given[shortCurrent], given[shortTime]),
                                     replica);
            }};
}

Sum temperatureAfter() {
    return {.key = "temperature-after",
            .inputs = {start, end, timeConstant, duration},
            .results = {temperature},
            .example = "startTemperature_degC=141 steadyTemperature_degC=40 timeConstant_s=1026 time_s=600",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step("θ = θ_{∞} + (θ_0 − θ_{∞}) exp(−t/τ)", temperature,
                                     physics::temperatureAfter(given[start], given[end], given[timeConstant],
                                                               given[duration]));
            }};
}

Sum conductorTemperature() {
    return {
        .key = "conductor-temperature",
        .inputs = {current, capacity, ambient, limit},
        .results = {temperature, verdict},
        .example = "current_A=26 capacity_A=27 ambientTemperature_degC=30 limitTemperature_degC=70",
        .work = [](const Given& given, const SumContext&) -> Outcome {
            if (given[ambient] >= given[limit])
                return tl::unexpected(
                    Refusal{std::string(ambient.key),
                            {"sum.not-below", {std::string(ambient.key), std::string(limit.key)}}});
            const Temperature ends =
                physics::conductorTemperature(given[ambient], given[limit], given[current], given[capacity]);
            Answer answer;
            answer.step("θ = θ_a + (θ_max − θ_a) (I / I_z)^2", temperature, ends, {.title = "IEC 60287-1-1"});
            return answer.judge(Relation::AtMost, ends, given[limit], units::celsius);
        }};
}

} // namespace

std::vector<Sum> thermalSums() {
    return {replicaTime(),           replicaState(),     constantFromStall(),
            constantFromShortTime(), temperatureAfter(), conductorTemperature()};
}

} // namespace loopwright::sums
