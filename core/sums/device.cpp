// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/overload.h"
#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <cmath>

namespace loopwright::sums {
namespace {

constexpr auto current = optional<Current>("current_A", "I", units::ampere);
constexpr auto multiple = optional<Ratio>("multiple", "m", units::ratio);

constexpr auto nonOperating = result<Current>("nonOperatingCurrent_A", "I_1", units::ampere);
constexpr auto operating = result<Current>("conventionalOperatingCurrent_A", "I_2", units::ampere);
constexpr auto conventionalTime = result<Time>("conventionalTime_h", "t_c", units::hour);
constexpr auto band = listResult<Current>("instantaneousBand_A", "I_i", units::ampere);
constexpr auto currentResult = result<Current>("current_A", "I", units::ampere);
constexpr auto earliest = result<Time>("earliest_s", "t_min", units::second);
constexpr auto latest = result<Time>("latest_s", "t_max", units::second);
constexpr std::string_view latestWords[]{"operates", "may-never-operate"};
constexpr auto operation = wordResult("operation", latestWords);

constexpr auto calibration = number<Temperature>("calibrationTemperature_degC", "θ_cal", units::celsius);
constexpr auto ambient = number<Temperature>("ambientTemperature_degC", "θ_a", units::celsius);
constexpr auto adjacent =
    within({.least = 1, .most = 100}, number<Ratio>("adjacentBreakers", "n", units::ratio, one));
constexpr auto ambientShare = result<Ratio>("breakerAmbientFactor", "C_a", units::ratio);
constexpr auto groupingShare = result<Ratio>("breakerGroupingFactor", "C_g", units::ratio);
constexpr auto derated = result<Current>("deratedCurrent_A", "I_d", units::ampere);

Refusal notPublished(const DeviceFamily& family, Current rated) {
    return {std::string(ratedCurrent.key),
            {"sum.device-without-data", {family.label, measure(rated, units::ampere)}}};
}

Sum conventionalCurrents() {
    return {.key = "conventional-currents",
            .inputs = {deviceFamily, ratedCurrent},
            .results = {nonOperating, operating, conventionalTime},
            .example = "device=60898-B ratedCurrent_A=16",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto family = madeFamily(given, context);
                if (!family) return tl::unexpected(family.error());
                const Current rated = given[ratedCurrent];
                const auto published = context.tables.conventionalCurrents(**family, rated);
                if (!published) return tl::unexpected(notPublished(**family, rated));
                Answer answer;
                if (const auto holds = published->nonOperatingMultiple)
                    answer.term(tableTerm("m_1", *holds, units::ratio, published->source))
                        .step("I_1 = m_1 I_n, which it must carry for t_c", nonOperating, *holds * rated,
                              published->source);
                answer.term(tableTerm("m_2", published->operatingMultiple, units::ratio, published->source))
                    .step("I_2 = m_2 I_n, which operates it within t_c", operating,
                          physics::conventionalOperatingCurrent(rated, published->operatingMultiple),
                          published->source);
                if (const auto time = published->conventionalTime)
                    answer.step("t_c", conventionalTime, *time, published->source);
                return answer;
            }};
}

Sum instantaneousBand() {
    return {.key = "instantaneous-band",
            .inputs = {deviceFamily, ratedCurrent},
            .results = {band},
            .example = "device=60898-B ratedCurrent_A=10",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto family = madeFamily(given, context);
                if (!family) return tl::unexpected(family.error());
                const Current rated = given[ratedCurrent];
                const auto published = context.tables.instantaneousBand(**family, rated);
                if (!published) return tl::unexpected(notPublished(**family, rated));
                return Answer().step("need not operate at once up to the first, must from the second on",
                                     band, {published->above * rated, published->upTo * rated},
                                     published->source);
            }};
}

/// What was given of the two ways to say a current.
tl::expected<Current, Refusal> askedCurrent(const Given& given) {
    const auto direct = given[current];
    const auto times = given[multiple];
    if (direct.has_value() == times.has_value())
        return tl::unexpected(Refusal{std::string(current.key),
                                      {"sum.one-of", {std::string(current.key), std::string(multiple.key)}}});
    return direct ? *direct : *times * given[ratedCurrent];
}

void addEdge(Answer& answer, const NumberResult<Time>& declared, std::string_view at, std::string_view within,
             const physics::TimeEdge& edge, const Source& source) {
    if (edge.isLimited())
        answer.step(edge.kind == physics::EdgeKind::At ? at : within, declared, edge.time, source);
}

Sum operatingTime() {
    return {.key = "operating-time",
            .inputs = {deviceFamily, ratedCurrent, current, multiple},
            .results = {currentResult, earliest, latest, operation},
            .example = "device=60898-C ratedCurrent_A=32 multiple=5",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto family = madeFamily(given, context);
                if (!family) return tl::unexpected(family.error());
                const auto asked = askedCurrent(given);
                if (!asked) return tl::unexpected(asked.error());
                const auto times = context.tables.deviceTimes(**family, given[ratedCurrent]);
                if (!times) return tl::unexpected(notPublished(**family, given[ratedCurrent]));
                const physics::TimeBand when = physics::operatingTime(times->value, *asked);
                Answer answer;
                answer.step(given[multiple] ? "I = m I_n" : "I", currentResult, *asked);
                addEdge(answer, earliest, "t_min, published for this current",
                        "t_min, published for a larger current: it holds out at least as long", when.earliest,
                        times->source);
                addEdge(answer, latest, "t_max, published for this current or between two that are",
                        "t_max, published for a smaller current: it has operated by then", when.latest,
                        times->source);
                return answer.word(operation, latestWords[when.latest.isLimited() ? 0 : 1]);
            }};
}

/// What a thermal-magnetic breaker carries in a warm place and between others that are loaded.
Sum breakerDerating() {
    return {
        .key = "breaker-derating",
        .inputs = {ratedCurrent, calibration, ambient, adjacent},
        .results = {ambientShare, groupingShare, derated},
        .example = "ratedCurrent_A=16 calibrationTemperature_degC=30 ambientTemperature_degC=40 "
                   "adjacentBreakers=3",
        .work = [](const Given& given, const SumContext& context) -> Outcome {
            const auto byAmbient =
                context.tables.breakerAmbientFactor(given[ratedCurrent], given[calibration], given[ambient]);
            if (!byAmbient)
                return tl::unexpected(
                    Refusal{std::string(ambient.key), {"sum.not-published", {std::string(ambient.key)}}});
            const auto byGrouping =
                context.tables.breakerGroupingFactor(static_cast<int>(std::ceil(given[adjacent])));
            if (!byGrouping)
                return tl::unexpected(
                    Refusal{std::string(adjacent.key), {"sum.not-published", {std::string(adjacent.key)}}});
            return Answer()
                .step("C_a, of the makers' tables the stricter, for the next warmer place", ambientShare,
                      byAmbient->value, byAmbient->source)
                .step("C_g, of n breakers side by side", groupingShare, byGrouping->value, byGrouping->source)
                .step("I_d = I_n C_a C_g", derated,
                      physics::deratedCurrent(given[ratedCurrent], byAmbient->value, byGrouping->value));
        }};
}

} // namespace

std::vector<Sum> deviceSums() {
    return {conventionalCurrents(), instantaneousBand(), operatingTime(), breakerDerating()};
}

} // namespace loopwright::sums
