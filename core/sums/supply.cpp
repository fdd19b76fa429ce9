// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"
#include "core/sums/registry.h"
#include "core/sums/supply_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto largestFactor =
    number<Ratio>("largestVoltageFactor", "c_max", units::ratio, largestVoltageFactor);
constexpr auto networkCurrent = number<Current>("networkFaultCurrent_kA", "I_k", units::kiloampere);
constexpr auto networkVoltage = number<Voltage>("networkVoltage_V", "U_n", units::volt);
constexpr auto ratedHigh = number<Voltage>("transformerHighVoltage_V", "U_rH", units::volt);
constexpr auto ratedLow = number<Voltage>("transformerLowVoltage_V", "U_rL", units::volt);
constexpr auto resistanceToReactance = orZero(number<Ratio>("resistanceToReactance", "R/X", units::ratio));
constexpr auto upstreamRatio = orZero(optional<Ratio>("upstreamResistanceToReactance", "R/X", units::ratio));
constexpr auto upstream = number<Current>("upstreamCurrent_kA", "I_1", units::kiloampere);
constexpr auto runResistance = number<Resistance>("runResistance_ohm", "R", units::ohm);
constexpr auto runReactance = orZero(number<Resistance>("runReactance_ohm", "X", units::ohm, none));
constexpr auto resistivity =
    number<physics::Resistivity>("resistivity_ohm_mm2_per_m", "ρ", units::ohmSquareMillimetrePerMetre);

constexpr auto impedance = result<Resistance>("impedance_mohm", "Z", units::milliohm);
constexpr auto resistance = result<Resistance>("resistance_mohm", "R", units::milliohm);
constexpr auto reactance = result<Resistance>("reactance_mohm", "X", units::milliohm);
constexpr auto correction = result<Ratio>("impedanceCorrection", "K_T", units::ratio);
constexpr auto correctedR = result<Resistance>("correctedResistance_mohm", "R_K", units::milliohm);
constexpr auto correctedX = result<Resistance>("correctedReactance_mohm", "X_K", units::milliohm);
constexpr auto networkResult = result<Resistance>("networkImpedance_mohm", "Z_Q", units::milliohm);
constexpr auto faultLevel = result<Current>("faultCurrent_kA", "I_k", units::kiloampere);
constexpr auto runResult = result<Resistance>("runResistance_ohm", "R", units::ohm);

Sum transformerImpedance() {
    return {.key = "transformer-impedance",
            .inputs = {ratedPower, voltage, impedanceVoltage, loadLoss, largestFactor},
            .results = {impedance, resistance, reactance, correction, correctedR, correctedX},
            .example =
                "ratedPower_kVA=630 lineToLineVoltage_V=410 impedanceVoltage_percent=4 loadLoss_W=6500",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const physics::TransformerPlate plate = plateOf(given);
                const physics::Impedance own = physics::transformerImpedance(plate);
                const Ratio k = physics::transformerCorrection(plate, given[largestFactor]);
                Answer answer;
                answer.step("Z = u_k U^2 / S_r", impedance, physics::magnitude(own), impedances);
                answer.step("R = P_kr U^2 / S_r^2", resistance, own.resistance, impedances);
                answer.step("X = √(Z^2 − R^2)", reactance, own.reactance, impedances);
                answer.step("K_T = 0.95 c_max / (1 + 0.6 X S_r / U^2)", correction, k, impedances);
                answer.step("R_K = K_T R", correctedR, k * own.resistance, impedances);
                return answer.step("X_K = K_T X", correctedX, k * own.reactance, impedances);
            }};
}

Sum transformerFault() {
    return {.key = "transformer-fault",
            .inputs = {ratedPower, voltage, impedanceVoltage, loadLoss, networkLevel, prospectiveFactor},
            .results = {impedance, networkResult, faultLevel},
            .example = "ratedPower_kVA=630 lineToLineVoltage_V=420 impedanceVoltage_percent=4 "
                       "networkFaultLevel_MVA=250",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                Resistance whole = physics::magnitude(physics::transformerImpedance(plateOf(given)));
                Answer answer;
                answer.step("Z = u_k U^2 / S_r", impedance, whole, impedances);
                if (const auto level = given[networkLevel]) {
                    const Resistance network = physics::networkImpedance(*level, given[voltage]);
                    answer.step("Z_Q = U^2 / S_k", networkResult, network, impedances);
                    whole = whole + network;
                }
                return answer.step("I_k = c U / (√3 (Z + Z_Q)), magnitudes added", faultLevel,
                                   physics::prospectiveCurrent(given[voltage] / std::numbers::sqrt3,
                                                               given[prospectiveFactor], whole),
                                   impedances);
            }};
}

Sum networkImpedance() {
    return {.key = "network-impedance",
            .inputs = {networkCurrent, networkVoltage, prospectiveFactor, ratedHigh, ratedLow,
                       resistanceToReactance},
            .results = {impedance, resistance, reactance},
            .example = "networkFaultCurrent_kA=10 networkVoltage_V=20000 prospectiveFactor=1.1 "
                       "transformerHighVoltage_V=20000 transformerLowVoltage_V=410 resistanceToReactance=0.1",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Resistance size =
                    physics::networkImpedance(given[networkCurrent], given[networkVoltage],
                                              given[prospectiveFactor], given[ratedHigh] / given[ratedLow]);
                const physics::Impedance seen = physics::impedanceOf(size, given[resistanceToReactance]);
                Answer answer;
                answer.step("Z = c U_n / (√3 I_k) (U_rL / U_rH)^2", impedance, size, impedances);
                answer.step("X = Z / √(1 + (R/X)^2)", reactance, seen.reactance, impedances);
                return answer.step("R = (R/X) X", resistance, seen.resistance, impedances);
            }};
}

Sum runResistanceSum() {
    return {.key = "run-resistance",
            .inputs = {resistivity, length, conductorSize},
            .results = {runResult},
            .example = "resistivity_ohm_mm2_per_m=0.0225 length_m=6.5 size_mm2=10",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step(
                    "R = ρ l / S", runResult,
                    physics::conductorResistance(given[resistivity], given[length], given[conductorSize]));
            }};
}

Sum faultDownstream() {
    return {.key = "fault-current-downstream",
            .inputs = {upstream, nominal, isThreePhase, prospectiveFactor, runResistance, runReactance,
                       upstreamRatio},
            .results = {faultLevel},
            .example = "upstreamCurrent_kA=35 voltage_V=400 threePhase=yes runResistance_ohm=0.0146",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const Voltage phase = lineToEarthOf(given);
                const physics::Impedance run{given[runResistance], given[runReactance]};
                if (const auto ratio = given[upstreamRatio])
                    return Answer().step("I = c U_0 / |c U_0 / I_1 + R + jX|, added as vectors", faultLevel,
                                         physics::faultCurrentDownstream(
                                             given[upstream], phase, given[prospectiveFactor], *ratio, run),
                                         impedances);
                return Answer().step("I = c U_0 / (c U_0 / I_1 + √(R^2 + X^2)), magnitudes added", faultLevel,
                                     physics::faultCurrentDownstream(given[upstream], phase,
                                                                     given[prospectiveFactor],
                                                                     physics::magnitude(run)),
                                     impedances);
            }};
}

} // namespace

std::vector<Sum> supplySums() {
    return {transformerImpedance(), transformerFault(), networkImpedance(), runResistanceSum(),
            faultDownstream()};
}

} // namespace loopwright::sums
