// SPDX-License-Identifier: GPL-3.0-or-later
//
// Worked examples that others published, recalculated from their inputs. Beside each: where it was printed,
// and how it was rounded there, which sets the tolerance. They check arithmetic under their own inputs, not
// the limits of today.
#include "core/physics/drop.h"
#include "core/physics/fault.h"
#include "core/physics/heat.h"
#include "core/physics/load.h"
#include "core/physics/loop.h"
#include "core/physics/overload.h"
#include "core/physics/residual.h"
#include "core/reference/reference_tables.h"
#include "tests/published/worked_example.h"

namespace loopwright::published {
namespace {

TEST(WorkedExamples, Loops) {
    const auto perKilometre = [](double v) { return ohmsPerKilometre(v); };
    const Resistance cold = physics::lineAndProtective(perKilometre(3.08), perKilometre(7.41), metres(30));
    compare(
        "worked examples: loops",
        {{"R1+R2 of 30 m of 6/2.5 mm2, at 1.2 times", 1.2 * cold.base(), 0.38, 0.02,
          "engineering forum; cut"},
         {"its Zs behind 0.15 ohm", physics::loopImpedance(ohms(0.15), 1.2 * cold).base(), 0.52, 0.02,
          "the same"},
         {"longest 1/1 mm2 run within 6.72 ohm", physics::lengthFrom(ohms(6.72), perKilometre(36.2)).base(),
          185, 0.006, "electricians' forum; cut"},
         {"C16 without c", physics::permittedLoop(volts(230), 1, amperes(160)).base(), 1.44, 0.005,
          "loop tester manual, p. 17"},
         {"gG 32 A at 0.4 s, 221 A", physics::permittedLoop(volts(230), 1, amperes(221)).base(), 1.04, 0.004,
          "loop tester manual, p. 17"},
         {"gG 100 A at 0.4 s, 1020 A", physics::permittedLoop(volts(230), 1, amperes(1020)).base(), 0.22,
          0.026, "loop tester manual, p. 25"}});
}

TEST(WorkedExamples, Rings) {
    const Resistance r1 = ohms(1.6);
    compare("worked examples: rings",
            {{"line to neutral at each socket", physics::ringLineAndProtective(r1, r1).base(), 0.8, 0.001,
              "forum question on a ring that read 1.4 ohm"},
             {"length of a 1.6 ohm leg of 2.5 mm2", physics::lengthFrom(r1, ohmsPerKilometre(7.4)).base(),
              216, 0.016, "the same"}});
    // The forum's verdict: with 1.6 ohm in line and neutral, 4.1 ohm of protective conductor is no 2.5/1.5
    // cable.
    const Resistance expected =
        physics::ringProtectiveExpected(r1, ohmsPerKilometre(7.41), ohmsPerKilometre(12.1));
    EXPECT_NEAR(expected.base(), 2.61, 0.01);
    EXPECT_GT(physics::difference(expected, ohms(4.1)), 0.3);
}

TEST(WorkedExamples, Heat) {
    const auto least = [](double current, double time) {
        return physics::adiabaticSize(physics::jouleIntegral(amperes(current), seconds(time)),
                                      AdiabaticFactor(115))
            .base();
    };
    const auto withstand = [](double k, double size) {
        return physics::withstand(AdiabaticFactor(k), squareMillimetres(size)).base() / 1e6;
    };
    compare("worked examples: heat",
            {{"90 A for 0.4 s", least(90, 0.4), 0.49, 0.012, "installation textbook, immersion heater; cut"},
             {"253 A for 0.1 s", least(253, 0.1), 0.7, 0.007, "newsgroup answer on an armoured supply"},
             {"k2S2, 2.5 mm2 XLPE copper", withstand(143, 2.5), 0.1278, 0.0005,
              "installation guide, thermal withstand"},
             {"k2S2, 25 mm2 XLPE copper", withstand(143, 25), 12.7806, 0.0005, "the same"},
             {"k2S2, 16 mm2 XLPE aluminium", withstand(94, 16), 2.262, 0.0012, "the same"},
             {"10 mm2 PVC at 4000 A, ms",
              in(physics::permissibleTime(AdiabaticFactor(115), squareMillimetres(10), amperes(4000)),
                 units::millisecond),
              82.66, 0.0002, "installation textbook, breaker that clears in 20 ms"},
             {"4800 A for 20 ms", physics::jouleIntegral(amperes(4800), milliseconds(20)).base(), 460800,
              0.0001, "applications textbook, fuse and circuit"}});
}

TEST(WorkedExamples, Overload) {
    compare("worked examples: overload",
            {{"15 A, 0.87 and 0.7", physics::tabulatedCapacityNeeded(amperes(15), {0.87, 0.7}).base(), 24.63,
              0.0002, "electricians' forum"},
             {"ring legs in one trunking", physics::correctedCapacity(amperes(23), {0.8}).base(), 18.4,
              0.0001, "electricians' forum"},
             {"300 mm2 XLPE in 35 degC", physics::correctedCapacity(amperes(666), {0.92}).base(), 613, 0.001,
              "handbook of electrical engineering, 160 kW motor"},
             {"I2 of a B16", physics::conventionalOperatingCurrent(amperes(16), 1.45).base(), 23.2, 0.0001,
              "article on IEC 60898-1"},
             {"1.45 / 2 of a rewirable fuse", ReferenceTables::builtIn().rewirableFactor()->value, 0.725,
              0.0001, "electrician's guide, 4.3.8"}});
}

TEST(WorkedExamples, Drop) {
    const auto drop = [](double published, double load, double length) {
        return physics::voltageDrop(VoltagePerCurrentLength(published / 1000), amperes(load), metres(length));
    };
    compare("worked examples: voltage drop",
            {{"100 A over 150 m at 1.1 mV/A/m", drop(1.1, 100, 150).base(), 16.5, 0.0001,
              "cable distributor's page"},
             {"32 A over 30 m at 7.3 mV/A/m", drop(7.3, 32, 30).base(), 7.0, 0.002, "newsgroup: about 7 V"},
             {"150 A over 50 m at 0.59 V/A/km", drop(0.59, 150, 50).base(), 4.4, 0.01,
              "installation guide, 2018"},
             {"100 A over 50 m of 400 V, %",
              100 * physics::dropShare(drop(1.0, 100, 50) + volts(10), volts(400 / std::sqrt(3.0)), true),
              3.75, 0.001, "installation guide, motor cable"}});
}

TEST(WorkedExamples, FaultsAndElectrodes) {
    compare(
        "worked examples: faults and electrodes",
        {{"240 V through 0.08 ohm", physics::prospectiveCurrent(volts(240), 1, ohms(0.08)).base(), 3000,
          0.0001, "contractors' note"},
         {"240 V through 0.05 ohm", physics::prospectiveCurrent(volts(240), 1, ohms(0.05)).base(), 4800,
          0.0001, "applications textbook"},
         {"230 V through 50 ohm", physics::prospectiveCurrent(volts(230), 1, ohms(50)).base(), 4.6, 0.0001,
          "electricians' forum"},
         {"touch voltage of 7.67 A in 20 ohm",
          physics::touchVoltage(ohms(20), physics::prospectiveCurrent(volts(230), 1, ohms(30))).base(), 154,
          0.006, "installation guide, TT fault"},
         {"R_A at 50 V and 30 mA", physics::largestElectrodeResistance(volts(50), milliamperes(30)).base(),
          1667, 0.003, "loop tester manual, p. 24"}});
}

TEST(WorkedExamples, Loads) {
    // Motors: line-to-line voltages of the examples over sqrt(3) are the line-to-earth voltage here.
    const Voltage of415 = volts(415 / std::sqrt(3.0)), of440 = volts(440 / std::sqrt(3.0));
    compare(
        "worked examples: loads",
        {{"160 kW, 440 V, 0.93, 0.92", physics::loadCurrent(kilowatts(160), of440, true, 0.92, 0.93).base(),
          245.4, 0.0002, "handbook of electrical engineering"},
         {"7.5 kW, 415 V, 0.85, 0.8", physics::loadCurrent(kilowatts(7.5), of415, true, 0.8, 0.85).base(),
          15.3, 0.004, "electrician's guide, chapter 4"},
         {"10 kW at 240 V", physics::loadCurrent(kilowatts(10), volts(240), false).base(), 41.67, 0.0002,
          "home wiring article"},
         {"12 kW at 230 V", physics::loadCurrent(kilowatts(12), volts(230), false).base(), 52.17, 0.0002,
          "installation textbook, cooker"},
         {"1 kW, 240 V, on 208 V", physics::resistivePower(kilowatts(1), volts(240), volts(208)).base(),
          751.1, 0.0001, "heater maker's article"},
         {"4.5 kW, 240 V, on 208 V", physics::resistivePower(kilowatts(4.5), volts(240), volts(208)).base(),
          3380, 0.001, "water heater forum; to ten watts"}});
}

} // namespace
} // namespace loopwright::published
