// SPDX-License-Identifier: GPL-3.0-or-later
//
// Common practice, no source: what a practised inspector says of loads and the devices that carry them, as
// far as physics and tables decide it. The multiples behind it come from the tables, with their own sources.
#include "core/overload/hidden_overload.h"
#include "core/physics/load.h"
#include "core/physics/overload.h"
#include "core/physics/time_current.h"
#include "core/reference/reference_tables.h"

#include <gtest/gtest.h>

namespace loopwright::published {
namespace {

class CommonPractice : public testing::Test {
  protected:
    ReferenceTables tables = ReferenceTables::builtIn();

    const DeviceFamily& family(std::string_view key) const { return *tables.deviceFamily(key); }
    physics::TimeBand band(std::string_view key, Current rated, Current current) const {
        return physics::operatingTime(tables.deviceTimes(family(key), rated)->value, current);
    }
};

TEST_F(CommonPractice, AHeaterOfEightAndAHalfKilowattsDraws35To36Amperes) {
    const Current current = physics::loadCurrent(kilowatts(8.5), volts(240), false);
    EXPECT_GE(current, amperes(35));
    EXPECT_LE(current, amperes(36));
}

TEST_F(CommonPractice, A30AmpereCartridgeFuseCarriesItWithNoOperationToCountOn) {
    const Current load = physics::loadCurrent(kilowatts(8.5), volts(240), false);
    const Current rated = amperes(30);
    EXPECT_NEAR(load / rated, 1.2, 0.03);
    for (const char* key : {"1361", "3036"}) { // in use when such heaters were wired
        const auto conventional = tables.conventionalCurrents(family(key), rated);
        ASSERT_TRUE(conventional);
        EXPECT_LT(load, physics::conventionalOperatingCurrent(rated, conventional->operatingMultiple)) << key;
        EXPECT_EQ(band(key, rated, load).latest.kind, physics::EdgeKind::Unlimited) << key;
    }
    const auto gg =
        band("88-2", amperes(32), load); // the nearest rating of today: below 1.25 I_n it must even hold out
    EXPECT_EQ(gg.latest.kind, physics::EdgeKind::Unlimited);
    EXPECT_GE(gg.earliest.time, hours(1));
}

TEST_F(CommonPractice, ATypeC50AmpereBreakerAt65AmperesIsBetweenItsConventionalCurrents) {
    const Current rated = amperes(50), load = amperes(65);
    const auto conventional = tables.conventionalCurrents(family("60898-C"), rated);
    ASSERT_TRUE(conventional && conventional->nonOperatingMultiple);
    EXPECT_GT(load, rated * *conventional->nonOperatingMultiple);
    EXPECT_LT(load, rated * conventional->operatingMultiple);
    const physics::TimeBand times = band("60898-C", rated, load);
    EXPECT_EQ(times.latest.kind, physics::EdgeKind::Unlimited) << "operation is not assured";
    EXPECT_LT(times.earliest.time, hours(1))
        << "non-operation is not assured for the conventional time either";
}

/// A load in runs on a device.
overload::HiddenOverload inRuns(const ReferenceTables& tables, std::string_view key, Current rated,
                                Current current, Time on, Time off) {
    const DeviceFamily& family = *tables.deviceFamily(key);
    const overload::Load load = overload::loadOf(std::vector{overload::Piece{current, 1, on, off}});
    return overload::answer({*tables.thermalDevice(family, rated), rated,
                             tables.instantaneousBand(family, rated), load, std::nullopt,
                             tables.band(Band::DeviceShift).value});
}

TEST_F(CommonPractice, ACartridgeFuseAt12TimesItsRatingIn5To10MinuteRunsGoesForYears) {
    for (const auto& [key, rated] :
         {std::pair("1361", 30.0), std::pair("88-2", 32.0), std::pair("88-3", 32.0),
          std::pair("60269-gG", 32.0), std::pair("3036", 30.0)})
        for (const double run : {5.0, 7.5, 10.0}) {
            const auto answer =
                inRuns(tables, key, amperes(rated), amperes(rated) * 1.2, minutes(run), minutes(50));
            EXPECT_TRUE(answer.isHidden()) << key << ", runs of " << run << " min";
            EXPECT_NE(answer.latest.operation, physics::Operation::Operates) << key;
            ASSERT_TRUE(answer.mustOperateAt) << key;
            EXPECT_GT(*answer.mustOperateAt, amperes(rated) * 1.5) << key;
        }
}

TEST_F(CommonPractice, ATypeC50AmpereBreakerAt65AmperesInShortRunsGoesForYearsAndThenOperatesWithLittleMore) {
    const Current rated = amperes(50), load = amperes(65);
    const auto answer = inRuns(tables, "60898-C", rated, load, minutes(4), minutes(16));
    EXPECT_TRUE(answer.isHidden());
    EXPECT_EQ(answer.latest.operation, physics::Operation::Never) << "a sound one may go for ever";
    EXPECT_TRUE(answer.earliest.operates()) << "and another sound one operates in a run";
    // After its element has aged it operates at a load that it carried when it was new.
    EXPECT_LT(answer.agedMayOperateAt, answer.mayOperateAt);
    EXPECT_TRUE(answer.agedEarliest.operates());
    EXPECT_LE(answer.agedEarliest.after, answer.earliest.after);
    // A slightly larger load in longer runs is sure to operate any of them.
    EXPECT_TRUE(inRuns(tables, "60898-C", rated, amperes(74), hours(2), minutes(16)).latest.operates());
}

TEST_F(CommonPractice, AFixedHeaterInThe16AmpereRangeOverloadsAPlugFuse) {
    const Current rated = amperes(13), load = physics::loadCurrent(kilowatts(3.6), volts(230), false);
    EXPECT_NEAR(load.base(), 16, 0.5);
    EXPECT_GT(load, rated);
    EXPECT_EQ(band("1362", rated, load).latest.kind, physics::EdgeKind::Unlimited)
        << "and the fuse need not clear it";
    const auto ratings = tables.ratings(family("1362"));
    EXPECT_EQ(ratings.back(), rated) << "there is no larger plug fuse";
}

} // namespace
} // namespace loopwright::published
