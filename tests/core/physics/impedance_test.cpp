// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/impedance.h"

#include "core/physics/drop.h"
#include "core/physics/fault.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

namespace loopwright::physics {
namespace {

Impedance anyImpedance() {
    return {milliohms(*rc::gen::inRange(1, 5000)), milliohms(*rc::gen::inRange(0, 5000))};
}

TEST(Impedance, SegmentsAddAsVectors) {
    const std::array segments{Impedance{ohms(3), ohms(1)}, Impedance{ohms(0), ohms(3)}};
    EXPECT_EQ(inSeries(segments), (Impedance{ohms(3), ohms(4)}));
    EXPECT_DOUBLE_EQ(magnitude(inSeries(segments)).base(), 5);
    EXPECT_EQ(inSeries({}), Impedance{});
}

TEST(Impedance, OnlyResistanceFollowsTemperature) {
    const Impedance hot = atTemperature({ohms(1), ohms(1)}, celsius(20), celsius(70), 0.004);
    EXPECT_DOUBLE_EQ(hot.resistance.base(), 1.2);
    EXPECT_EQ(hot.reactance, ohms(1));
}

RC_GTEST_PROP(Impedance, TheSumOfMagnitudesIsNeverLessThanTheMagnitudeOfTheSum, ()) {
    const Impedance a = anyImpedance(), b = anyImpedance();
    RC_ASSERT(magnitude(a) + magnitude(b) >= magnitude(a + b) * (1 - 1e-12));
}

RC_GTEST_PROP(Impedance, IsFoundAgainFromItsMagnitudeAndRatio, ()) {
    const Resistance whole = milliohms(*rc::gen::inRange(1, 5000));
    const double ratio = *rc::gen::inRange(0, 10000) / 1000.0;
    const Impedance z = impedanceOf(whole, ratio);
    RC_ASSERT(std::abs(magnitude(z) / whole - 1) < 1e-12);
    RC_ASSERT(std::abs(z.resistance.base() - ratio * z.reactance.base()) < 1e-12);
}

RC_GTEST_PROP(FaultDownstream, MagnitudesGiveAtMostWhatVectorsDo, ()) {
    const Current upstream = amperes(*rc::gen::inRange(100, 50000));
    const double ratio = *rc::gen::inRange(0, 10000) / 1000.0;
    const Impedance run = anyImpedance();
    const Current byMagnitude = faultCurrentDownstream(upstream, volts(230), 1, magnitude(run)),
                  byVector = faultCurrentDownstream(upstream, volts(230), 1, ratio, run);
    RC_ASSERT(byMagnitude <= byVector * (1 + 1e-12));
    RC_ASSERT(byMagnitude >= byVector * 0.7);
    RC_ASSERT(byVector <= upstream * (1 + 1e-12));
}

RC_GTEST_PROP(FaultDownstream, NoVectorsGiveMoreThanTheMostBehindTheirResistance, ()) {
    const Current upstream = amperes(*rc::gen::inRange(100, 50000));
    const double ratio = *rc::gen::inRange(0, 10000) / 1000.0;
    const Impedance run = anyImpedance();
    const Current most = mostFaultCurrentDownstream(upstream, volts(230), 1.1, run.resistance);
    RC_ASSERT(faultCurrentDownstream(upstream, volts(230), 1.1, ratio, run) <= most * (1 + 1e-12));
    RC_ASSERT(most <= upstream * (1 + 1e-12));
}

RC_GTEST_PROP(FaultDownstream, TwoRunsInTurnAreOneRunOfBoth, ()) {
    const Current upstream = amperes(*rc::gen::inRange(100, 50000));
    const Resistance first = milliohms(*rc::gen::inRange(1, 500)),
                     second = milliohms(*rc::gen::inRange(1, 500));
    const Current between = faultCurrentDownstream(upstream, volts(230), 0.95, first);
    RC_ASSERT(std::abs(faultCurrentDownstream(between, volts(230), 0.95, second) /
                           faultCurrentDownstream(upstream, volts(230), 0.95, first + second) -
                       1) < 1e-12);
}

TEST(Transformer, LossesTurnPartOfTheImpedanceIntoResistance) {
    TransformerPlate plate{kilowatts(400), volts(400), 0.04, std::nullopt};
    EXPECT_EQ(transformerImpedance(plate).resistance, ohms(0));
    EXPECT_DOUBLE_EQ(magnitude(transformerImpedance(plate)).base(), 0.016);
    plate.loadLoss = kilowatts(4); // 1 % of the rating
    EXPECT_DOUBLE_EQ(transformerImpedance(plate).resistance.base(), 0.004);
    EXPECT_DOUBLE_EQ(magnitude(transformerImpedance(plate)).base(), 0.016);
    plate.loadLoss = kilowatts(40);
    EXPECT_EQ(transformerImpedance(plate), (Impedance{ohms(0.016), ohms(0)})) << "more loss than impedance";
}

TEST(TouchVoltage, IsTheShareOfTheLoopThatLiesBehindTheExposedPart) {
    EXPECT_DOUBLE_EQ(touchVoltageInLoop(volts(230), 1, ohms(1), ohms(0.5)).base(), 115);
    EXPECT_DOUBLE_EQ(touchVoltageInLoop(volts(230), 0.8, ohms(1), ohms(0.5)).base(), 92);
}

TEST(Drop, ReactanceCountsWithTheSineOfTheAngle) {
    const ImpedancePerLength cable{ohmsPerKilometre(1), ohmsPerKilometre(0.5)};
    EXPECT_DOUBLE_EQ(dropFromImpedance(cable, 1, false).base(), 2e-3);
    EXPECT_DOUBLE_EQ(dropFromImpedance(cable, 0.8, false).base(), 2 * (0.8 + 0.3) * 1e-3);
    EXPECT_EQ(dropFromImpedance(cable, 1, true), dropFromResistance(cable.resistance, true));
}

TEST(PartialLoad, IsOneAtTheFullLoadOfAnUncorrectedCable) {
    PartialLoad circuit{amperes(20), amperes(20), 1, 1, celsius(70), celsius(30)};
    EXPECT_DOUBLE_EQ(partialLoadFactor(circuit), 1);
    circuit.load = amperes(0); // 30 degC instead of 70
    EXPECT_DOUBLE_EQ(partialLoadFactor(circuit), 260.0 / 300);
    circuit.load = amperes(30);
    EXPECT_GT(partialLoadFactor(circuit), 1) << "hotter than its limit";
}

} // namespace
} // namespace loopwright::physics
