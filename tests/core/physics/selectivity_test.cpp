// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/selectivity.h"

#include "core/physics/residual.h"
#include "core/reference/reference_tables.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

namespace loopwright::physics {
namespace {

TEST(FuseSelectivity, PreferredRatingsTwoStepsApartStandInTheRatio) {
    EXPECT_TRUE(fusesSelectiveByRatio(amperes(100), amperes(63), 1.6)) << "1.587";
    EXPECT_TRUE(fusesSelectiveByRatio(amperes(25), amperes(16), 1.6)) << "1.5625";
    EXPECT_FALSE(fusesSelectiveByRatio(amperes(80), amperes(63), 1.6));
    EXPECT_FALSE(fusesSelectiveByRatio(amperes(63), amperes(100), 1.6));
}

/// The table is made so that every rating from 16 A on is selective to the one two steps below.
TEST(FuseSelectivity, RatioAndEnergySayTheSameOfEveryPairInTheTable) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    const DeviceFamily& family = *tables.deviceFamily("60269-gG");
    for (const Current upstream : tables.ratings(family))
        for (const Current downstream : tables.ratings(family)) {
            const auto above = tables.fuseEnergy(family, upstream),
                       below = tables.fuseEnergy(family, downstream);
            if (!above || !below || downstream < amperes(16)) continue;
            EXPECT_EQ(fusesSelectiveByRatio(upstream, downstream, tables.selectiveFuseRatio().value),
                      selectiveByEnergy(above->value.leastToMelt, below->value.mostLetThrough))
                << upstream.base() << " A above " << downstream.base() << " A";
        }
}

const DeviceTimes upstream{
    {{amperes(100), hours(1)}, {amperes(500), seconds(1)}, {amperes(2000), seconds(0.1)}}, {}, {}};

TEST(BandSelectivity, HoldsWhereTheLatestBelowIsNotAfterTheEarliestAbove) {
    const DeviceTimes downstream{
        {}, {{amperes(60), hours(1)}, {amperes(300), seconds(0.5)}, {amperes(800), seconds(0.1)}}, {}};
    EXPECT_THAT(provenSelectivity(upstream, downstream),
                testing::ElementsAre(CurrentRange{amperes(60), amperes(100)},
                                     CurrentRange{amperes(300), amperes(500)},
                                     CurrentRange{amperes(800), amperes(2000)}));
}

TEST(BandSelectivity, BeginsInsideACurve) {
    // The time falls by three decades while the current rises by one: 1 s at 431 A, 0.1 s at 928 A.
    const DeviceTimes downstream{{}, {}, {{amperes(200), seconds(10)}, {amperes(2000), seconds(0.01)}}};
    const auto ranges = provenSelectivity(upstream, downstream);
    ASSERT_EQ(ranges.size(), 2U);
    EXPECT_NEAR(ranges[0].above.base(), 200 * std::cbrt(10), 1e-6);
    EXPECT_EQ(ranges[0].upTo, amperes(500));
    EXPECT_NEAR(ranges[1].above.base(), 200 * std::cbrt(100), 1e-6);
    EXPECT_EQ(ranges[1].upTo, amperes(2000));
}

TEST(BandSelectivity, NothingPublishedProvesNothing) {
    EXPECT_THAT(provenSelectivity({}, upstream), testing::IsEmpty());
    EXPECT_THAT(provenSelectivity(upstream, {}), testing::IsEmpty());
}

RC_GTEST_PROP(BandSelectivity, InsideARangeTheBandsDoNotTouchAndOutsideTheyDo, ()) {
    static const ReferenceTables tables = ReferenceTables::builtIn();
    const auto families = tables.deviceFamilies();
    const auto any = [&] {
        const DeviceFamily& family = families[*rc::gen::inRange<std::size_t>(0, families.size())];
        const auto ratings = tables.ratings(family);
        RC_PRE(!ratings.empty()); // an adjustable one operates by its settings
        const Current rated = ratings[*rc::gen::inRange<std::size_t>(0, ratings.size())];
        RC_LOG() << family.key << " " << rated.base() << " A\n";
        return tables.deviceTimes(family, rated)->value;
    };
    const DeviceTimes above = any(), below = any();
    const Current current = amperes(std::pow(10, *rc::gen::inRange(0, 4000) / 1000.0));
    bool inside = false, atEdge = false;
    for (const CurrentRange& range : provenSelectivity(above, below)) {
        inside |= range.above < current && current <= range.upTo;
        atEdge |= std::abs(range.above / current - 1) < 1e-9 || std::abs(range.upTo / current - 1) < 1e-9;
    }
    const TimeEdge earliest = operatingTime(above, current).earliest,
                   latest = operatingTime(below, current).latest;
    const bool separate = earliest.isLimited() && latest.isLimited() && latest.time <= earliest.time;
    RC_LOG() << "at " << current.base() << " A\n";
    RC_ASSERT((atEdge || inside == separate));
}

TEST(BandSelectivity, RangesThatTouchAreOne) {
    const std::vector<CurrentRange> ranges{{amperes(60), amperes(100)}, {amperes(300), amperes(500)}};
    EXPECT_THAT(joined(ranges, {amperes(0), amperes(80)}),
                testing::ElementsAre(CurrentRange{amperes(0), amperes(100)},
                                     CurrentRange{amperes(300), amperes(500)}));
    EXPECT_THAT(joined(ranges, {amperes(100), amperes(900)}),
                testing::ElementsAre(CurrentRange{amperes(60), amperes(900)}));
}

TEST(BandSelectivity, ReachesOnlyWhatBeginsBelowTheCurrentThatMayFlow) {
    const DeviceTimes downstream{{}, {{amperes(60), hours(1)}, {amperes(300), seconds(0.5)}}, {}};
    EXPECT_EQ(provenUpTo(upstream, downstream), amperes(500));
    EXPECT_EQ(provenUpTo(upstream, downstream, amperes(301)), amperes(500));
    EXPECT_EQ(provenUpTo(upstream, downstream, amperes(299)), amperes(100));
}

TEST(FuseSelectivity, AFuseIsWithinAnEnergyFromAPromiseOn) {
    const DeviceTimes fuse{{}, {{amperes(100), seconds(5)}, {amperes(300), seconds(0.1)}}, {}};
    EXPECT_EQ(fuseWithinEnergy(fuse, JouleIntegral(9001)), amperes(300));
    EXPECT_EQ(fuseWithinEnergy(fuse, JouleIntegral(50000)), amperes(100));
    EXPECT_EQ(fuseWithinEnergy(fuse, JouleIntegral(8999)), std::nullopt);
}

TEST(ResidualSelectivity, NeedsDelayAndThreeTimes) {
    EXPECT_TRUE(residualDevicesSelective(milliamperes(100), true, milliamperes(30), 3));
    EXPECT_FALSE(residualDevicesSelective(milliamperes(100), false, milliamperes(30), 3));
    EXPECT_FALSE(residualDevicesSelective(milliamperes(30), true, milliamperes(30), 3));
}

TEST(BandSelectivity, ReachesAsFarAsItsLastRange) {
    const ReferenceTables tables = ReferenceTables::builtIn();
    std::size_t proven = 0;
    for (const DeviceFamily& above : tables.deviceFamilies())
        for (const Current upstreamRating : tables.ratings(above)) {
            const auto first = tables.deviceTimes(above, upstreamRating);
            for (const char* below : {"60898-B", "60898-D", "60269-gG", "1361", "3036"})
                for (const Current rating : tables.ratings(*tables.deviceFamily(below))) {
                    const auto second = tables.deviceTimes(*tables.deviceFamily(below), rating);
                    if (!first || !second) continue;
                    const auto ranges = provenSelectivity(first->value, second->value);
                    const auto last = provenUpTo(first->value, second->value);
                    EXPECT_EQ(last, ranges.empty() ? std::nullopt : std::optional(ranges.back().upTo))
                        << above.key << " " << upstreamRating.base() << " above " << below << " "
                        << rating.base();
                    proven += last.has_value();
                }
        }
    EXPECT_GT(proven, 1000U);
}

} // namespace
} // namespace loopwright::physics
