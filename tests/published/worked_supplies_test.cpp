// SPDX-License-Identifier: GPL-3.0-or-later
//
// Worked examples that others published, recalculated from their inputs: supplies, motors and thermal
// replicas. How each was rounded there sets its tolerance.
#include "core/physics/demand.h"
#include "core/physics/drop.h"
#include "core/physics/fault.h"
#include "core/physics/load.h"
#include "core/physics/motor.h"
#include "core/physics/residual.h"
#include "core/physics/thermal.h"
#include "core/units/unit.h"
#include "tests/published/worked_example.h"

#include <array>
#include <numbers>

namespace loopwright::published {
namespace {

using namespace physics;

Voltage lineToEarth(double lineToLine) {
    return volts(lineToLine / std::numbers::sqrt3);
}

TEST(WorkedExamples, LoopsWithReactance) {
    const std::array board{Impedance{ohms(0.005), ohms(0.017)}, Impedance{ohms(0.008), ohms(0.004)},
                           Impedance{ohms(0.008), ohms(0.001)}};
    const std::array point{Impedance{ohms(0.061), ohms(0.026)}, Impedance{ohms(0.023), ohms(0)},
                           Impedance{ohms(0.007), ohms(0.008)}};
    const std::array motor{Impedance{ohms(0.296), ohms(0.0268)}, Impedance{ohms(0.72), ohms(0)},
                           Impedance{ohms(0.00308), ohms(0.0308)}, Impedance{ohms(0.1), ohms(0)}};
    compare("worked examples: loops with reactance",
            {{"500 kVA source and cable, R", inSeries(board).resistance.base(), 0.021, 1e-6,
              "engineers' forum, board A"},
             {"500 kVA source and cable, X", inSeries(board).reactance.base(), 0.022, 1e-6, "the same"},
             {"500 kVA source and cable, Z", magnitude(inSeries(board)).base(), 0.030, 0.015, "the same"},
             {"5 m of singles further", magnitude(inSeries(point)).base(), 0.097, 0.003,
              "the same forum, point C"},
             {"motor feeder with armour", magnitude(inSeries(motor)).base(), 1.1206, 0.0002,
              "handbook of electrical engineering, step i"}});
}

Current transformerFault(double kilovoltamperes, double network) {
    const TransformerPlate plate{kilowatts(kilovoltamperes), volts(420), 0.06, std::nullopt};
    const Resistance whole =
        magnitude(transformerImpedance(plate)) + networkImpedance(watts(network), volts(420));
    return prospectiveCurrent(lineToEarth(420), 1, whole);
}

TEST(WorkedExamples, TransformersOnANetworkOf250Mva) {
    constexpr std::array ratings{50, 100, 160, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500};
    constexpr std::array printed{1.14, 2.28, 3.63, 5.63, 7.07, 8.93, 11.1,
                                 13.9, 17.4, 21.5, 26.4, 33.1, 40.4, 49.1};
    std::vector<Example> examples;
    for (std::size_t i = 0; i < ratings.size(); ++i)
        examples.push_back({"cast resin, 6 %, kA", transformerFault(ratings[i], 250e6).base() / 1000,
                            printed[i], 0.005, "fault tables of an electrical reference page"});
    compare("worked examples: transformer fault levels", examples);
}

TEST(WorkedExamples, FaultLevels) {
    const TransformerPlate thousand{kilowatts(1000), volts(415), 0.0475, std::nullopt};
    const TransformerPlate t1{kilowatts(630), volts(410), 0.04, watts(6500)};
    const Ratio correction = transformerCorrection(t1, 1.05);
    const Impedance corrected = correction * transformerImpedance(t1);
    const Impedance feeder =
        impedanceOf(networkImpedance(kiloamperes(10), volts(20000), 1.1, 20000.0 / 410), 0.1);
    const auto milliohm = [](Resistance r) { return in(r, units::milliohm); };
    compare(
        "worked examples: fault levels",
        {{"35 kA behind 6.5 m of 10 mm2, kA",
          faultCurrentDownstream(kiloamperes(35), lineToEarth(400), 1, ohms(0.0225 * 6.5 / 10)).base() / 1000,
          11, 0.02, "fault tables of an electrical reference page"},
         {"1000 kVA, 415 V, kA",
          prospectiveCurrent(lineToEarth(415), 1, magnitude(transformerImpedance(thousand))).base() / 1000,
          29.29, 0.0005, "breaker maker's guide"},
         {"K_T of 630 kVA", correction, 0.975, 0.0005, "IEC TR 60909-4, transformer T1, from memory"},
         {"its R, mohm", milliohm(corrected.resistance), 2.684, 0.0005, "the same"},
         {"its X, mohm", milliohm(corrected.reactance), 10.054, 0.0005, "the same"},
         {"network feeder Z, mohm", milliohm(magnitude(feeder)), 0.534, 0.004, "the same, network feeder"},
         {"network feeder R, mohm", milliohm(feeder.resistance), 0.053, 0.004, "the same"},
         {"network feeder X, mohm", milliohm(feeder.reactance), 0.531, 0.004, "the same"}});
}

TEST(WorkedExamples, DropWithReactanceAndPartialLoad) {
    const Length feeder = metres(1);
    const ImpedancePerLength perFeeder{ResistancePerLength(0.296), ResistancePerLength(0.0268)};
    const Voltage start = voltageDrop(dropFromImpedance(perFeeder, 0.45, true), amperes(460.74), feeder);
    const Ratio cooler = partialLoadFactor({amperes(26), amperes(40), 1, 1, celsius(70), celsius(30)});
    const VoltagePerCurrentLength ring = VoltagePerCurrentLength(0.018) * (ringShareOfDrop * cooler);
    compare("worked examples: drop with reactance and partial load",
            {{"motor start, %", 100 * dropShare(start, lineToEarth(415), true), 30.216, 0.0002,
              "handbook of electrical engineering, step f"},
             {"longest ring on 32 A, m", longestRun(ring, amperes(26), volts(230), false, 0.05).base(), 106,
              0.007, "On-Site Guide, conventional circuits; cut"}});
}

TEST(WorkedExamples, Motors) {
    const Current fiveHorsepower =
        loadCurrent(Power(units::horsepower.toBase(5)), lineToEarth(415), true, 0.8);
    compare(
        "worked examples: motors",
        {{"5 hp at 415 V and 0.8, no efficiency", fiveHorsepower.base(), 6, 0.09, "portal article; cut"},
         {"its start at seven times", startingCurrent(fiveHorsepower, 7, {}).base(), 45, 0.09, "the same"},
         {"start of 30 A at 600 %", startingCurrent(amperes(30), 6, {}).base(), 180, 1e-9,
          "motor starting article"},
         {"its star-delta start", startingCurrent(amperes(30), 6, {StarterKind::StarDelta}).base(), 60, 1e-9,
          "the same: a third"},
         {"efficiency behind 245.4 A",
          motorEfficiency(kilowatts(160), lineToEarth(440), amperes(245.4), 0.92, true), 0.93, 0.0005,
          "handbook of electrical engineering"}});
}

TEST(WorkedExamples, ThermalReplicas) {
    const ThermalElement machine{amperes(1.05), seconds(1)};
    compare("worked examples: thermal replicas",
            {{"tau from 5 s of stall at 6 I_B, s", timeConstantFromStall(seconds(5), 6, 0, 1.1)->base(), 146,
              0.003, "motor protection manual, p. 25"},
             {"motor cooling from 141 degC",
              temperatureAfter(celsius(141), celsius(40), seconds(1026), seconds(600)).base(), 96, 0.004,
              "motor protection manual, p. 37"},
             {"tau of a cable of 500 A and 22.5 kA for 1 s, min",
              in(timeConstantFromShortTime(amperes(500), amperes(22500), seconds(1)), units::minute), 33.75,
              0.0001, "feeder protection manual, p. 151"},
             {"thermal memory at rated current, %", 100 * steadyState(machine, amperes(1)), 91, 0.004,
              "bay controller manual, p. 886"}});
}

TEST(WorkedExamples, FaultsToEarthThroughGround) {
    const Current fault = prospectiveCurrent(volts(230), 1, ohms(10) + ohms(20));
    compare("worked examples: faults through ground",
            {{"10 and 20 ohm", fault.base(), 7.7, 0.006, "installation guide, TT fault"},
             {"largest electrode for 20.6 A and 280 V",
              largestElectrodeResistance(volts(280), amperes(20.6)).base(), 13.6, 0.002, "tutor's answer"}});
}

} // namespace
} // namespace loopwright::published
