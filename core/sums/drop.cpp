// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/drop.h"

#include "core/sums/registry.h"
#include "core/sums/shared_inputs.h"

namespace loopwright::sums {
namespace {

Standard referenceAmbient(const SumContext& context) {
    return {context.tables.referenceAmbient(InstallationMethod::C).base(), {}};
}

constexpr auto published =
    number<VoltagePerCurrentLength>("drop_mV_per_A_m", "d", units::millivoltPerAmpereMetre);
constexpr auto isRing = flag("ring");
constexpr auto partialLoad = number<Ratio>("partialLoadFactor", "C_t", units::ratio, one);
constexpr auto before = orZero(number<Voltage>("dropBefore_V", "ΔU_0", units::volt, none));
constexpr auto limit = optional<Voltage>("dropLimit_V", "ΔU_max", units::volt);
constexpr auto neededLimit = number<Voltage>("dropLimit_V", "ΔU_max", units::volt);
constexpr auto conductorR = number<Resistance>("resistance_ohm", "R", units::ohm);
constexpr auto conductorX = orZero(number<Resistance>("reactance_ohm", "X", units::ohm, none));
constexpr auto perLengthR =
    number<ResistancePerLength>("resistance_mohm_per_m", "r", units::milliohmPerMetre);
constexpr auto perLengthX =
    orZero(number<ResistancePerLength>("reactance_mohm_per_m", "x", units::milliohmPerMetre, none));
constexpr auto startPublished =
    number<VoltagePerCurrentLength>("startDrop_mV_per_A_m", "d_s", units::millivoltPerAmpereMetre);
constexpr auto startCurrent = number<Current>("startCurrent_A", "I_s", units::ampere);
constexpr auto boardDrop = orZero(number<Voltage>("boardDrop_V", "ΔU_B", units::volt, none));
constexpr auto boardCurrent = number<Current>("boardCurrent_A", "I_B", units::ampere);
constexpr auto tabulated = number<Current>("tabulatedCapacity_A", "I_t", units::ampere);
constexpr auto ambientFactor = number<Ratio>("ambientFactor", "C_a", units::ratio, one);
constexpr auto groupingFactor = number<Ratio>("groupingFactor", "C_g", units::ratio, one);
constexpr auto limitTemperature = number<Temperature>("limitTemperature_degC", "t_p", units::celsius);
constexpr auto reference =
    number<Temperature>("referenceTemperature_degC", "t_r", units::celsius, referenceAmbient);

constexpr auto drop = result<Voltage>("drop_V", "ΔU", units::volt);
constexpr auto dropToNeutral = result<Voltage>("lineToNeutralDrop_V", "ΔU_L-N", units::volt);
constexpr auto total = result<Voltage>("totalDrop_V", "ΔU_total", units::volt);
constexpr auto share = result<Ratio>("totalDrop_percent", "ΔU/U", units::percent);
constexpr auto longest = result<Length>("longestRun_m", "l_max", units::metre);
constexpr auto factorResult = result<Ratio>("partialLoadFactor", "C_t", units::ratio);
constexpr auto publishedResult =
    result<VoltagePerCurrentLength>("drop_mV_per_A_m", "d", units::millivoltPerAmpereMetre);
constexpr auto startDrop = result<Voltage>("startDrop_V", "ΔU_s", units::volt);
constexpr auto startTotal = result<Voltage>("startTotalDrop_V", "ΔU_{s,total}", units::volt);
constexpr auto startShare = result<Ratio>("startTotalDrop_percent", "ΔU_s/U", units::percent);

/// What a published figure comes to in this circuit.
VoltagePerCurrentLength effective(const Given& given) {
    return given[published] * ((given[isRing] ? physics::ringShareOfDrop : 1.0) * given[partialLoad]);
}

Sum voltageDrop() {
    return {
        .key = "voltage-drop",
        .inputs = {published, loadCurrent, length, nominal, isThreePhase, isRing, partialLoad, before, limit},
        .results = {drop, dropToNeutral, total, share, verdict},
        .example = "drop_mV_per_A_m=7.3 loadCurrent_A=32 length_m=30 voltage_V=230",
        .work = [](const Given& given, const SumContext& context) -> Outcome {
            const Voltage here = physics::voltageDrop(effective(given), given[loadCurrent], given[length]);
            const Voltage whole = here + given[before];
            Answer answer;
            answer.step(given[isRing] ? "ΔU = d I_b l C_t / 4" : "ΔU = d I_b l C_t", drop, here,
                        ruleSource(context, "drop"));
            if (given[isThreePhase])
                answer.step("ΔU_L-N = ΔU / √3", dropToNeutral, here / std::numbers::sqrt3);
            answer.step("ΔU_total = ΔU + ΔU_0", total, whole);
            if (const auto most = given[limit]) answer.judge(Relation::AtMost, whole, *most, units::volt);
            return answer.step("ΔU/U = ΔU_total / U", share,
                               physics::dropShare(whole, lineToEarthOf(given), given[isThreePhase]));
        }};
}

Sum dropFromImpedance() {
    return {.key = "drop-from-impedance",
            .inputs = {loadCurrent, conductorR, conductorX, powerFactor, nominal, isThreePhase},
            .results = {drop, share},
            .example = "loadCurrent_A=460 resistance_ohm=0.296 reactance_ohm=0.0268 powerFactor=0.45 "
                       "voltage_V=415 threePhase=yes",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                const Voltage here = physics::voltageDrop({given[conductorR], given[conductorX]},
                                                          given[loadCurrent], given[powerFactor], three);
                Answer answer;
                answer.step(three ? "ΔU = √3 I_b (R cos φ + X sin φ)" : "ΔU = 2 I_b (R cos φ + X sin φ)",
                            drop, here, {.title = "IEC 60364-5-52, annex G"});
                return answer.step("ΔU/U", share, physics::dropShare(here, lineToEarthOf(given), three));
            }};
}

Sum dropPerLength() {
    return {.key = "drop-per-length",
            .inputs = {perLengthR, perLengthX, powerFactor, isThreePhase},
            .results = {publishedResult},
            .example = "resistance_mohm_per_m=8.87 threePhase=no",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                return Answer().step(three ? "d = √3 (r cos φ + x sin φ)" : "d = 2 (r cos φ + x sin φ)",
                                     publishedResult,
                                     physics::dropFromImpedance({given[perLengthR], given[perLengthX]},
                                                                given[powerFactor], three),
                                     {.title = "IEC 60364-5-52, annex G"});
            }};
}

Sum longestRun() {
    return {.key = "longest-run-within-drop",
            .inputs = {published, loadCurrent, neededLimit, isRing, partialLoad},
            .results = {longest},
            .example = "drop_mV_per_A_m=18 loadCurrent_A=20 dropLimit_V=11.5",
            .work = [](const Given& given, const SumContext& context) -> Outcome {
                return Answer().step(
                    given[isRing] ? "l_max = 4 ΔU_max / (d I_b C_t)" : "l_max = ΔU_max / (d I_b C_t)",
                    longest, physics::longestRun(effective(given), given[loadCurrent], given[neededLimit]),
                    ruleSource(context, "drop"));
            }};
}

Sum partialLoadFactor() {
    return {.key = "partial-load-factor",
            .inputs = {loadCurrent, tabulated, ambientFactor, groupingFactor, limitTemperature, reference},
            .results = {factorResult},
            .example = "loadCurrent_A=26 tabulatedCapacity_A=40 limitTemperature_degC=70",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                return Answer().step(
                    "C_t = (230 + t_p − (C_a^2 C_g^2 − I_b^2/I_t^2)(t_p − t_r)) / (230 + t_p)", factorResult,
                    physics::partialLoadFactor({given[loadCurrent], given[tabulated], given[ambientFactor],
                                                given[groupingFactor], given[limitTemperature],
                                                given[reference]}),
                    {.title = "BS 7671, appendix 4, 6.1"});
            }};
}

Sum motorStartDrop() {
    return {.key = "motor-start-drop",
            .inputs = {published, loadCurrent, startPublished, startCurrent, length, boardDrop, boardCurrent,
                       nominal, isThreePhase},
            .results = {drop, total, share, startDrop, startTotal, startShare},
            .example = "drop_mV_per_A_m=1 loadCurrent_A=100 startDrop_mV_per_A_m=0.52 startCurrent_A=500 "
                       "length_m=50 boardDrop_V=10 boardCurrent_A=1000 voltage_V=400 threePhase=yes",
            .work = [](const Given& given, const SumContext&) -> Outcome {
                const bool three = given[isThreePhase];
                const Voltage running =
                    physics::voltageDrop(given[published], given[loadCurrent], given[length]);
                const Voltage starting =
                    physics::voltageDrop(given[startPublished], given[startCurrent], given[length]);
                const Ratio more =
                    (given[boardCurrent] + given[startCurrent] - given[loadCurrent]) / given[boardCurrent];
                const Voltage ran = running + given[boardDrop], started = starting + more * given[boardDrop];
                Answer answer;
                answer.step("ΔU = d I_b l", drop, running);
                answer.step("ΔU_total = ΔU + ΔU_B", total, ran);
                answer.step("ΔU/U", share, physics::dropShare(ran, lineToEarthOf(given), three));
                answer.step("ΔU_s = d_s I_s l", startDrop, starting);
                answer.step("ΔU_{s,total} = ΔU_s + ΔU_B (I_B + I_s − I_b) / I_B", startTotal, started);
                return answer.step("ΔU_s/U", startShare,
                                   physics::dropShare(started, lineToEarthOf(given), three));
            }};
}

} // namespace

std::vector<Sum> dropSums() {
    return {voltageDrop(), dropFromImpedance(), dropPerLength(),
            longestRun(),  partialLoadFactor(), motorStartDrop()};
}

} // namespace loopwright::sums
