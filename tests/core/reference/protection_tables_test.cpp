// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/reference_tables.h"

#include <gmock/gmock.h>

namespace loopwright {
namespace {

const ReferenceTables& tables() {
    static const ReferenceTables builtIn = ReferenceTables::builtIn();
    return builtIn;
}

TEST(BreakerTables, AWarmerPlaceLeavesLessOfTheRating) {
    const auto factor = [](double rated, double calibrated, double ambient) {
        return tables().breakerAmbientFactor(amperes(rated), celsius(calibrated), celsius(ambient));
    };
    EXPECT_DOUBLE_EQ(factor(2, 30, 30)->value, 1);
    EXPECT_DOUBLE_EQ(factor(2, 30, 40)->value, 0.945);
    EXPECT_DOUBLE_EQ(factor(2, 30, 31)->value, 0.945) << "the warmer of two published ones";
    EXPECT_FALSE(factor(2, 30, 200)) << "nothing is published";
    EXPECT_FALSE(factor(17, 30, 40)) << "no such rating";
    EXPECT_FALSE(factor(2, 30, 40)->source.title.empty());
}

TEST(BreakerTables, TellWhereTheFiguresOfARatingEnd) {
    const auto warmest = [](double rated, double calibrated) {
        return tables().warmestAmbientFactor(amperes(rated), celsius(calibrated));
    };
    EXPECT_DOUBLE_EQ(warmest(2, 30)->value, 0.745) << "at 70 degC";
    EXPECT_DOUBLE_EQ(warmest(20, 30)->value, 0.85) << "at 55 degC";
    EXPECT_FALSE(warmest(32, 30)) << "only cool places are published for it";
    EXPECT_FALSE(warmest(17, 30)) << "no such rating";
    EXPECT_FALSE(warmest(2, 20)) << "no such calibration";
}

TEST(BreakerTables, OfAllRatingsTheStrictestCountsEachAtItsNextPlace) {
    const auto least = [](double warmer) { return tables().leastAmbientFactor(kelvins(warmer)); };
    EXPECT_DOUBLE_EQ(least(40)->value, 0.745);
    EXPECT_DOUBLE_EQ(least(5)->value, 0.9) << "one maker's next place is 15 K above";
    EXPECT_FALSE(least(41)) << "nothing is published";
    double before = 1;
    for (int warmer = 1; warmer <= 40; ++warmer) {
        EXPECT_LE(least(warmer)->value, before) << warmer << " K: a warmer place leaves no more";
        before = least(warmer)->value;
    }
    EXPECT_DOUBLE_EQ(tables().leastAmbientFactor().value, 0.745);

    const auto most = [](double cooler) { return tables().mostAmbientFactor(kelvins(cooler)); };
    EXPECT_DOUBLE_EQ(most(70)->value, 10.7 / 8) << "8 A at -40 degC";
    EXPECT_NEAR(most(30)->value, 1.15625, 1e-9) << "18.5 A of 16 A at 0 degC";
    EXPECT_NEAR(most(25)->value, 1.15625, 1e-9) << "of two places the cooler";
    EXPECT_FALSE(most(71)) << "nothing is published";
}

// IEC 60898-1: 30 degC. Fuses have none, and of adjustable breakers the maker says it.
TEST(BreakerTables, CalibrationGoesByTheStandard) {
    const auto calibrated = [](std::string_view key) {
        return tables().calibrationTemperature(*tables().deviceFamily(key));
    };
    for (const char* key : {"60898-B", "60898-C", "60898-D", "61009-B", "61009-C", "61009-D"}) {
        ASSERT_TRUE(calibrated(key)) << key;
        EXPECT_EQ(calibrated(key)->value, celsius(30)) << key;
    }
    EXPECT_FALSE(calibrated("60898-B")->source.fromMemory);
    EXPECT_EQ(calibrated("3871-2")->value, celsius(20));
    EXPECT_TRUE(calibrated("3871-2")->source.fromMemory);
    for (const char* key : {"60947-2", "60269-gG", "88-2", "88-3", "1361", "3036", "1362"})
        EXPECT_FALSE(calibrated(key)) << key;
}

TEST(BreakerTables, NeighboursTakeTheirShare) {
    EXPECT_EQ(tables().breakerGroupingFactor(1)->value, 1);
    EXPECT_EQ(tables().breakerGroupingFactor(3)->value, 0.9);
    EXPECT_EQ(tables().breakerGroupingFactor(100)->value, 0.75);
    EXPECT_FALSE(tables().breakerGroupingFactor(0));
}

TEST(BreakerTables, SpreadsOfAdjustableBreakers) {
    const auto small = tables().breakerSpreads(amperes(63)), large = tables().breakerSpreads(amperes(250));
    EXPECT_EQ(small.value.conventional.low, 1.05);
    EXPECT_EQ(small.value.conventional.high, 1.3);
    EXPECT_EQ(small.value.conventionalTime, hours(1));
    EXPECT_EQ(large.value.conventionalTime, hours(2));
    EXPECT_EQ(large.value.instantaneous.low, 0.8);
    EXPECT_EQ(large.value.instantaneous.high, 1.2);
    EXPECT_TRUE(large.source.fromMemory) << "the spread of its times is from memory";
}

TEST(BreakerTables, OverloadDialsGoUpToTheWholeRating) {
    const auto settings = tables().overloadSettings();
    ASSERT_GE(settings.size(), 2U);
    for (std::size_t i = 1; i < settings.size(); ++i)
        EXPECT_LT(settings[i - 1].value, settings[i].value);
    EXPECT_GT(settings.front().value, 0);
    EXPECT_EQ(settings.back().value, 1);
    for (const auto& setting : settings)
        EXPECT_TRUE(setting.source.fromMemory) << setting.value << ": no standard says where they stand";
}

TEST(BreakerTables, CurvesOfRelays) {
    const auto curves = tables().inverseCurves();
    ASSERT_GE(curves.size(), 3U);
    EXPECT_EQ(curves[0].key, "standard-inverse");
    // Motor relay commissioning manual, p. 265: at twice the setting.
    EXPECT_NEAR(physics::inverseTime(curves[0].curve, 2, 1)->base(), 10.03, 0.005);
    EXPECT_NEAR(physics::inverseTime(curves[1].curve, 2, 1)->base(), 13.5, 0.005);
    EXPECT_NEAR(physics::inverseTime(curves[2].curve, 2, 1)->base(), 26.67, 0.005);
}

TEST(SelectivityTables, EnergiesBelongToFuseLinksWithGates) {
    EXPECT_FALSE(tables().fuseEnergy(*tables().deviceFamily("60898-B"), amperes(16)));
    EXPECT_TRUE(tables().fuseEnergy(*tables().deviceFamily("60269-gG"), amperes(16)));
    EXPECT_EQ(tables().selectiveFuseRatio().value, 1.6);
    EXPECT_EQ(tables().selectiveResidualRatio().value, 3);
}

TEST(DemandTables, EveryKindOfPremisesAndLoadIsNamedOnce) {
    EXPECT_THAT(tables().allowancePremises(),
                testing::ElementsAre("household", "shop-or-office", "hotel-or-guest-house"));
    EXPECT_EQ(tables().allowanceLoads().size(), 10U);
    EXPECT_FALSE(tables().allowance("household", "motors-other-than-lifts")) << "no allowance is published";
    EXPECT_FALSE(tables().allowance("castle", "lighting"));
}

TEST(DemandTables, ADwellingByItsBreakers) {
    // Trade portal, question of the day: two rings, two lighting circuits, a water heater, a cooker with
    // socket.
    const auto after = [](std::string_view load, std::vector<Current> currents, bool socket = false) {
        return physics::demand(currents, tables().allowance("household", load)->value, socket).base();
    };
    EXPECT_NEAR(after("standard-final-circuits", {amperes(32), amperes(32)}), 44.8, 1e-9);
    EXPECT_NEAR(after("lighting", {amperes(6), amperes(6)}), 7.92, 1e-9);
    EXPECT_NEAR(after("thermostatic-water-heaters", {amperes(16)}), 16, 1e-9);
    EXPECT_NEAR(after("cooking-appliances", {amperes(32)}, true), 21.6, 1e-9);
}

TEST(DemandTables, ManyAlikeReachTheirDemandTogetherLessAndLess) {
    EXPECT_EQ(tables().simultaneityFactor("flats", 25)->value, 0.46);
    EXPECT_EQ(tables().simultaneityFactor("flats", 500)->value, 0.4);
    EXPECT_FALSE(tables().simultaneityFactor("flats", 1)) << "one has no share";
    for (const char* kind : {"flats", "outgoing-circuits"}) {
        double before = 1;
        for (int count = 2; count < 100; ++count) {
            const auto factor = tables().simultaneityFactor(kind, count);
            ASSERT_TRUE(factor) << kind << " " << count;
            EXPECT_LE(factor->value, before) << kind << " " << count;
            before = factor->value;
        }
    }
}

} // namespace
} // namespace loopwright
