// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/time_current.h"

#include "core/reference/reference_tables.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

/// A device with promises on each side and a curve of two points.
const DeviceTimes simple{{{amperes(20), hours(1)}, {amperes(50), seconds(1)}},
                         {{amperes(30), hours(1)}},
                         {{amperes(100), seconds(5)}, {amperes(200), seconds(0.5)}}};

TEST(CurrentForTime, APublishedTimeHasItsPublishedCurrents) {
    const CurrentBand hour = currentForTime(simple, hours(1));
    EXPECT_EQ(hour.holds, (CurrentEdge{EdgeKind::At, amperes(20)}));
    EXPECT_EQ(hour.operates, (CurrentEdge{EdgeKind::At, amperes(30)}));
    EXPECT_EQ(currentForTime(simple, seconds(5)).operates, (CurrentEdge{EdgeKind::At, amperes(100)}));
}

TEST(CurrentForTime, ALongerTimeNeedsNoMoreCurrent) {
    EXPECT_EQ(currentForTime(simple, hours(2)).operates, (CurrentEdge{EdgeKind::Within, amperes(30)}));
    EXPECT_EQ(currentForTime(simple, minutes(1)).operates, (CurrentEdge{EdgeKind::Within, amperes(100)}));
    EXPECT_EQ(currentForTime(simple, minutes(1)).holds, (CurrentEdge{EdgeKind::Within, amperes(20)}));
    EXPECT_FALSE(currentForTime(simple, hours(2)).holds.isLimited()) << "it may operate in the second hour";
}

TEST(CurrentForTime, IsInterpolatedOnLogarithmicScales) {
    const CurrentEdge edge = currentForTime(simple, seconds(5 / std::sqrt(10))).operates;
    EXPECT_EQ(edge.kind, EdgeKind::At);
    EXPECT_NEAR(edge.current.base(), 100 * std::sqrt(2), 1e-9);
}

TEST(CurrentForTime, NothingIsExtrapolated) {
    EXPECT_FALSE(currentForTime(simple, seconds(0.4)).operates.isLimited());
    EXPECT_FALSE(currentForTime({}, seconds(1)).operates.isLimited());
    EXPECT_FALSE(currentForTime({}, seconds(1)).holds.isLimited());
}

/// The two directions agree at every family, rating and time: what is sure to operate by a time does so, and
/// what holds out for it does so.
RC_GTEST_PROP(CurrentForTimeOfEveryFamily, AgreesWithTheTimeOfThatCurrent, ()) {
    static const ReferenceTables tables = ReferenceTables::builtIn();
    const auto families = tables.deviceFamilies();
    const DeviceFamily& family = families[*rc::gen::inRange<std::size_t>(0, families.size())];
    const auto ratings = tables.ratings(family);
    RC_PRE(!ratings.empty()); // an adjustable one operates by its settings
    const Current rated = ratings[*rc::gen::inRange<std::size_t>(0, ratings.size())];
    const DeviceTimes times = tables.deviceTimes(family, rated)->value;
    const Time time = seconds(std::pow(10, *rc::gen::inRange(-2000, 5000) / 1000.0));
    RC_LOG() << family.key << " " << rated.base() << " A in " << time.base() << " s\n";
    const CurrentBand band = currentForTime(times, time);
    if (band.operates.isLimited()) {
        const TimeEdge latest = operatingTime(times, band.operates.current * (1 + 1e-12)).latest;
        RC_ASSERT(latest.isLimited());
        RC_ASSERT(latest.time.base() <= time.base() * (1 + 1e-9));
        const TimeEdge below = operatingTime(times, band.operates.current * (1 - 1e-6)).latest;
        RC_ASSERT((!below.isLimited() || below.time.base() >= time.base() * (1 - 1e-9)));
    }
    if (band.holds.isLimited()) {
        const TimeEdge earliest = operatingTime(times, band.holds.current).earliest;
        RC_ASSERT(earliest.isLimited());
        RC_ASSERT(earliest.time >= time);
        const TimeEdge above = operatingTime(times, band.holds.current * (1 + 1e-9)).earliest;
        RC_ASSERT((!above.isLimited() || above.time < time));
    }
    if (band.holds.isLimited() && band.operates.isLimited())
        RC_ASSERT(band.holds.current <= band.operates.current);
}

} // namespace
} // namespace loopwright::physics
