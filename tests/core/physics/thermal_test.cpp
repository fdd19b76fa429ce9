// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/thermal.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

const ThermalElement element{amperes(100), seconds(300)};

TEST(Thermal, OperatesOnlyAboveItsReference) {
    EXPECT_FALSE(operatingTime(element, amperes(99)));
    EXPECT_FALSE(operatingTime(element, amperes(100))) << "it only ever comes near";
    EXPECT_TRUE(operatingTime(element, amperes(100.1)));
    EXPECT_EQ(operatingTime(element, amperes(10), 1.2), Time()) << "too hot to begin with";
}

TEST(Thermal, AWarmElementOperatesSooner) {
    const Time cold = *operatingTime(element, amperes(200)),
               warm = *operatingTime(element, amperes(200), steadyState(element, amperes(80)));
    EXPECT_NEAR(cold.base(), 300 * std::log(4.0 / 3), 1e-9);
    EXPECT_NEAR(warm.base(), 300 * std::log((4 - 0.64) / 3), 1e-9);
}

TEST(Thermal, NothingCoolsBelowWhereItIs) {
    EXPECT_EQ(coolingTime(element, 0.4, 0.5), Time());
    EXPECT_NEAR(coolingTime(element, 1, std::exp(-2.0)).base(), 600, 1e-9);
}

RC_GTEST_PROP(Thermal, AtItsOperatingTimeTheStateIsOne, ()) {
    const Current current = amperes(*rc::gen::inRange(101, 5000));
    const double start = *rc::gen::inRange(0, 999) / 1000.0;
    const Time time = *operatingTime(element, current, start);
    RC_ASSERT(std::abs(stateAfter(element, start, current, time) - 1) < 1e-12);
    RC_ASSERT(std::abs(operatingCurrent(element, time, start) / current - 1) < 1e-9);
}

RC_GTEST_PROP(Thermal, TheTimeConstantOfAStallGivesItsTimeBack, ()) {
    const double reference = *rc::gen::inRange(100, 130) / 100.0, current = *rc::gen::inRange(2, 10),
                 preload = *rc::gen::inRange(0, 100) / 100.0;
    const Time constant = *timeConstantFromStall(seconds(8), current, preload, reference);
    const ThermalElement motor{amperes(reference), constant};
    RC_ASSERT(
        std::abs(*operatingTime(motor, amperes(current), steadyState(motor, amperes(preload))) / seconds(8) -
                 1) < 1e-9);
}

TEST(Thermal, NoTimeConstantFollowsFromAStallThatNeverOperates) {
    EXPECT_FALSE(timeConstantFromStall(seconds(5), 1.0, 0, 1.05));
    EXPECT_FALSE(timeConstantFromStall(seconds(5), 6, 1.2, 1.05));
}

TEST(ConductorTemperature, IsItsLimitAtItsCapacity) {
    EXPECT_DOUBLE_EQ(conductorTemperature(celsius(30), celsius(70), amperes(20), amperes(20)).base(), 70);
    EXPECT_NEAR(conductorTemperature(celsius(30), celsius(70), amperes(20), amperes(20), 0.00393)->base(), 70,
                1e-9);
    EXPECT_DOUBLE_EQ(conductorTemperature(celsius(30), celsius(70), amperes(0), amperes(20)).base(), 30);
}

RC_GTEST_PROP(ConductorTemperature, GrowingResistanceCoolsBelowCapacityAndHeatsAboveIt, ()) {
    const Current load = amperes(*rc::gen::inRange(1, 400) / 10.0), capacity = amperes(20);
    const double simple = conductorTemperature(celsius(30), celsius(70), load, capacity).base(),
                 fed = conductorTemperature(celsius(30), celsius(70), load, capacity, 0.00393)->base();
    RC_ASSERT((load < capacity ? fed <= simple : fed >= simple - 1e-9));
}

TEST(ConductorTemperature, RunsAwayWhereHeatingOutrunsCooling) {
    EXPECT_FALSE(conductorTemperature(celsius(30), celsius(70), amperes(60), amperes(20), 0.00393));
}

} // namespace
} // namespace loopwright::physics
