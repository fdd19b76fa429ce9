// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/load.h"

#include "core/physics/thermal_replica.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::overload {
namespace {

Piece piece(double current, double on, double off, double count = 1) {
    return {amperes(current), count, minutes(on), minutes(off)};
}
Piece steady(double current) {
    return {amperes(current), 1, std::nullopt, {}};
}
std::string told(const Steps& steps) {
    std::string text;
    for (const physics::DutyStep& step : steps)
        text +=
            std::to_string(step.current.base()) + " A for " + std::to_string(step.duration.base()) + " s; ";
    return text;
}

TEST(Load, OnePieceRunsAndRests) {
    const Load load = loadOf(std::vector{piece(41.7, 25, 35)});
    ASSERT_EQ(load.together.size(), 2U) << told(load.together);
    EXPECT_EQ(load.together[0].current, amperes(41.7)) << "begins with its run";
    EXPECT_EQ(load.together[0].duration, minutes(25));
    EXPECT_EQ(load.together[1].duration, minutes(35));
    EXPECT_FALSE(load.isAligned);
    EXPECT_FALSE(load.isSteady);
    EXPECT_NEAR(load.rms.base(), 41.7 * std::sqrt(25 / 60.0), 1e-9);
    const Stretch stretch = stretchAbove(load.together, amperes(30));
    EXPECT_EQ(stretch.above, minutes(25));
    EXPECT_EQ(stretch.period, minutes(60));
}

TEST(Load, WithoutRestItIsSteady) {
    for (const Piece& each : {steady(20), piece(20, 10, 0)}) {
        const Load load = loadOf(std::vector{each});
        EXPECT_TRUE(load.isSteady);
        EXPECT_EQ(load.together.size(), 1U);
        EXPECT_EQ(load.peak, amperes(20));
        EXPECT_EQ(load.rms, amperes(20));
    }
    EXPECT_EQ(loadOf({}).peak, Current());
    EXPECT_TRUE(loadOf({}).isSteady);
}

TEST(Load, RunsThatEndTogetherWarmMost) {
    // 6 min in 15 and 4 min in 10: common after 30 min; both run for 4 min before the end.
    const Load load = loadOf(std::vector{piece(40, 6, 9), piece(25, 4, 6)});
    EXPECT_TRUE(load.isAligned);
    EXPECT_EQ(load.peak, amperes(65));
    EXPECT_NEAR(physics::lengthOf(load.together).base(), 1800, 1e-6) << told(load.together);
    EXPECT_NEAR(stretchAbove(load.together, amperes(50)).above.base(), 300, 1e-6) << told(load.together);
    ASSERT_EQ(load.apart.size(), 2U);
    EXPECT_EQ(load.apart[0][0].current, amperes(40));
    EXPECT_EQ(load.apart[1][0].current, amperes(25));
}

TEST(Load, TheLongestRunIsOneStretchAndNoSum) {
    // Both end together once an hour: 20 A comes back every 10 min for 5 while 25 A runs for 30.
    const Load load = loadOf(std::vector{piece(20, 5, 5), piece(25, 30, 30)});
    EXPECT_NEAR(stretchAbove(load.together, amperes(32)).above.base(), 900, 1e-6) << told(load.together);
    EXPECT_NEAR(longestAbove(load.together, amperes(32)).base(), 300, 1e-6) << told(load.together);
    const Steps wraps{{amperes(40), minutes(2)}, {amperes(0), minutes(5)}, {amperes(40), minutes(3)}};
    EXPECT_EQ(longestAbove(wraps, amperes(32)), minutes(5));
    EXPECT_EQ(longestAbove({{amperes(40), minutes(2)}, {amperes(50), minutes(3)}}, amperes(32)), minutes(5));
    EXPECT_EQ(longestAbove(wraps, amperes(40)), Time());
}

TEST(Load, MayBeginWithAllRunsTogether) {
    const Load load = loadOf(std::vector{piece(20, 10, 10), piece(25, 7, 23)});
    bool togetherAtFirst = false, longest = false;
    for (const Steps& steps : beginningsOf(load)) {
        EXPECT_NEAR(physics::lengthOf(steps).base(), physics::lengthOf(load.together).base(), 1e-6);
        togetherAtFirst = togetherAtFirst || steps.front().current == amperes(45);
        longest = longest ||
                  (steps.size() > 1 && steps[0].current == amperes(45) && steps[1].current == amperes(20));
    }
    EXPECT_TRUE(togetherAtFirst) << told(load.together);
    EXPECT_TRUE(longest) << "begin together: the longer run goes on alone";
    EXPECT_EQ(beginningsOf(loadOf(std::vector{piece(20, 10, 10)})).size(), 1U);
}

TEST(Load, WhatNobodyKnowsTheDutyOfMayRunWithoutEndAndIsSureOfNothing) {
    const Load alone = loadOf(std::vector{Piece{amperes(48), 1, std::nullopt, minutes(10), true}});
    EXPECT_TRUE(alone.isDutyUnknown);
    EXPECT_EQ(alone.peak, amperes(48));
    EXPECT_EQ(alone.together.front().current, amperes(48));
    ASSERT_EQ(alone.apart.size(), 1U);
    EXPECT_EQ(alone.apart[0][0].current, Current()) << told(alone.apart[0]);
    const Load beside =
        loadOf(std::vector{Piece{amperes(48), 1, minutes(5), {}, true}, steady(3), piece(20, 10, 10)});
    EXPECT_EQ(beside.peak, amperes(71));
    ASSERT_EQ(beside.apart.size(), 1U);
    EXPECT_EQ(beside.apart[0][0].current, amperes(23)) << told(beside.apart[0]);
    EXPECT_FALSE(loadOf(std::vector{steady(20)}).isDutyUnknown);
}

TEST(Load, IndependentRunsAddUpByChance) {
    const std::vector pieces{piece(40, 6, 9), piece(25, 4, 6)};
    EXPECT_NEAR(shareAbove(pieces, amperes(50)).value(), 0.4 * 0.4, 1e-12);
    EXPECT_NEAR(shareAbove(pieces, amperes(30)).value(), 0.4, 1e-12);
    EXPECT_FALSE(shareAbove(std::vector{piece(1, 1, 1, 40)}, amperes(50)));
    // Two pieces of 10 A, half of the time each: 0, 10 or 20 A; the mean of I2 is 150 A2.
    EXPECT_NEAR(loadOf(std::vector{piece(10, 5, 5, 2)}).rms.base(), std::sqrt(150.0), 1e-9);
}

TEST(Load, HoweverManyPiecesAndHoweverOddTheirRunsTheWorkIsBounded) {
    std::vector<Piece> pieces;
    for (int i = 0; i < 1'000'000; ++i)
        pieces.push_back({amperes(0.001), 1, seconds(1 + i % 977), seconds(3 + i % 1013)});
    pieces.push_back({amperes(5), 1e6, seconds(1e-9), seconds(3e7)});
    pieces.push_back({amperes(5), 1, seconds(3e7), seconds(1e-9)});
    const Load load = loadOf(pieces);
    EXPECT_LT(load.together.size(), 120U);
    EXPECT_LT(load.apart.size(), 20U);
    for (const physics::DutyStep& step : load.together)
        EXPECT_GT(step.duration, Time());
}

std::vector<Piece> anyPieces() {
    std::vector<Piece> pieces;
    for (int count = *rc::gen::inRange(1, 4); count > 0; --count)
        pieces.push_back(piece(*rc::gen::inRange(1, 40), *rc::gen::inRange(1, 12), *rc::gen::inRange(0, 12),
                               *rc::gen::inRange(1, 3)));
    return pieces;
}

double settledPeak(const Steps& cycle, Time constant) {
    return physics::limitCycle(physics::replicaOf({amperes(20), constant}), cycle)->peak;
}

RC_GTEST_PROP(Load, TogetherIsNeverCoolerThanApart, ()) {
    const Load load = loadOf(anyPieces());
    for (const Time constant : {seconds(20), minutes(5), hours(1)})
        for (const Steps& alone : load.apart)
            RC_ASSERT(settledPeak(load.together, constant) >= settledPeak(alone, constant) * (1 - 1e-9));
    RC_ASSERT(load.rms <= load.peak * (1 + 1e-12));
}

RC_GTEST_PROP(Load, MoreCurrentIsNeverCooler, ()) {
    std::vector<Piece> pieces = anyPieces();
    const double before = settledPeak(loadOf(pieces).together, minutes(4));
    Piece& raised = pieces[*rc::gen::inRange<std::size_t>(0, pieces.size())];
    raised.each = raised.each * (1 + *rc::gen::inRange(0, 100) / 50.0);
    RC_ASSERT(settledPeak(loadOf(pieces).together, minutes(4)) >= before * (1 - 1e-9));
}

} // namespace
} // namespace loopwright::overload
