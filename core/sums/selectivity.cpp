// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/selectivity.h"

#include "core/physics/residual.h"
#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <algorithm>

namespace loopwright::sums {
namespace {

constexpr auto upstreamDevice = name("upstreamDevice", deviceFamilyKeys);
constexpr auto upstreamRating = number<Current>("upstreamRating_A", "I_{n1}", units::ampere);
constexpr auto downstreamDevice = name("downstreamDevice", deviceFamilyKeys);
constexpr auto downstreamRating = number<Current>("downstreamRating_A", "I_{n2}", units::ampere);
constexpr auto upstreamResidual = number<Current>("upstreamResidual_mA", "I_{Δn1}", units::milliampere);
constexpr auto downstreamResidual = number<Current>("downstreamResidual_mA", "I_{Δn2}", units::milliampere);
constexpr auto isDelayed = flag("upstreamDelayed");

constexpr auto ratio = result<Ratio>("ratioOfRatings", "I_{n1}/I_{n2}", units::ratio);
constexpr auto ratioVerdict = wordResult("ratioVerdict", verdictWords);
constexpr auto leastToMelt = result<JouleIntegral>("leastToMelt_A2s", "I^2t_1", units::ampereSquaredSecond);
constexpr auto mostLetThrough =
    result<JouleIntegral>("mostLetThrough_A2s", "I^2t_2", units::ampereSquaredSecond);
constexpr auto energyVerdict = wordResult("energyVerdict", verdictWords);
constexpr auto provenAbove = listResult<Current>("provenAbove_A", "I_above", units::ampere);
constexpr auto provenUpTo = listResult<Current>("provenUpTo_A", "I_upTo", units::ampere);
constexpr std::string_view provenWords[]{"proven", "not-proven"};
constexpr auto proven = wordResult("selectivity", provenWords);
constexpr auto residualRatio = result<Ratio>("residualRatio", "I_{Δn1}/I_{Δn2}", units::ratio);

/// Refused where the family does not make that rating.
std::optional<Refusal> refuseUnmade(const DeviceFamily& family, const Input& asked, Current rated,
                                    const SumContext& context) {
    const auto ratings = context.tables.ratings(family);
    if (std::ranges::find(ratings, rated) != ratings.end()) return std::nullopt;
    return Refusal{std::string(asked.key),
                   {"sum.device-not-made", {family.label, measure(rated, units::ampere)}}};
}

Sum fuseSelectivity() {
    return {.key = "fuse-selectivity",
            .inputs = {upstreamRating, downstreamRating},
            .results = {ratio, ratioVerdict, leastToMelt, mostLetThrough, energyVerdict},
            .example = "upstreamRating_A=100 downstreamRating_A=63",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const DeviceFamily& fuses = *context.tables.deviceFamily("60269-gG");
                for (const auto& rating : {upstreamRating, downstreamRating})
                    if (auto unmade = refuseUnmade(fuses, rating, given[rating], context))
                        return tl::unexpected(std::move(*unmade));
                const auto& least = context.tables.selectiveFuseRatio();
                const Ratio own = physics::ratioOfRatings(given[upstreamRating], given[downstreamRating]);
                Answer answer;
                answer.step("I_{n1}/I_{n2}, to one decimal", ratio, own, least.source)
                    .judge(Relation::AtLeast, own, least.value, units::ratio, ratioVerdict);
                const auto above = context.tables.fuseEnergy(fuses, given[upstreamRating]),
                           below = context.tables.fuseEnergy(fuses, given[downstreamRating]);
                if (!above || !below) return answer;
                answer.step("I^2t_1, least to melt the upper fuse", leastToMelt, above->value.leastToMelt,
                            above->source);
                answer.step("I^2t_2, most that the lower fuse lets through", mostLetThrough,
                            below->value.mostLetThrough, below->source);
                return answer.judge(Relation::AtMost, below->value.mostLetThrough, above->value.leastToMelt,
                                    units::ampereSquaredSecond, energyVerdict);
            }};
}

Sum deviceSelectivity() {
    return {.key = "device-selectivity",
            .inputs = {upstreamDevice, upstreamRating, downstreamDevice, downstreamRating},
            .results = {provenAbove, provenUpTo, proven},
            .example = "upstreamDevice=60269-gG upstreamRating_A=100 downstreamDevice=60898-B "
                       "downstreamRating_A=16",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const DeviceFamily& above = *context.tables.deviceFamily(given[upstreamDevice]);
                const DeviceFamily& below = *context.tables.deviceFamily(given[downstreamDevice]);
                if (auto unmade = refuseUnmade(above, upstreamRating, given[upstreamRating], context))
                    return tl::unexpected(std::move(*unmade));
                if (auto unmade = refuseUnmade(below, downstreamRating, given[downstreamRating], context))
                    return tl::unexpected(std::move(*unmade));
                const auto timesAbove = context.tables.deviceTimes(above, given[upstreamRating]),
                           timesBelow = context.tables.deviceTimes(below, given[downstreamRating]);
                Answer answer;
                if (!timesAbove || !timesBelow) return answer.word(proven, provenWords[1]);
                std::vector<Current> from, to;
                for (const auto& range : physics::provenSelectivity(timesAbove->value, timesBelow->value)) {
                    from.push_back(range.above);
                    to.push_back(range.upTo);
                }
                answer.step("I_above: from here the lower device has operated before the upper one may",
                            provenAbove, from, timesBelow->source);
                answer.step("I_upTo: up to here", provenUpTo, to, timesAbove->source);
                return answer.word(proven, provenWords[from.empty() ? 1 : 0]);
            }};
}

Sum residualSelectivity() {
    return {.key = "residual-selectivity",
            .inputs = {upstreamResidual, downstreamResidual, isDelayed},
            .results = {residualRatio, verdict},
            .example = "upstreamResidual_mA=100 downstreamResidual_mA=30 upstreamDelayed=yes",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto& least = context.tables.selectiveResidualRatio();
                const Ratio own = given[upstreamResidual] / given[downstreamResidual];
                const bool holds = physics::residualDevicesSelective(
                    given[upstreamResidual], given[isDelayed], given[downstreamResidual], least.value);
                Answer answer;
                answer.term(tableTerm("least", least.value, units::ratio, least.source))
                    .step("I_{Δn1}/I_{Δn2} ≥ least, the upper device delayed", residualRatio, own,
                          least.source);
                return answer.word(verdict, verdictWords[holds ? 0 : 1]);
            }};
}

} // namespace

std::vector<Sum> selectivitySums() {
    return {fuseSelectivity(), deviceSelectivity(), residualSelectivity()};
}

} // namespace loopwright::sums
