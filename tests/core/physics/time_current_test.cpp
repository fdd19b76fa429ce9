// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/time_current.h"

#include "core/reference/reference_tables.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::physics {
namespace {

/// A device with one promise on each side and a curve of two points.
const DeviceTimes simple{{{amperes(20), hours(1)}, {amperes(50), seconds(1)}},
                         {{amperes(30), hours(1)}},
                         {{amperes(100), seconds(5)}, {amperes(200), seconds(0.5)}}};

TEST(OperatingTime, BelowEveryPromiseItMayNeverOperate) {
    const TimeBand band = operatingTime(simple, amperes(10));
    EXPECT_EQ(band.earliest, (TimeEdge{EdgeKind::Within, hours(1)}));
    EXPECT_FALSE(band.latest.isLimited());
}

TEST(OperatingTime, APromiseHoldsOnItsFarSideToo) {
    EXPECT_EQ(operatingTime(simple, amperes(20)).earliest, (TimeEdge{EdgeKind::At, hours(1)}));
    EXPECT_EQ(operatingTime(simple, amperes(21)).earliest, (TimeEdge{EdgeKind::Within, seconds(1)}));
    EXPECT_FALSE(operatingTime(simple, amperes(51)).earliest.isLimited()) << "it may operate at once";
    EXPECT_EQ(operatingTime(simple, amperes(30)).latest, (TimeEdge{EdgeKind::At, hours(1)}));
    EXPECT_EQ(operatingTime(simple, amperes(99)).latest, (TimeEdge{EdgeKind::Within, hours(1)}));
}

TEST(OperatingTime, BetweenTwoPointsOfACurveItIsInterpolatedOnLogarithmicScales) {
    const TimeEdge edge = operatingTime(simple, amperes(100 * std::sqrt(2))).latest;
    EXPECT_EQ(edge.kind, EdgeKind::At);
    EXPECT_NEAR(edge.time.base(), 5 / std::sqrt(10), 1e-9); // half way on both scales
}

TEST(OperatingTime, PastTheLastPointNothingIsExtrapolated) {
    EXPECT_EQ(operatingTime(simple, amperes(5000)).latest, (TimeEdge{EdgeKind::Within, seconds(0.5)}));
}

TEST(OperatingTime, WithoutAnythingPublishedNothingIsPromised) {
    const TimeBand band = operatingTime(DeviceTimes{}, amperes(100));
    EXPECT_FALSE(band.earliest.isLimited());
    EXPECT_FALSE(band.latest.isLimited());
}

TEST(LargestFuseEnergy, FallsOrStaysAsTheCurrentRises) {
    EXPECT_FALSE(largestFuseEnergy(simple, amperes(10))) << "nothing is promised";
    EXPECT_DOUBLE_EQ(largestFuseEnergy(simple, amperes(100))->base(), 100.0 * 100 * 5);
    EXPECT_DOUBLE_EQ(largestFuseEnergy(simple, amperes(200))->base(), 200.0 * 200 * 0.5);
    EXPECT_DOUBLE_EQ(largestFuseEnergy(simple, amperes(2000))->base(), 200.0 * 200 * 0.5);
}

/// Families of the tables, and a current between a tenth and a hundred times a known rating.
struct Case {
    const DeviceFamily* family;
    Current rated;
    DeviceTimes times;
};

Case anyCase(const ReferenceTables& tables) {
    std::vector<const DeviceFamily*> rateds; // an adjustable one operates by its settings
    for (const DeviceFamily& each : tables.deviceFamilies())
        if (!each.adjustable) rateds.push_back(&each);
    const DeviceFamily& family = *rateds[*rc::gen::inRange<std::size_t>(0, rateds.size())];
    const auto ratings = tables.ratings(family);
    const Current rated = ratings[*rc::gen::inRange<std::size_t>(0, ratings.size())];
    return {&family, rated, tables.deviceTimes(family, rated)->value};
}

Current anyCurrent(Current rated) {
    return rated * (*rc::gen::inRange(10, 10000) / 100.0);
}

/// The longest time that an edge allows, for comparison.
double longest(const TimeEdge& latest) {
    return latest.isLimited() ? latest.time.base() : std::numeric_limits<double>::infinity();
}
/// The shortest.
double shortest(const TimeEdge& earliest) {
    return earliest.isLimited() ? earliest.time.base() : 0;
}

RC_GTEST_PROP(OperatingTimeOfEveryFamily, EarliestIsNotAfterLatest, ()) {
    static const ReferenceTables tables = ReferenceTables::builtIn();
    const Case device = anyCase(tables);
    const Current current = anyCurrent(device.rated);
    RC_LOG() << device.family->key << " " << device.rated.base() << " A at " << current.base() << " A\n";
    const TimeBand band = operatingTime(device.times, current);
    RC_ASSERT(shortest(band.earliest) <= longest(band.latest));
}

RC_GTEST_PROP(OperatingTimeOfEveryFamily, TimeFallsAsCurrentRises, ()) {
    static const ReferenceTables tables = ReferenceTables::builtIn();
    const Case device = anyCase(tables);
    const Current one = anyCurrent(device.rated), other = anyCurrent(device.rated);
    const TimeBand low = operatingTime(device.times, std::min(one, other));
    const TimeBand high = operatingTime(device.times, std::max(one, other));
    RC_LOG() << device.family->key << " " << device.rated.base() << " A at " << one.base() << " and "
             << other.base() << " A\n";
    RC_ASSERT(shortest(low.earliest) >= shortest(high.earliest));
    RC_ASSERT(longest(low.latest) >= longest(high.latest));
}

/// The same, at every published point and on both sides of it, where it would break first.
TEST(OperatingTimeOfEveryFamilyAtItsPoints, BandIsAscendingInTimeAndFallingInCurrent) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    for (const DeviceFamily& family : tables.deviceFamilies())
        for (const Current rated : tables.ratings(family)) {
            const DeviceTimes times = tables.deviceTimes(family, rated)->value;
            std::vector<Current> currents;
            for (const auto* list : {&times.notBefore, &times.operatedBy, &times.curve})
                for (const TimeCurrent& point : *list)
                    for (const double nudge : {0.999, 1.0, 1.001})
                        currents.push_back(point.current * nudge);
            std::ranges::sort(currents);
            double shortestBefore = std::numeric_limits<double>::infinity(), longestBefore = shortestBefore;
            for (const Current current : currents) {
                const TimeBand band = operatingTime(times, current);
                const double early = shortest(band.earliest), late = longest(band.latest);
                EXPECT_LE(early, late)
                    << family.key << " " << rated.base() << " A at " << current.base() << " A";
                EXPECT_LE(early, shortestBefore)
                    << family.key << " " << rated.base() << " A at " << current.base() << " A";
                EXPECT_LE(late, longestBefore)
                    << family.key << " " << rated.base() << " A at " << current.base() << " A";
                shortestBefore = early;
                longestBefore = late;
            }
        }
}

} // namespace
} // namespace loopwright::physics
