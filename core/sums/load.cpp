// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/load.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

constexpr auto power = number<Power>("power_W", "P", units::watt);
constexpr auto current = number<Current>("current_A", "I", units::ampere);
constexpr auto ratedPower = number<Power>("ratedPower_W", "P_r", units::watt);
constexpr auto ratedVoltage = number<Voltage>("ratedVoltage_V", "U_r", units::volt);

constexpr auto loadResult = result<Current>("current_A", "I", units::ampere);
constexpr auto powerResult = result<Power>("power_W", "P", units::watt);

Sum currentFromPower() {
    return {.key = "current-from-power",
            .inputs = {power, nominal, isThreePhase, powerFactor, efficiency},
            .results = {loadResult},
            .example = "power_W=9600 voltage_V=230",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                const Current drawn = physics::loadCurrent(given[power], lineToEarthOf(given), three,
                                                           given[powerFactor], given[efficiency]);
                return Answer().step(three ? "I = P / (√3 U cos φ η)" : "I = P / (U cos φ η)", loadResult,
                                     drawn, {.title = "IEC 60050-141"});
            }};
}

Sum powerFromCurrent() {
    return {.key = "power-from-current",
            .inputs = {current, nominal, isThreePhase, powerFactor, efficiency},
            .results = {powerResult},
            .example = "current_A=5 voltage_V=230",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                const Power taken = physics::loadPower(given[current], lineToEarthOf(given), three,
                                                       given[powerFactor], given[efficiency]);
                return Answer().step(three ? "P = √3 U I cos φ η" : "P = U I cos φ η", powerResult, taken,
                                     {.title = "IEC 60050-141"});
            }};
}

Sum heaterPower() {
    return {.key = "heater-power",
            .inputs = {ratedPower, ratedVoltage, nominal},
            .results = {powerResult},
            .example = "ratedPower_W=1000 ratedVoltage_V=240 voltage_V=208",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step(
                    "P = P_r (U / U_r)^2", powerResult,
                    physics::resistivePower(given[ratedPower], given[ratedVoltage], given[nominal]));
            }};
}

} // namespace

std::vector<Sum> loadSums() {
    return {currentFromPower(), powerFromCurrent(), heaterPower()};
}

} // namespace loopwright::sums
