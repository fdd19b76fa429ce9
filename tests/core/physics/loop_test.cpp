// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/loop.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

constexpr double copper = 0.00393; // per kelvin at 20 degC, IEC 60287-1-1

TEST(Loop, PartsAddUp) {
    EXPECT_EQ(loopImpedance(ohms(0.25), ohms(0.5)), ohms(0.75));
}

TEST(Loop, PermittedLetsExactlyTheOperatingCurrentFlow) {
    const Resistance loop = permittedLoop(volts(230), 0.95, amperes(160));
    EXPECT_DOUBLE_EQ((volts(230) * 0.95 / loop).base(), 160);
}

TEST(Loop, WarmCopperReadsHigher) {
    // From 20 to 70 degC copper rises by 1 + 0.00393 x 50 = 1.1965.
    EXPECT_DOUBLE_EQ(atTemperature(ohms(1), celsius(20), celsius(70), copper).base(), 1.1965);
    EXPECT_DOUBLE_EQ(atTemperature(ohms(1), celsius(10), celsius(70), copper).base(), 1.1965 / 0.9607);
}

RC_GTEST_PROP(Loop, ThereAndBackIsTheSameResistance, ()) {
    const Temperature from = celsius(*rc::gen::inRange(-20, 90)), to = celsius(*rc::gen::inRange(-20, 90));
    const Resistance start = milliohms(*rc::gen::inRange(1, 100000));
    const Resistance back = atTemperature(atTemperature(start, from, to, copper), to, from, copper);
    RC_ASSERT(std::abs(back / start - 1) < 1e-12);
}

TEST(Loop, OnlyWhatLiesBeyondTheBoardIsWarmed) {
    const Resistance hot = loopAtTemperature(ohms(0.8), ohms(0.3), celsius(20), celsius(70), copper);
    EXPECT_DOUBLE_EQ(hot.base(), 0.3 + 0.5 * 1.1965);
    EXPECT_EQ(loopAtTemperature(ohms(0.2), ohms(0.3), celsius(20), celsius(70), copper), ohms(0.2));
}

TEST(Loop, ResistanceFollowsLengthAndParallels) {
    const auto perLength = ohmsPerKilometre(7.41);
    EXPECT_DOUBLE_EQ(conductorResistance(perLength, metres(100)).base(), 0.741);
    EXPECT_DOUBLE_EQ(conductorResistance(perLength, metres(100), 2).base(), 0.3705);
    EXPECT_DOUBLE_EQ(lengthFrom(ohms(0.741), perLength).base(), 100);
}

TEST(Ring, EverySocketReadsAQuarterOfTheEndsTogether) {
    EXPECT_DOUBLE_EQ(ringLineAndProtective(ohms(0.5), ohms(0.9)).base(), 0.35);
}

TEST(Ring, ProtectiveConductorIsLongerByTheRatioOfResistances) {
    const Resistance expected =
        ringProtectiveExpected(ohms(0.5), ohmsPerKilometre(12.1) / ohmsPerKilometre(7.41));
    EXPECT_DOUBLE_EQ(expected.base(), 0.5 * 12.1 / 7.41);
}

TEST(Ring, ReadsLessAtTheBoardThanHalfWayWhereTheConductorsDiffer) {
    const Resistance r1 = ohms(0.5), r2 = ohms(0.9);
    EXPECT_DOUBLE_EQ(ringLineAndProtectiveAt(r1, r2, 0.5).base(), ringLineAndProtective(r1, r2).base());
    EXPECT_DOUBLE_EQ(ringLineAndProtectiveAt(r1, r2, 0).base(), 0.5 * 0.9 / 1.4);
    EXPECT_DOUBLE_EQ(ringLineAndProtectiveAt(r1, r2, 0.2).base(),
                     ringLineAndProtectiveAt(r1, r2, 0.8).base());
    EXPECT_DOUBLE_EQ(ringLineAndProtectiveAt(r1, r1, 0.1).base(), ringLineAndProtective(r1, r1).base());
}

TEST(Ring, DifferenceIsAShareOfTheLarger) {
    EXPECT_DOUBLE_EQ(difference(ohms(0.5), ohms(0.4)), 0.2);
    EXPECT_DOUBLE_EQ(difference(ohms(0.4), ohms(0.5)), 0.2);
    EXPECT_EQ(difference(ohms(0), ohms(0)), 0);
    EXPECT_EQ(difference(ohms(0), ohms(0.1)), 1);
}

} // namespace
} // namespace loopwright::physics
