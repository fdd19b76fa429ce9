// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/heat.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto faultCurrent = number<Current>("faultCurrent_A", "I", units::ampere);
constexpr auto duration = number<Time>("time_s", "t", units::second);
constexpr auto factor = number<AdiabaticFactor>("k_A_s05_per_mm2", "k", units::adiabaticFactor);
constexpr auto fitted = optional<CrossSection>("fittedSize_mm2", "S", units::squareMillimetre);

constexpr auto deviceTime = optional<Time>("deviceTime_s", "t_d", units::second);
constexpr auto energy = optional<JouleIntegral>("letThrough_A2s", "I^2t", units::ampereSquaredSecond);
constexpr auto material = choice<Material>("material", "choice.material.", "copper");
constexpr auto initial = number<Temperature>("initialTemperature_degC", "θ_i", units::celsius);
constexpr auto final = number<Temperature>("finalTemperature_degC", "θ_f", units::celsius);
constexpr auto materialConstant =
    optional<AdiabaticFactor>("materialConstant_A_s05_per_mm2", "K", units::adiabaticFactor);
constexpr auto zeroPoint = optional<TemperatureDifference>("zeroPoint_K", "β", units::kelvin);

constexpr auto loopVoltage = number<Voltage>("loopVoltage_V", "U", units::volt);
constexpr auto part = number<Resistance>("part_ohm", "R", units::ohm);

constexpr auto jouleIntegral = result<JouleIntegral>("jouleIntegral_A2s", "I^2t", units::ampereSquaredSecond);
constexpr auto totalEnergy = result<physics::Energy>("totalEnergy_J", "W", units::joule);
constexpr auto partEnergy = result<physics::Energy>("partEnergy_J", "W_R", units::joule);
constexpr auto longest = result<Time>("longestTime_s", "t_max", units::second);
constexpr auto largest = result<Current>("largestCurrent_A", "I_max", units::ampere);
constexpr auto withstand = result<JouleIntegral>("withstand_A2s", "k^2S^2", units::ampereSquaredSecond);
constexpr auto constantResult =
    result<AdiabaticFactor>("materialConstant_A_s05_per_mm2", "K", units::adiabaticFactor);
constexpr auto factorResult = result<AdiabaticFactor>("k_A_s05_per_mm2", "k", units::adiabaticFactor);
constexpr auto leastSize = result<CrossSection>("leastSize_mm2", "S_min", units::squareMillimetre);

Sum adiabaticSize() {
    return {.key = "adiabatic-size",
            .inputs = {faultCurrent, duration, factor, fitted},
            .results = {leastSize, verdict},
            .example = "faultCurrent_A=600 time_s=0.4 k_A_s05_per_mm2=115 fittedSize_mm2=1.5",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const CrossSection least = physics::adiabaticSize(
                    physics::jouleIntegral(given[faultCurrent], given[duration]), given[factor]);
                Answer answer;
                answer.step("S_min = √(I^2 t) / k", leastSize, least,
                            ruleSource(context, "adiabatic-protective"));
                if (const auto size = given[fitted])
                    answer.judge(Relation::AtMost, least, *size, units::squareMillimetre);
                return answer;
            }};
}

Sum adiabaticTime() {
    return {.key = "adiabatic-time",
            .inputs = {factor, conductorSize, faultCurrent, deviceTime},
            .results = {longest, verdict},
            .example = "k_A_s05_per_mm2=115 size_mm2=10 faultCurrent_A=4000 deviceTime_s=0.02",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Time time =
                    physics::permissibleTime(given[factor], given[conductorSize], given[faultCurrent]);
                Answer answer;
                answer.step("t_max = (k S / I)^2, up to 5 s", longest, time,
                            ruleSource(context, "adiabatic-line"));
                if (const auto device = given[deviceTime])
                    answer.judge(Relation::AtLeast, time, *device, units::second);
                return answer;
            }};
}

Sum adiabaticCurrent() {
    return {.key = "adiabatic-current",
            .inputs = {factor, conductorSize, duration},
            .results = {largest},
            .example = "k_A_s05_per_mm2=115 size_mm2=2.5 time_s=0.4",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                return Answer().step(
                    "I_max = k S / √t, up to 5 s", largest,
                    physics::permissibleCurrent(given[factor], given[conductorSize], given[duration]),
                    ruleSource(context, "adiabatic-line"));
            }};
}

Sum withstandSum() {
    return {.key = "withstand",
            .inputs = {factor, conductorSize, energy},
            .results = {withstand, verdict},
            .example = "k_A_s05_per_mm2=115 size_mm2=2.5 letThrough_A2s=35000",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const JouleIntegral most = physics::withstand(given[factor], given[conductorSize]);
                Answer answer;
                answer.step("k^2 S^2", withstand, most, ruleSource(context, "adiabatic-line"));
                if (const auto let = given[energy])
                    answer.judge(Relation::AtLeast, most, *let, units::ampereSquaredSecond);
                return answer;
            }};
}

Sum adiabaticFactorSum() {
    return {
        .key = "adiabatic-factor",
        .inputs = {material, initial, final, materialConstant, zeroPoint},
        .results = {constantResult, factorResult},
        .example = "material=copper initialTemperature_degC=70 finalTemperature_degC=160",
        .work = [](const Given& given, const SumContext& context) -> Outcome {
            const auto published = context.tables.conductorConstants(given[material]);
            if (!published)
                return tl::unexpected(Refusal{"material", {"sum.not-published", {std::string("material")}}});
            if (given[initial] >= given[final])
                return tl::unexpected(
                    Refusal{"initialTemperature_degC",
                            {"sum.not-below", {std::string(initial.key), std::string(final.key)}}});
            const AdiabaticFactor constant =
                given[materialConstant].value_or(physics::materialConstant(published->value));
            const TemperatureDifference beta = given[zeroPoint].value_or(published->value.zeroPoint);
            Answer answer;
            answer.step("K = √(Q_c (β + 20) / ρ_20)", constantResult, constant, published->source);
            if (!given[zeroPoint]) answer.term(tableTerm("β", beta, units::kelvin, published->source));
            answer.step("k = K √(ln((β + θ_f) / (β + θ_i)))", factorResult,
                        physics::adiabaticFactor(constant, beta, given[initial], given[final]),
                        {.title = "IEC 60364-5-54, annex A"});
            return answer;
        }};
}

Sum faultEnergy() {
    return {.key = "fault-energy",
            .inputs = {faultCurrent, duration, loopVoltage, part},
            .results = {jouleIntegral, totalEnergy, partEnergy},
            .example = "faultCurrent_A=4800 time_s=0.02 loopVoltage_V=240 part_ohm=0.01",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const JouleIntegral joules = physics::jouleIntegral(given[faultCurrent], given[duration]);
                Answer answer;
                answer.step("I^2 t", jouleIntegral, joules);
                answer.step("W = U I t", totalEnergy,
                            physics::sourceEnergy(given[loopVoltage], given[faultCurrent], given[duration]));
                return answer.step("W_R = I^2 t R", partEnergy, physics::heatIn(given[part], joules));
            }};
}

} // namespace

std::vector<Sum> adiabaticSums() {
    return {adiabaticSize(), adiabaticTime(),      adiabaticCurrent(),
            withstandSum(),  adiabaticFactorSum(), faultEnergy()};
}

} // namespace loopwright::sums
