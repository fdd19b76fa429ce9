// SPDX-License-Identifier: GPL-3.0-or-later
//
// When devices operate, asked from the time, and of those that are set on site.
#include "core/physics/adjustable_breaker.h"
#include "core/physics/inverse_time.h"
#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <algorithm>

namespace loopwright::sums {
namespace {

std::vector<std::string> curveKeys(const SumContext& context) {
    std::vector<std::string> keys;
    for (const NamedCurve& curve : context.tables.inverseCurves())
        keys.push_back(curve.key);
    return keys;
}

constexpr auto current = number<Current>("current_A", "I", units::ampere);
constexpr auto overload = number<Current>("overloadSetting_A", "I_r", units::ampere);
constexpr auto overloadTime = optional<Time>("overloadTime_s", "t_r", units::second);
constexpr auto overloadMultiple =
    within({.least = 1.3, .most = 20},
           number<Ratio>("overloadTimeMultiple", "m_r", units::ratio, [](const SumContext&) {
               return Standard{6, {.title = "common practice of makers", .fromMemory = true}};
           }));
constexpr auto shortTime = optional<Current>("shortTimeSetting_A", "I_sd", units::ampere);
constexpr auto shortDelay = optional<Time>("shortTimeDelay_s", "t_sd", units::second);
constexpr auto instantaneous = optional<Current>("instantaneousSetting_A", "I_i", units::ampere);
constexpr auto curve = name("curve", curveKeys, "sum.curve.");
constexpr auto settingMultiple =
    within({.least = 0.01, .most = 1000}, number<Ratio>("settingMultiple", "I/I_s", units::ratio));
constexpr auto timeMultiplier =
    within({.least = 0.001, .most = 100}, number<Ratio>("timeMultiplier", "T", units::ratio, one));

constexpr auto holds = result<Current>("holdsCurrent_A", "I_holds", units::ampere);
constexpr auto operates = result<Current>("operatesCurrent_A", "I_a", units::ampere);
constexpr auto earliest = result<Time>("earliest_s", "t_min", units::second);
constexpr auto latest = result<Time>("latest_s", "t_max", units::second);
constexpr auto operatingTime = result<Time>("operatingTime_s", "t", units::second);
constexpr std::string_view bandWords[]{"operates", "may-never-operate"};
constexpr auto band = wordResult("operation", bandWords);
constexpr std::string_view relayWords[]{"operates", "never-operates"};
constexpr auto relay = wordResult("operation", relayWords);

template <class Edge, class Q>
void addEdge(Answer& answer, const NumberResult<Q>& declared, std::string_view at, std::string_view within_,
             const Edge& edge, Q value, const Source& source) {
    if (edge.isLimited())
        answer.step(edge.kind == physics::EdgeKind::At ? at : within_, declared, value, source);
}

Sum currentForTime() {
    return {.key = "current-for-time",
            .inputs = {deviceFamily, ratedCurrent, disconnectionTime},
            .results = {holds, operates, band},
            .example = "device=60898-C ratedCurrent_A=32 time_s=0.1",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto family = madeFamily(given, context);
                if (!family) return tl::unexpected(family.error());
                const auto times = context.tables.deviceTimes(**family, given[ratedCurrent]);
                if (!times)
                    return tl::unexpected(
                        Refusal{std::string(ratedCurrent.key),
                                {"sum.device-without-data",
                                 {(*family)->label, measure(given[ratedCurrent], units::ampere)}}});
                const physics::CurrentBand found =
                    physics::currentForTime(times->value, given[disconnectionTime]);
                Answer answer;
                addEdge(answer, holds, "I_holds, which it carries for t",
                        "I_holds, published for a longer time: it carries at least this", found.holds,
                        found.holds.current, times->source);
                addEdge(answer, operates, "I_a, which operates it within t",
                        "I_a, published for a shorter time: it operates it by then", found.operates,
                        found.operates.current, times->source);
                return answer.word(band, bandWords[found.operates.isLimited() ? 0 : 1]);
            }};
}

/// What was set, or why it makes no sense.
tl::expected<physics::BreakerSettings, Refusal> settingsOf(const Given& given) {
    const auto setting = given[shortTime];
    const auto delay = given[shortDelay];
    if (setting.has_value() != delay.has_value()) {
        const std::string_view missing = setting ? shortDelay.key : shortTime.key;
        return tl::unexpected(Refusal{std::string(missing), {"sum.missing", {std::string(missing)}}});
    }
    physics::BreakerSettings settings{given[overload], std::nullopt, std::nullopt, given[instantaneous]};
    if (const auto time = given[overloadTime])
        settings.overloadTime = {given[overload] * given[overloadMultiple], *time};
    if (setting) settings.shortTime = {*setting, *delay};
    return settings;
}

/// How far a setting may be departed from: "I_{r,min}/I_r" and "I_{r,max}/I_r" of "I_r".
void addSpread(Answer& answer, const std::string& symbol, const physics::Spread& spread,
               const Source& source) {
    const auto bar = symbol.find('_');
    const std::string whole = symbol.substr(0, bar) + "_{" + symbol.substr(bar + 1);
    answer.term(tableTerm(whole + ",min}/" + symbol, spread.low, units::ratio, source));
    answer.term(tableTerm(whole + ",max}/" + symbol, spread.high, units::ratio, source));
}

Sum adjustableBreakerTime() {
    return {
        .key = "adjustable-breaker-time",
        .inputs = {overload, overloadTime, overloadMultiple, shortTime, shortDelay, instantaneous, current},
        .results = {earliest, latest, band},
        .example = "overloadSetting_A=100 overloadTime_s=8 shortTimeSetting_A=800 shortTimeDelay_s=0.2 "
                   "instantaneousSetting_A=1500 current_A=1200",
        .work = [](const Given& given, const SumContext& context) -> Outcome {
            const auto settings = settingsOf(given);
            if (!settings) return tl::unexpected(settings.error());
            const auto spreads = context.tables.breakerSpreads(given[overload]);
            const physics::TimeBand when =
                physics::operatingTime(physics::breakerTimes(*settings, spreads.value), given[current]);
            Answer answer;
            addSpread(answer, "I_r", spreads.value.conventional, spreads.source);
            if (settings->overloadTime) addSpread(answer, "t_r", spreads.value.overloadTime, spreads.source);
            if (settings->shortTime) {
                addSpread(answer, "I_sd", spreads.value.shortTimeCurrent, spreads.source);
                addSpread(answer, "t_sd", spreads.value.shortTimeDelay, spreads.source);
            }
            if (settings->instantaneous)
                addSpread(answer, "I_i", spreads.value.instantaneous, spreads.source);
            addEdge(answer, earliest, "t_min of the release that is quickest here",
                    "t_min, promised for a larger current: it holds out at least as long", when.earliest,
                    when.earliest.time, spreads.source);
            addEdge(answer, latest, "t_max of the release that is quickest here",
                    "t_max, promised for a smaller current: it has operated by then", when.latest,
                    when.latest.time, spreads.source);
            return answer.word(band, bandWords[when.latest.isLimited() ? 0 : 1]);
        }};
}

Sum inverseRelayTime() {
    return {.key = "inverse-relay-time",
            .inputs = {curve, settingMultiple, timeMultiplier},
            .results = {operatingTime, relay},
            .example = "curve=standard-inverse settingMultiple=2",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const NamedCurve& named =
                    *std::ranges::find(context.tables.inverseCurves(), given[curve], &NamedCurve::key);
                const auto time =
                    physics::inverseTime(named.curve, given[settingMultiple], given[timeMultiplier]);
                Answer answer;
                if (!time) return answer.word(relay, relayWords[1]);
                answer.term(tableTerm("k", named.curve.k, units::second, named.source))
                    .term(tableTerm("α", named.curve.alpha, units::ratio, named.source))
                    .step("t = T k / ((I/I_s)^α − 1)", operatingTime, *time, named.source);
                return answer.word(relay, relayWords[0]);
            }};
}

} // namespace

std::vector<Sum> releaseSums() {
    return {currentForTime(), adjustableBreakerTime(), inverseRelayTime()};
}

} // namespace loopwright::sums
