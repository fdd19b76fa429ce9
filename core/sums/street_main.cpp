// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/registry.h"
#include "core/sums/supply_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto lengths = list<Length>("segmentLengths_m", "l_i", units::metre);
constexpr auto resistances =
    list<ResistancePerLength>("segmentResistances_mohm_per_m", "r_i", units::milliohmPerMetre);
constexpr auto reactances =
    orZero(optionalList<ResistancePerLength>("segmentReactances_mohm_per_m", "x_i", units::milliohmPerMetre));

constexpr auto sourceImpedance = result<Resistance>("sourceImpedance_mohm", "Z_0", units::milliohm);
constexpr auto mainImpedance = result<Resistance>("mainImpedance_mohm", "Z_m", units::milliohm);
constexpr auto threePhaseLevel = result<Current>("faultCurrent_kA", "I_k", units::kiloampere);
constexpr auto lineToNeutral = result<Current>("lineToNeutralFault_kA", "I_{k1}", units::kiloampere);

/// Network and transformer; the network counts as a reactance, as fault levels say nothing of its resistance.
physics::Impedance sourceOf(const Given& given) {
    const physics::Impedance transformer = physics::transformerImpedance(plateOf(given));
    const auto level = given[networkLevel];
    return level ? transformer +
                       physics::Impedance{Resistance(), physics::networkImpedance(*level, given[voltage])}
                 : transformer;
}

Sum streetMainFault() {
    return {.key = "street-main-fault",
            .inputs = {ratedPower, voltage, impedanceVoltage, loadLoss, networkLevel, prospectiveFactor,
                       lengths, resistances, reactances},
            .results = {sourceImpedance, mainImpedance, threePhaseLevel, lineToNeutral},
            .example =
                "ratedPower_kVA=500 lineToLineVoltage_V=400 impedanceVoltage_percent=4 loadLoss_W=5100 "
                "segmentLengths_m=150,20 segmentResistances_mohm_per_m=0.164,0.868 "
                "segmentReactances_mohm_per_m=0.074,0.078",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const auto length = given[lengths];
                const auto resistance = given[resistances];
                auto reactance = given[reactances];
                if (reactance.empty()) reactance.resize(length.size());
                if (auto unlike = refuseUnlike(lengths, length.size(), resistances, resistance.size()))
                    return tl::unexpected(std::move(*unlike));
                if (auto unlike = refuseUnlike(lengths, length.size(), reactances, reactance.size()))
                    return tl::unexpected(std::move(*unlike));
                physics::Impedance run;
                for (std::size_t i = 0; i < length.size(); ++i)
                    run = run + physics::ImpedancePerLength{resistance[i], reactance[i]} * length[i];
                const physics::Impedance source = sourceOf(given);
                const Voltage phase = given[voltage] / std::numbers::sqrt3;
                const auto through = [&](const physics::Impedance& whole) {
                    return physics::prospectiveCurrent(phase, given[prospectiveFactor],
                                                       physics::magnitude(whole));
                };
                Answer answer;
                answer.step("Z_0 = |transformer + network|", sourceImpedance, physics::magnitude(source),
                            impedances);
                answer.step("Z_m = |Σ l_i (r_i + j x_i)|", mainImpedance, physics::magnitude(run));
                answer.step("I_k = c U / (√3 |Z_0 + Z_m|), added as vectors", threePhaseLevel,
                            through(source + run), impedances);
                return answer.step("I_{k1} = c U / (√3 |Z_0 + 2 Z_m|), neutral like the lines", lineToNeutral,
                                   through(source + 2 * run), impedances);
            }};
}

} // namespace

std::vector<Sum> streetMainSums() {
    return {streetMainFault()};
}

} // namespace loopwright::sums
