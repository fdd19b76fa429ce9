// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/adjustable_breaker.h"
#include "core/physics/inverse_time.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

RC_GTEST_PROP(InverseTime, MultipleAndTimeAreEachOthersConverse, ()) {
    const InverseCurve curve{seconds(*rc::gen::inRange(1, 1000) / 10.0), *rc::gen::inRange(2, 300) / 100.0};
    const double multiple = *rc::gen::inRange(11, 300) / 10.0, setting = *rc::gen::inRange(5, 100) / 100.0;
    const Time time = *inverseTime(curve, multiple, setting);
    RC_ASSERT(std::abs(inverseMultiple(curve, time, setting) / multiple - 1) < 1e-9);
}

TEST(InverseTime, NeverOperatesAtItsSetting) {
    EXPECT_FALSE(inverseTime({seconds(0.14), 0.02}, 1, 1));
    EXPECT_FALSE(inverseTime({seconds(0.14), 0.02}, 0.5, 1));
    EXPECT_EQ(inverseTime({seconds(13.5), 1}, 2, 0.5), seconds(6.75));
}

const BreakerSpreads spreads{{1.05, 1.3}, hours(2),   {0.8, 1.2},  {0.8, 1.2},
                             {0.5, 1.5},  {0.8, 1.2}, seconds(0.2)};

TEST(AdjustableBreaker, EverySettingIsPromisedWithinItsSpread) {
    const BreakerSettings settings{amperes(100), TimeCurrent{amperes(600), seconds(10)},
                                   TimeCurrent{amperes(1000), seconds(0.4)}, amperes(5000)};
    const DeviceTimes times = breakerTimes(settings, spreads);
    const auto at = [&](double current) { return operatingTime(times, amperes(current)); };
    EXPECT_EQ(at(105).earliest, (TimeEdge{EdgeKind::At, hours(2)}));
    EXPECT_EQ(at(130).latest, (TimeEdge{EdgeKind::At, hours(2)}));
    EXPECT_EQ(at(600).earliest, (TimeEdge{EdgeKind::At, seconds(8)}));
    EXPECT_EQ(at(600).latest, (TimeEdge{EdgeKind::At, seconds(12)}));
    EXPECT_EQ(at(1200).earliest, (TimeEdge{EdgeKind::Within, seconds(0.2)}));
    EXPECT_NEAR(at(1200).latest.time.base(), 0.6, 1e-12);
    EXPECT_FALSE(at(4001).earliest.isLimited()) << "it may operate at once";
    EXPECT_EQ(at(6000).latest, (TimeEdge{EdgeKind::At, seconds(0.2)}));
}

TEST(AdjustableBreaker, AQuickReleaseTakesThePromiseOfASlowOneAway) {
    // 600 A lies above what may operate the instantaneous release at 500 A.
    const BreakerSettings settings{amperes(100), TimeCurrent{amperes(600), seconds(10)}, std::nullopt,
                                   amperes(500)};
    const DeviceTimes times = breakerTimes(settings, spreads);
    EXPECT_FALSE(operatingTime(times, amperes(600)).earliest.isLimited());
    EXPECT_EQ(operatingTime(times, amperes(400)).earliest, (TimeEdge{EdgeKind::At, seconds(0.2)}));
}

TEST(AdjustableBreaker, WithoutQuickReleasesOnlyOverloadIsPromised) {
    const DeviceTimes times = breakerTimes({amperes(100), std::nullopt, std::nullopt, std::nullopt}, spreads);
    EXPECT_EQ(operatingTime(times, amperes(10000)).latest, (TimeEdge{EdgeKind::Within, hours(2)}));
}

RC_GTEST_PROP(AdjustableBreaker, EarliestIsNeverAfterLatest, ()) {
    BreakerSettings settings{amperes(*rc::gen::inRange(16, 1600)), std::nullopt, std::nullopt, std::nullopt};
    if (*rc::gen::arbitrary<bool>())
        settings.overloadTime = TimeCurrent{settings.overload * (*rc::gen::inRange(15, 80) / 10.0),
                                            seconds(*rc::gen::inRange(1, 30))};
    if (*rc::gen::arbitrary<bool>())
        settings.shortTime = TimeCurrent{settings.overload * (*rc::gen::inRange(15, 100) / 10.0),
                                         milliseconds(*rc::gen::inRange(50, 1000))};
    if (*rc::gen::arbitrary<bool>())
        settings.instantaneous = settings.overload * (*rc::gen::inRange(20, 150) / 10.0);
    const Current current = settings.overload * (*rc::gen::inRange(5, 3000) / 100.0);
    const TimeBand band = operatingTime(breakerTimes(settings, spreads), current);
    RC_LOG() << "I_r " << settings.overload.base() << " A at " << current.base() << " A\n";
    RC_ASSERT(
        (!band.earliest.isLimited() || !band.latest.isLimited() || band.earliest.time <= band.latest.time));
}

} // namespace
} // namespace loopwright::physics
