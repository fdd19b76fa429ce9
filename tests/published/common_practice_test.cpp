// SPDX-License-Identifier: GPL-3.0-or-later
//
// Common practice, no source: what a practised inspector says of loads and the devices that carry them, as
// far as physics and tables decide it. The multiples behind it come from the tables, with their own sources.
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
