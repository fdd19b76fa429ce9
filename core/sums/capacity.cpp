// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/overload.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <algorithm>

namespace loopwright::sums {
namespace {

constexpr auto tabulated = number<Current>("tabulatedCapacity_A", "I_t", units::ampere);
constexpr auto ambientFactor = number<Ratio>("ambientFactor", "C_a", units::ratio, one);
constexpr auto groupingFactor = number<Ratio>("groupingFactor", "C_g", units::ratio, one);
constexpr auto insulationFactor = number<Ratio>("insulationFactor", "C_i", units::ratio, one);
constexpr auto deviceFactor = number<Ratio>("deviceFactor", "C_c", units::ratio, one);
constexpr auto parallel =
    within({.least = 1, .most = 20}, number<Ratio>("parallelConductors", "n", units::ratio, one));
constexpr auto rowSizes = optionalList<CrossSection>("tableSizes_mm2", "S", units::squareMillimetre);
constexpr auto rowCapacities = optionalList<Current>("tableCapacities_A", "I_t", units::ampere);
constexpr auto needed = optional<Current>("neededCapacity_A", "I_needed", units::ampere);
constexpr auto operating = optional<Current>("conventionalOperatingCurrent_A", "I_2", units::ampere);
constexpr auto share = number<Ratio>("conventionalFactor", "f_2", units::ratio, conventionalFactor);
constexpr auto operatingMultiple = number<Ratio>("operatingMultiple", "I_2/I_n", units::ratio);
constexpr auto limitTemperature = number<Temperature>("limitTemperature_degC", "θ_max", units::celsius);
constexpr auto referenceTemperature =
    number<Temperature>("referenceTemperature_degC", "θ_ref", units::celsius);
constexpr auto ambientTemperature = number<Temperature>("ambientTemperature_degC", "θ_a", units::celsius);

constexpr auto neededTabulated = result<Current>("neededTabulatedCapacity_A", "I_t", units::ampere);
constexpr auto chosenSize = result<CrossSection>("size_mm2", "S", units::squareMillimetre);
constexpr auto capacity = result<Current>("capacity_A", "I_z", units::ampere);
constexpr auto loadShare = result<Ratio>("loadShare", "I_b/I_n", units::ratio);
constexpr auto mostOperating = result<Current>("largestOperatingCurrent_A", "I_{2,max}", units::ampere);
constexpr auto ratedVerdict = wordResult("ratedCurrentVerdict", verdictWords);
constexpr auto operatingVerdict = wordResult("operatingCurrentVerdict", verdictWords);
constexpr auto loadVerdict = wordResult("loadVerdict", verdictWords);
constexpr auto capacityFactor = result<Ratio>("capacityFactor", "f", units::ratio);
constexpr auto ratingFactor = result<Ratio>("ratingFactor", "k", units::ratio);
constexpr auto ambientResult = result<Ratio>("ambientFactor", "C_a", units::ratio);

/// The smallest row that carries what is needed.
std::optional<CrossSection> smallestOf(const std::vector<CrossSection>& sizes,
                                       const std::vector<Current>& capacities, Current least) {
    std::optional<CrossSection> best;
    for (std::size_t i = 0; i < sizes.size(); ++i)
        if (capacities[i] >= least && (!best || sizes[i] < *best)) best = sizes[i];
    return best;
}

Sum tabulatedCapacity() {
    return {.key = "tabulated-capacity",
            .inputs = {ratedCurrent, ambientFactor, groupingFactor, insulationFactor, deviceFactor, parallel,
                       rowSizes, rowCapacities},
            .results = {neededTabulated, chosenSize},
            .example = "ratedCurrent_A=32 ambientFactor=0.94 groupingFactor=0.8 tableSizes_mm2=4,6,10 "
                       "tableCapacities_A=32,41,57",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto sizes = given[rowSizes];
                const auto capacities = given[rowCapacities];
                if (auto unlike = refuseUnlike(rowSizes, sizes.size(), rowCapacities, capacities.size()))
                    return tl::unexpected(std::move(*unlike));
                const Current least =
                    physics::tabulatedCapacityNeeded(given[ratedCurrent],
                                                     {given[ambientFactor], given[groupingFactor],
                                                      given[insulationFactor], given[deviceFactor]},
                                                     given[parallel]);
                Answer answer;
                answer.step("I_t ≥ I_n / (C_a C_g C_i C_c n)", neededTabulated, least,
                            ruleSource(context, "overload"));
                if (const auto size = smallestOf(sizes, capacities, least))
                    answer.step("S: the smallest row that carries I_t", chosenSize, *size);
                return answer;
            }};
}

Sum correctedCapacity() {
    return {
        .key = "corrected-capacity",
        .inputs = {tabulated, ambientFactor, groupingFactor, insulationFactor, deviceFactor, parallel,
                   needed},
        .results = {capacity, verdict},
        .example = "tabulatedCapacity_A=27 groupingFactor=0.8 neededCapacity_A=20",
        .work = [](const Given& given, const SumContext& context) -> Outcome {
            const Current carried = physics::correctedCapacity(
                given[tabulated],
                {given[ambientFactor], given[groupingFactor], given[insulationFactor], given[deviceFactor]},
                given[parallel]);
            Answer answer;
            answer.step("I_z = I_t C_a C_g C_i C_c n", capacity, carried, ruleSource(context, "overload"));
            if (const auto least = given[needed])
                answer.judge(Relation::AtLeast, carried, *least, units::ampere);
            return answer;
        }};
}

Sum overloadConditions() {
    return {.key = "overload-conditions",
            .inputs = {loadCurrent, ratedCurrent, tabulated, ambientFactor, groupingFactor, insulationFactor,
                       deviceFactor, parallel, operating, share},
            .results = {loadShare, loadVerdict, capacity, ratedVerdict, mostOperating, operatingVerdict},
            .example = "loadCurrent_A=26 ratedCurrent_A=32 tabulatedCapacity_A=36 groupingFactor=0.94 "
                       "conventionalOperatingCurrent_A=46.4",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Current carried =
                    physics::correctedCapacity(given[tabulated],
                                               {given[ambientFactor], given[groupingFactor],
                                                given[insulationFactor], given[deviceFactor]},
                                               given[parallel]);
                const Ratio loaded = given[loadCurrent] / given[ratedCurrent];
                Answer answer;
                answer.step("I_b ≤ I_n", loadShare, loaded, ruleSource(context, "load"));
                answer.judge(Relation::AtMost, loaded, 1.0, units::ratio, loadVerdict);
                answer.step("I_n ≤ I_z = I_t C_a C_g C_i C_c n", capacity, carried,
                            ruleSource(context, "overload"));
                answer.judge(Relation::AtLeast, carried, given[ratedCurrent], units::ampere, ratedVerdict);
                const Current most = physics::largestOperatingCurrent(carried, given[share]);
                answer.step("I_2 ≤ I_{2,max} = f_2 I_z", mostOperating, most,
                            ruleSource(context, "conventional"));
                if (const auto current = given[operating])
                    answer.judge(Relation::AtLeast, most, *current, units::ampere, operatingVerdict);
                return answer;
            }};
}

Sum conventionalFactors() {
    return {.key = "conventional-factors",
            .inputs = {operatingMultiple, share},
            .results = {capacityFactor, ratingFactor},
            .example = "operatingMultiple=2",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Ratio factor =
                    physics::conventionalCapacityFactor(given[operatingMultiple], given[share]);
                Answer answer;
                answer.step("f = f_2 / (I_2/I_n), what the wiring counts for: I_n ≤ f I_z", capacityFactor,
                            factor, ruleSource(context, "conventional"));
                answer.step("k = 1 / f, how much more the wiring must carry: I_z ≥ k I_n", ratingFactor,
                            1 / factor);
                return answer;
            }};
}

Sum ambientFactorSum() {
    return {.key = "ambient-factor",
            .inputs = {limitTemperature, referenceTemperature, ambientTemperature},
            .results = {ambientResult},
            .example = "limitTemperature_degC=70 referenceTemperature_degC=30 ambientTemperature_degC=40",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Temperature limit = given[limitTemperature];
                for (const auto& each : {ambientTemperature, referenceTemperature})
                    if (given[each] >= limit)
                        return tl::unexpected(Refusal{
                            std::string(each.key),
                            {"sum.not-below", {std::string(each.key), std::string(limitTemperature.key)}}});
                return Answer().step(
                    "C_a = √((θ_max − θ_a) / (θ_max − θ_ref))", ambientResult,
                    physics::ambientFactor(limit, given[referenceTemperature], given[ambientTemperature]),
                    {.title = "IEC 60287-1-1"});
            }};
}

} // namespace

std::vector<Sum> capacitySums() {
    return {tabulatedCapacity(), correctedCapacity(), ambientFactorSum(), overloadConditions(),
            conventionalFactors()};
}

} // namespace loopwright::sums
