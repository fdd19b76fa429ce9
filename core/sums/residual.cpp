// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/residual.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto residualCurrent = number<Current>("residualCurrent_mA", "I_Δn", units::milliampere);
constexpr auto touchLimit = number<Voltage>("touchVoltageLimit_V", "U_L", units::volt, largestTouchVoltage);
constexpr auto gradingFactor = number<Ratio>("gradingFactor", "g", units::ratio, one);
constexpr auto measured = optional<Resistance>("earthResistance_ohm", "R_A", units::ohm);
constexpr auto electrode = number<Resistance>("earthResistance_ohm", "R_A", units::ohm);

constexpr auto largestResistance = result<Resistance>("largestResistance_ohm", "R_{A,max}", units::ohm);
constexpr auto largestCurrent =
    result<Current>("largestResidualCurrent_mA", "I_{Δn,max}", units::milliampere);

Sum electrodeLimit() {
    return {.key = "electrode-limit",
            .inputs = {residualCurrent, touchLimit, gradingFactor, measured},
            .results = {largestResistance, verdict},
            .example = "residualCurrent_mA=30 earthResistance_ohm=210",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Resistance most = physics::largestElectrodeResistance(
                    given[touchLimit] * given[gradingFactor], given[residualCurrent]);
                Answer answer;
                answer.step("R_A ≤ R_{A,max} = g U_L / I_Δn", largestResistance, most,
                            ruleSource(context, "residual-touch"));
                if (const auto read = given[measured])
                    answer.judge(Relation::AtLeast, most, *read, units::ohm);
                return answer;
            }};
}

Sum largestResidual() {
    return {.key = "largest-residual-current",
            .inputs = {electrode, touchLimit},
            .results = {largestCurrent},
            .example = "earthResistance_ohm=210",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                return Answer().step("I_Δn ≤ I_{Δn,max} = U_L / R_A", largestCurrent,
                                     physics::largestResidualCurrent(given[touchLimit], given[electrode]),
                                     ruleSource(context, "residual-touch"));
            }};
}

} // namespace

std::vector<Sum> residualSums() {
    return {electrodeLimit(), largestResidual()};
}

} // namespace loopwright::sums
