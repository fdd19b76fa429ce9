// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/fault.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

#include <numeric>

namespace loopwright::sums {
namespace {

constexpr std::string_view deviceWords[]{"may-operate", "stays-closed"};

constexpr auto parts = list<Resistance>("loopParts_ohm", "Z_i", units::ohm);
constexpr auto factor = number<Ratio>("prospectiveFactor", "c", units::ratio, one);
constexpr auto threePhaseFactor = within(
    {.least = 1, .most = 3}, number<Ratio>("threePhaseFactor", "f", units::ratio, [](const SumContext&) {
        return Standard{2, {}};
    }));
constexpr auto rated = optional<Current>("ratedCurrent_A", "I_n", units::ampere);
constexpr auto protectivePart = number<Resistance>("protectivePart_ohm", "Z_2", units::ohm);
constexpr auto touchLimit = number<Voltage>("touchVoltageLimit_V", "U_L", units::volt, largestTouchVoltage);

constexpr auto loop = result<Resistance>("loopImpedance_ohm", "Z", units::ohm);
constexpr auto fault = result<Current>("faultCurrent_A", "I", units::ampere);
constexpr auto threePhase = result<Current>("threePhaseCurrent_A", "I_3", units::ampere);
constexpr auto device = wordResult("device", deviceWords);
constexpr auto touch = result<Voltage>("touchVoltage_V", "U_t", units::volt);

Resistance wholeOf(const std::vector<Resistance>& several) {
    return std::accumulate(several.begin(), several.end(), Resistance());
}

Sum faultCurrent() {
    return {.key = "fault-current",
            .inputs = {parts, lineToEarth, factor, threePhaseFactor, rated},
            .results = {loop, fault, threePhase, device},
            .example = "loopParts_ohm=0.35,0.6 ratedCurrent_A=32",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Resistance whole = wholeOf(given[parts]);
                const Current current = physics::prospectiveCurrent(given[lineToEarth], given[factor], whole);
                Answer answer;
                answer.step("Z = Σ Z_i", loop, whole);
                answer.step("I = c U_0 / Z", fault, current, {.title = "IEC 60909-0"});
                answer.step("I_3 = f I, where the loop is line to neutral", threePhase,
                            physics::threePhaseFromLineToNeutral(current, given[threePhaseFactor]),
                            {.title = "common practice"});
                if (const auto device_ = given[rated])
                    answer.word(device, deviceWords[current > *device_ ? 0 : 1]);
                return answer;
            }};
}

Sum touchVoltage() {
    return {.key = "touch-voltage",
            .inputs = {parts, protectivePart, lineToEarth, factor, touchLimit},
            .results = {touch, verdict},
            .example = "loopParts_ohm=10,20 protectivePart_ohm=20",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                const Voltage voltage = physics::touchVoltageInLoop(
                    given[lineToEarth], given[factor], wholeOf(given[parts]), given[protectivePart]);
                Answer answer;
                answer.step("U_t = c U_0 Z_2 / Σ Z_i", touch, voltage, ruleSource(context, "disconnection"));
                return answer.judge(Relation::AtMost, voltage, given[touchLimit], units::volt);
            }};
}

} // namespace

std::vector<Sum> faultSums() {
    return {faultCurrent(), touchVoltage()};
}

} // namespace loopwright::sums
