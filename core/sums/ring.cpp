// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

Standard ringTolerance(const SumContext& context) {
    return {context.rules.ringProtectiveTolerance, context.rules.sourceOf("ringProtectiveTolerance")};
}

constexpr auto line = number<Resistance>("line_ohm", "r_1", units::ohm);
constexpr auto neutral = optional<Resistance>("neutral_ohm", "r_n", units::ohm);
constexpr auto protective = optional<Resistance>("protective_ohm", "r_2", units::ohm);
constexpr auto ratio = number<Ratio>("conductorRatio", "r_2/r_1", units::ratio);
constexpr auto perLength = optional<ResistancePerLength>("line_mohm_per_m", "r", units::milliohmPerMetre);
constexpr auto tolerance = number<Ratio>("tolerance", "f", units::ratio, ringTolerance);
constexpr auto lineSize = number<CrossSection>("lineSize_mm2", "S_1", units::squareMillimetre);
constexpr auto protectiveSize = number<CrossSection>("protectiveSize_mm2", "S_2", units::squareMillimetre);
constexpr auto position =
    within({.least = 1e-6, .most = 0.5, .zero = true}, number<Ratio>("position", "x", units::ratio, none));

constexpr auto atSockets = result<Resistance>("lineToNeutral_ohm", "R_L-N", units::ohm);
constexpr auto expectedProtective = result<Resistance>("expectedProtective_ohm", "r_2", units::ohm);
constexpr auto protectiveAtSockets = result<Resistance>("lineAndProtective_ohm", "R_1+R_2", units::ohm);
constexpr auto ringLength = result<Length>("length_m", "l", units::metre);
constexpr auto measuredRatio = result<Ratio>("measuredRatio", "r_2/r_1", units::ratio);
constexpr auto deviation = result<Ratio>("deviation", "d", units::ratio);
constexpr auto dip = result<Ratio>("dip_percent", "d", units::percent);

Sum ringReadings() {
    return {.key = "ring-readings",
            .inputs = {line, neutral, protective, ratio, perLength, tolerance},
            .results = {atSockets, expectedProtective, protectiveAtSockets, ringLength, measuredRatio,
                        deviation, verdict},
            .example =
                "line_ohm=0.5 neutral_ohm=0.51 protective_ohm=0.83 conductorRatio=1.63 line_mohm_per_m=7.41",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Resistance r1 = given[line], rn = given[neutral].value_or(r1);
                const Resistance expected = physics::ringProtectiveExpected(r1, given[ratio]);
                const Resistance r2 = given[protective].value_or(expected);
                Answer answer;
                answer.step("R_L-N = (r_1 + r_n) / 4 at every socket-outlet", atSockets,
                            physics::ringLineAndProtective(r1, rn), ruleSource(context, "ring-readings"));
                answer.step("r_2 = r_1 (r_2/r_1)", expectedProtective, expected);
                answer.step("R_1+R_2 = (r_1 + r_2) / 4 half way round", protectiveAtSockets,
                            physics::ringLineAndProtective(r1, r2));
                if (const auto each = given[perLength])
                    answer.step("l = r_1 / r", ringLength, physics::lengthFrom(r1, *each));
                if (!given[protective]) return answer;
                const Ratio apart = physics::difference(r2, expected);
                answer.step("measured r_2 / r_1", measuredRatio, r2 / r1);
                answer.step("d = how far measured and expected r_2 differ, of the larger", deviation, apart);
                answer.judge(Relation::AtMost, apart, given[tolerance], units::ratio);
                return answer;
            }};
}

Sum ringDip() {
    return {.key = "ring-dip",
            .inputs = {lineSize, protectiveSize, position},
            .results = {dip},
            .example = "lineSize_mm2=2.5 protectiveSize_mm2=1.5",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                // Only the ratio of both counts: each stands for its conductor's resistance.
                const Resistance r1 = ohms(1), r2 = ohms(given[lineSize] / given[protectiveSize]);
                const Resistance here = physics::ringLineAndProtectiveAt(r1, r2, given[position]);
                const Resistance halfWay = physics::ringLineAndProtective(r1, r2);
                return Answer()
                    .term(computedTerm("r_2/r_1", r2 / r1, units::ratio))
                    .step("d = 1 − 4 (r_1 x + r_2 (1−x)) (r_1 (1−x) + r_2 x) / (r_1 + r_2)^2", dip,
                          1 - here / halfWay);
            }};
}

} // namespace

std::vector<Sum> ringSums() {
    return {ringReadings(), ringDip()};
}

} // namespace loopwright::sums
