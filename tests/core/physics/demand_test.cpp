// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/demand.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loopwright::physics {
namespace {

TEST(Demand, SharesGoByTheSizeOfTheLoads) {
    const Allowance byOrder{amperes(0), 1, 0.8, 0.6, amperes(0)};
    const std::array loads{amperes(10), amperes(30), amperes(20), amperes(10)};
    EXPECT_DOUBLE_EQ(demand(loads, byOrder).base(), 30 + 0.8 * 20 + 0.6 * 20);
    EXPECT_EQ(demand({}, byOrder), amperes(0));
    const std::array alike{amperes(10), amperes(10)};
    EXPECT_DOUBLE_EQ(demand(alike, byOrder).base(), 18) << "one of two alike is the second";
}

TEST(Demand, TheFirstAmperesCountInFull) {
    const Allowance cooking{amperes(10), 0.3, 0.3, 0.3, amperes(5)};
    const std::array small{amperes(8)}, large{amperes(30)};
    EXPECT_DOUBLE_EQ(demand(small, cooking).base(), 8);
    EXPECT_DOUBLE_EQ(demand(large, cooking).base(), 16);
    EXPECT_DOUBLE_EQ(demand(large, cooking, true).base(), 21);
}

TEST(Neutral, EvenLinesCancelAndOneAloneReturnsInFull) {
    EXPECT_NEAR(neutralCurrent({{{amperes(20)}, {amperes(20)}, {amperes(20)}}}).base(), 0, 1e-12);
    EXPECT_DOUBLE_EQ(neutralCurrent({{{amperes(20)}, {amperes(0)}, {amperes(0)}}}).base(), 20);
    EXPECT_NEAR(neutralCurrent({{{amperes(20)}, {amperes(20)}, {amperes(0)}}}).base(), 20, 1e-12);
}

RC_GTEST_PROP(Neutral, OfPureResistancesFollowsTheThreeCurrents, ()) {
    const double a = *rc::gen::inRange(0, 200), b = *rc::gen::inRange(0, 200), c = *rc::gen::inRange(0, 200);
    const double neutral = neutralCurrent({{{amperes(a)}, {amperes(b)}, {amperes(c)}}}).base();
    const double expected = std::sqrt(std::max(0.0, a * a + b * b + c * c - a * b - b * c - c * a));
    RC_ASSERT(std::abs(neutral - expected) < 1e-6);
}

TEST(Imbalance, IsTheLargestDepartureFromTheMean) {
    EXPECT_NEAR(imbalance({amperes(90), amperes(100), amperes(110)}), 0.1, 1e-12);
    EXPECT_EQ(imbalance({amperes(5), amperes(5), amperes(5)}), 0);
    EXPECT_EQ(imbalance({}), 0);
    EXPECT_DOUBLE_EQ(imbalance({amperes(30), amperes(0), amperes(0)}), 2);
}

} // namespace
} // namespace loopwright::physics
