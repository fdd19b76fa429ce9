// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"
#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto permitted = number<Resistance>("permittedLoop_ohm", "Z_max", units::ohm);
constexpr auto siteFactor = number<Ratio>("siteFactor", "f", units::ratio, one);
constexpr auto external = orZero(number<Resistance>("externalLoop_ohm", "Z_e", units::ohm));
constexpr auto perLength =
    number<ResistancePerLength>("lineAndProtective_mohm_per_m", "r_1+r_2", units::milliohmPerMetre);
constexpr auto operating = number<Current>("operatingCurrent_A", "I_a", units::ampere);
constexpr auto voltageShare =
    within({.least = 0.1, .most = 1}, number<Ratio>("voltageShare", "f", units::ratio));
constexpr auto lineSize = number<CrossSection>("lineSize_mm2", "S_1", units::squareMillimetre);
constexpr auto protectiveSize = number<CrossSection>("protectiveSize_mm2", "S_2", units::squareMillimetre);
constexpr auto resistivity =
    number<physics::Resistivity>("resistivity_ohm_mm2_per_m", "ρ", units::ohmSquareMillimetrePerMetre);
constexpr auto tableLength = number<Length>("tableLength_m", "l_t", units::metre);
constexpr auto lengthFactor = number<Ratio>("lengthFactor", "F", units::ratio);
constexpr auto material = choice<Material>("material", "choice.material.", "copper");
constexpr auto insulation = choice<Insulation>("insulation", "choice.insulation.", "pvc-70");

constexpr auto siteLimit = result<Resistance>("siteLimit_ohm", "Z_site", units::ohm);
constexpr auto leftForRun = result<Resistance>("lineAndProtective_ohm", "R_1+R_2", units::ohm);
constexpr auto permittedResult = result<Resistance>("permittedLoop_ohm", "Z_max", units::ohm);
constexpr auto perLengthResult =
    result<ResistancePerLength>("lineAndProtective_mohm_per_m", "r_1+r_2", units::milliohmPerMetre);
constexpr auto longest = result<Length>("longestRun_m", "l_max", units::metre);

/// What the circuit may take of a permitted loop, and how long it is then.
Outcome addLongest(Answer answer, Resistance limit, Resistance before, ResistancePerLength run) {
    if (before >= limit)
        return tl::unexpected(
            Refusal{std::string(external.key),
                    {"sum.nothing-left",
                     {Measure{before.base(), units::ohm, -1}, Measure{limit.base(), units::ohm, -1}}}});
    answer.step("R_1+R_2 = Z − Z_e", leftForRun, limit - before);
    answer.step("l_max = (R_1+R_2) / (r_1 + r_2)", longest, physics::lengthFrom(limit - before, run));
    return answer;
}

Sum runWithinLoop() {
    return {.key = "longest-run-within-loop",
            .inputs = {permitted, siteFactor, external, perLength},
            .results = {siteLimit, leftForRun, longest},
            .example = "permittedLoop_ohm=1.37 siteFactor=0.8 externalLoop_ohm=0.35 "
                       "lineAndProtective_mohm_per_m=19.51",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Resistance limit = given[permitted] * given[siteFactor];
                return addLongest(Answer().step("Z = f Z_max", siteLimit, limit, ruleSource(context, "loop")),
                                  limit, given[external], given[perLength]);
            }};
}

/// Line and protective conductor at the largest temperature that the insulation bears.
tl::expected<Sourced<ResistancePerLength>, Refusal> warmRun(const Given& given, const SumContext& context) {
    const Material metal = given[material];
    const auto line = context.tables.conductorResistance(metal, given[lineSize]);
    const auto protective = context.tables.conductorResistance(metal, given[protectiveSize]);
    const auto limit = context.tables.conductorLimit(given[insulation]);
    const std::string_view lacking = !line ? lineSize.key : !protective ? protectiveSize.key : insulation.key;
    if (!line || !protective || !limit)
        return tl::unexpected(Refusal{std::string(lacking), {"sum.not-published", {std::string(lacking)}}});
    // One metre stands for each.
    const Resistance warm =
        physics::atTemperature(physics::lineAndProtective(line->value, protective->value, metres(1)),
                               celsius(20), limit->value, context.tables.temperatureCoefficient(metal).value);
    return Sourced<ResistancePerLength>{warm / metres(1), line->source};
}

Sum runOfDevice() {
    return {.key = "longest-run-of-device",
            .inputs = {deviceFamily, ratedCurrent, disconnectionTime, lineToEarth, voltageFactor, external,
                       lineSize, protectiveSize, material, insulation},
            .results = {permittedResult, perLengthResult, leftForRun, longest},
            .example = "device=60898-B ratedCurrent_A=32 time_s=0.4 externalLoop_ohm=0.35 lineSize_mm2=4 "
                       "protectiveSize_mm2=1.5",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto limit = publishedLoop(given, context);
                if (!limit) return tl::unexpected(limit.error());
                const auto run = warmRun(given, context);
                if (!run) return tl::unexpected(run.error());
                Answer answer;
                answer.step("Z_max, of the table or c U_0 / I_a", permittedResult, limit->value,
                            limit->source);
                answer.step("r_1 + r_2 at the largest temperature of the conductor", perLengthResult,
                            run->value, run->source);
                return addLongest(std::move(answer), limit->value, given[external], run->value);
            }};
}

Sum conventionalRun() {
    return {.key = "longest-run-conventional",
            .inputs = {operating, lineToEarth, voltageShare, lineSize, protectiveSize, resistivity},
            .results = {longest},
            .example = "operatingCurrent_A=160 voltageShare=0.8 lineSize_mm2=2.5 protectiveSize_mm2=2.5 "
                       "resistivity_ohm_mm2_per_m=0.0225",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step("l_max = f U_0 S_1 / (ρ (1 + S_1/S_2) I_a)", longest,
                                     physics::conventionalLongestRun(given[lineToEarth], given[voltageShare],
                                                                     given[lineSize],
                                                                     given[lineSize] / given[protectiveSize],
                                                                     given[resistivity], given[operating]));
            }};
}

Sum runFromTable() {
    return {.key = "longest-run-from-table",
            .inputs = {tableLength, lengthFactor},
            .results = {longest},
            .example = "tableLength_m=603 lengthFactor=0.42",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step("l_max = F l_t", longest, given[tableLength] * given[lengthFactor]);
            }};
}

} // namespace

std::vector<Sum> longestRunSums() {
    return {runWithinLoop(), runOfDevice(), conventionalRun(), runFromTable()};
}

} // namespace loopwright::sums
