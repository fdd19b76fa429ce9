// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"

#include "core/physics/impedance.h"
#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto external = orZero(number<Resistance>("externalLoop_ohm", "Z_e", units::ohm));
constexpr auto linePerLength = number<ResistancePerLength>("line_mohm_per_m", "r_1", units::milliohmPerMetre);
constexpr auto protectivePerLength =
    number<ResistancePerLength>("protective_mohm_per_m", "r_2", units::milliohmPerMetre);
constexpr auto temperatureFactor = number<Ratio>("temperatureFactor", "F", units::ratio, one);
constexpr auto permitted = optional<Resistance>("permittedLoop_ohm", "Z_max", units::ohm);
constexpr auto operatingCurrent = number<Current>("operatingCurrent_A", "I_a", units::ampere);

constexpr auto segmentResistances = orZero(list<Resistance>("segmentResistances_ohm", "R_i", units::ohm));
constexpr auto segmentReactances = orZero(list<Resistance>("segmentReactances_ohm", "X_i", units::ohm));

constexpr auto wholeResistance = result<Resistance>("resistance_ohm", "R", units::ohm);
constexpr auto wholeReactance = result<Resistance>("reactance_ohm", "X", units::ohm);
constexpr auto operatingResult = result<Current>("operatingCurrent_A", "I_a", units::ampere);
constexpr auto lineAndProtective = result<Resistance>("lineAndProtective_ohm", "R_1+R_2", units::ohm);
constexpr auto loop = result<Resistance>("loopImpedance_ohm", "Z_s", units::ohm);
constexpr auto permittedResult = result<Resistance>("permittedLoop_ohm", "Z_max", units::ohm);

Sum loopFromParts() {
    return {.key = "loop-from-parts",
            .inputs = {external, linePerLength, protectivePerLength, length, temperatureFactor, permitted},
            .results = {lineAndProtective, loop, verdict},
            .example = "externalLoop_ohm=0.35 line_mohm_per_m=7.41 protective_mohm_per_m=12.1 length_m=30",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Resistance run = given[temperatureFactor] *
                                       physics::lineAndProtective(given[linePerLength],
                                                                  given[protectivePerLength], given[length]);
                const Resistance whole = physics::loopImpedance(given[external], run);
                Answer answer;
                answer.step("R_1+R_2 = (r_1 + r_2) l F", lineAndProtective, run);
                answer.step("Z_s = Z_e + (R_1+R_2)", loop, whole);
                if (const auto limit = given[permitted])
                    answer.judge(Relation::AtMost, whole, *limit, units::ohm);
                return answer;
            }};
}

Sum permittedLoop() {
    return {.key = "permitted-loop",
            .inputs = {operatingCurrent, lineToEarth, voltageFactor},
            .results = {permittedResult},
            .example = "operatingCurrent_A=160",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                return Answer().step(
                    "Z_max = c U_0 / I_a", permittedResult,
                    physics::permittedLoop(given[lineToEarth], given[voltageFactor], given[operatingCurrent]),
                    ruleSource(context, "loop"));
            }};
}

Sum loopFromSegments() {
    return {.key = "loop-from-segments",
            .inputs = {segmentResistances, segmentReactances, permitted},
            .results = {wholeResistance, wholeReactance, loop, verdict},
            .example = "segmentResistances_ohm=0.005,0.008,0.008 segmentReactances_ohm=0.017,0.004,0.001",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto resistances = given[segmentResistances];
                const auto reactances = given[segmentReactances];
                if (auto unlike = refuseUnlike(segmentResistances, resistances.size(), segmentReactances,
                                               reactances.size()))
                    return tl::unexpected(std::move(*unlike));
                std::vector<physics::Impedance> segments;
                for (std::size_t i = 0; i < resistances.size(); ++i)
                    segments.push_back({resistances[i], reactances[i]});
                const physics::Impedance whole = physics::inSeries(segments);
                const Resistance size = physics::magnitude(whole);
                Answer answer;
                answer.step("R = Σ R_i", wholeResistance, whole.resistance);
                answer.step("X = Σ X_i", wholeReactance, whole.reactance);
                answer.step("Z_s = √(R^2 + X^2)", loop, size, ruleSource(context, "loop"));
                if (const auto limit = given[permitted])
                    answer.judge(Relation::AtMost, size, *limit, units::ohm);
                return answer;
            }};
}

Sum permittedLoopOfDevice() {
    return {.key = "permitted-loop-of-device",
            .inputs = {deviceFamily, ratedCurrent, disconnectionTime, lineToEarth, voltageFactor},
            .results = {operatingResult, permittedResult},
            .example = "device=60898-B ratedCurrent_A=32 time_s=0.4",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const auto published = publishedLoop(given, context);
                if (!published) return tl::unexpected(published.error());
                Answer answer;
                if (const auto current =
                        context.tables.operatingCurrent(*context.tables.deviceFamily(given[deviceFamily]),
                                                        given[ratedCurrent], given[disconnectionTime]))
                    answer.step("I_a, sure to operate the device within t", operatingResult, current->value,
                                current->source);
                return answer.step("Z_max, of the table or c U_0 / I_a", permittedResult, published->value,
                                   published->source);
            }};
}

} // namespace

std::vector<Sum> loopSums() {
    return {loopFromParts(), loopFromSegments(), permittedLoop(), permittedLoopOfDevice()};
}

} // namespace loopwright::sums
