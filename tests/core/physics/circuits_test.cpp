// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/drop.h"
#include "core/physics/fault.h"
#include "core/physics/insulation.h"
#include "core/physics/load.h"
#include "core/physics/loop.h"
#include "core/physics/overload.h"
#include "core/physics/residual.h"
#include "core/units/unit.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

namespace loopwright::physics {
namespace {

TEST(Overload, FactorsAndParallelsMultiply) {
    EXPECT_DOUBLE_EQ(correctedCapacity(amperes(100), {0.5, 0.8}, 2).base(), 80);
    EXPECT_EQ(correctedCapacity(amperes(100), {}), amperes(100));
    EXPECT_DOUBLE_EQ(conventionalOperatingCurrent(amperes(32), 1.45).base(), 46.4);
}

RC_GTEST_PROP(Overload, NeededCapacityIsTheConverse, ()) {
    const Current needed = amperes(*rc::gen::inRange(1, 1000));
    const double first = *rc::gen::inRange(1, 200) / 100.0, second = *rc::gen::inRange(1, 200) / 100.0;
    const int parallel = *rc::gen::inRange(1, 5);
    const Current tabulated = tabulatedCapacityNeeded(needed, {first, second}, parallel);
    RC_ASSERT(std::abs(correctedCapacity(tabulated, {first, second}, parallel) / needed - 1) < 1e-12);
}

TEST(Overload, ADeviceThatOperatesLateCountsForLessWiring) {
    EXPECT_DOUBLE_EQ(conventionalCapacityFactor(2, 1.45), 0.725);
    EXPECT_DOUBLE_EQ(conventionalCapacityFactor(1.45, 1.45), 1);
    EXPECT_DOUBLE_EQ(largestOperatingCurrent(amperes(100), 1.45).base(), 145);
}

TEST(Overload, AmbientFactorIsOneAtTheReferenceAndZeroAtTheLimit) {
    EXPECT_DOUBLE_EQ(ambientFactor(celsius(70), celsius(30), celsius(30)), 1);
    EXPECT_DOUBLE_EQ(ambientFactor(celsius(70), celsius(30), celsius(70)), 0);
    EXPECT_GT(ambientFactor(celsius(70), celsius(30), celsius(20)), 1);
}

TEST(Insulation, CircuitsTogetherReadLessThanTheWorst) {
    const std::array circuits{megohms(5), megohms(10), megohms(10)};
    EXPECT_DOUBLE_EQ(in(inParallel(circuits), units::megohm), 2.5);
    EXPECT_DOUBLE_EQ(in(inParallel(std::array{megohms(7)}), units::megohm), 7);
    EXPECT_DOUBLE_EQ(in(insulationOfLength(megohms(1), metres(10), metres(100)), units::megohm), 0.1);
}

TEST(Loop, TheConventionalRunHalvesWithAThinnerReturn) {
    const auto run = [](double ratio) {
        return conventionalLongestRun(volts(230), 0.8, squareMillimetres(1.5), ratio, Resistivity(0.023),
                                      amperes(140));
    };
    EXPECT_NEAR(run(1).base(), 42.9, 0.05);
    EXPECT_NEAR(run(3) / run(1), 0.5, 1e-12);
}

TEST(Fault, CurrentFollowsOhm) {
    EXPECT_DOUBLE_EQ(prospectiveCurrent(volts(230), 1.1, ohms(0.1)).base(), 2530);
    EXPECT_EQ(threePhaseFromLineToNeutral(amperes(900)), amperes(1800));
    EXPECT_FALSE(isFinite(prospectiveCurrent(volts(230), 1, ohms(0))))
        << "a loop of nothing has no current to name";
}

TEST(Drop, ShareIsOfTheVoltageItStandsAgainst) {
    const Voltage drop = voltageDrop(VoltagePerCurrentLength(0.018), amperes(20), metres(25));
    EXPECT_DOUBLE_EQ(drop.base(), 9);
    EXPECT_DOUBLE_EQ(dropShare(drop, volts(230), false), 9.0 / 230);
    EXPECT_DOUBLE_EQ(dropShare(drop, volts(230), true), 9.0 / 230 / std::numbers::sqrt3);
}

TEST(Drop, GoAndReturnOrThreeLines) {
    EXPECT_DOUBLE_EQ(dropFromResistance(ohmsPerKilometre(7.41), false).base(), 2 * 7.41e-3);
    EXPECT_DOUBLE_EQ(dropFromResistance(ohmsPerKilometre(7.41), true).base(), std::numbers::sqrt3 * 7.41e-3);
}

RC_GTEST_PROP(Drop, TheLongestRunUsesUpTheShareExactly, ()) {
    const VoltagePerCurrentLength published(*rc::gen::inRange(1, 500) / 10000.0);
    const Current load = amperes(*rc::gen::inRange(1, 400));
    const bool threePhase = *rc::gen::arbitrary<bool>();
    const double share = *rc::gen::inRange(1, 100) / 1000.0;
    const Length run = longestRun(published, load, volts(230), threePhase, share);
    RC_ASSERT(std::abs(dropShare(voltageDrop(published, load, run), volts(230), threePhase) / share - 1) <
              1e-12);
}

TEST(Load, ThreePhasesShareEvenly) {
    const Current single = loadCurrent(kilowatts(6.9), volts(230), false),
                  three = loadCurrent(kilowatts(6.9), volts(230), true);
    EXPECT_DOUBLE_EQ(single.base(), 30);
    EXPECT_DOUBLE_EQ(three.base(), 10);
    EXPECT_DOUBLE_EQ(loadCurrent(kilowatts(6.9), volts(230), true, 0.8, 0.5).base(), 25);
}

TEST(Load, AHeaterAtItsOwnVoltageTakesItsOwnPower) {
    EXPECT_DOUBLE_EQ(resistivePower(kilowatts(3), volts(240), volts(240)).base(), 3000);
    EXPECT_NEAR(resistivePower(kilowatts(3), volts(240), volts(230)).base(), 2755, 1);
}

RC_GTEST_PROP(Residual, TheLargestElectrodeStandsAtTheTouchVoltageExactly, ()) {
    const Current residual = milliamperes(*rc::gen::inRange(1, 1000));
    const Voltage limit = volts(*rc::gen::inRange(1, 120));
    const Voltage touch = touchVoltage(largestElectrodeResistance(limit, residual), residual);
    RC_ASSERT(std::abs(touch / limit - 1) < 1e-12);
}

} // namespace
} // namespace loopwright::physics
