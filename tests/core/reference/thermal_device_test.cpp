// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

#include <gtest/gtest.h>

#include <array>
#include <thread>

namespace loopwright {
namespace {

using physics::Elements;

const DeviceFamily& family(std::string_view key) {
    return *test::tables().deviceFamily(key);
}

TEST(ThermalDevice, OfEveryRatingThereAreEarlyOnesAndWhereSomethingAssuresOperationLateOnes) {
    for (const DeviceFamily& each : test::tables().deviceFamilies())
        for (const Current rated : test::tables().ratings(each)) {
            SCOPED_TRACE(each.key + " " + std::to_string(rated.base()) + " A");
            const ThermalDevice* device = test::tables().thermalDevice(each, rated);
            ASSERT_NE(device, nullptr);
            EXPECT_EQ(device->limits.carries, rated);
            EXPECT_FALSE(device->replicas.early.empty()) << "the limits contradict each other";
            const bool mustOperate = !device->limits.operatedBy.empty() || device->limits.warm;
            EXPECT_EQ(device->replicas.late.empty(), !mustOperate);
            EXPECT_FALSE(device->source.title.empty());
            for (const physics::ThermalReplica& replica : device->replicas.early)
                EXPECT_GE(replica.reference, rated) << "carries its rated current for ever";
        }
}

TEST(ThermalDevice, ABreakerHasAWarmTestAndAFuseHasNone) {
    const ThermalDevice& breaker = *test::tables().thermalDevice(family("60898-B"), amperes(16));
    EXPECT_EQ(breaker.elements, Elements::Two);
    ASSERT_TRUE(breaker.limits.warm);
    EXPECT_EQ(breaker.limits.warm->before.current, amperes(16) * 1.13);
    EXPECT_EQ(breaker.limits.warm->before.time, hours(1));
    EXPECT_EQ(breaker.limits.warm->operatedBy.current, amperes(16) * 1.45);
    EXPECT_EQ(breaker.limits.warm->operatedBy.time, hours(1));
    EXPECT_EQ(breaker.limits.notBefore.size(), 2U) << "1.13 I_n for an hour, 2.55 I_n for a second";
    EXPECT_EQ(breaker.limits.operatedBy.size(), 1U) << "2.55 I_n; the instantaneous tests are not thermal";
    const ThermalDevice& large = *test::tables().thermalDevice(family("60898-C"), amperes(80));
    EXPECT_EQ(large.limits.operatedBy.front().time, seconds(120)) << "above 32 A";
    EXPECT_EQ(large.limits.warm->operatedBy.time, hours(2)) << "above 63 A";

    const ThermalDevice& fuse = *test::tables().thermalDevice(family("60269-gG"), amperes(32));
    EXPECT_EQ(fuse.elements, Elements::Two);
    EXPECT_FALSE(fuse.limits.warm);
    EXPECT_GE(fuse.limits.notBefore.size(), 3U) << "1.25 I_n and two gates";
    EXPECT_GE(fuse.limits.operatedBy.size(), 3U);
}

TEST(ThermalDevice, WhatIsNotLimitedStaysOpen) {
    const ThermalDevice& old = *test::tables().thermalDevice(family("3871-1"), amperes(20));
    EXPECT_FALSE(old.holdsOut()) << "nothing says how long it holds out above its rating";
    EXPECT_TRUE(old.replicas.late.empty()) << "no time goes with its operating current";
    const ThermalDevice& fuse = *test::tables().thermalDevice(family("1361"), amperes(30));
    EXPECT_FALSE(fuse.holdsOut());
    EXPECT_FALSE(fuse.replicas.late.empty());
    EXPECT_TRUE(test::tables().thermalDevice(family("1362"), amperes(13))->holdsOut());
}

TEST(ThermalDevice, AnAdjustableBreakerGoesByItsSettings) {
    const DeviceFamily& adjustable = family("60947-2");
    const ThermalDevice& set = *test::tables().thermalDevice(adjustable, amperes(160), seconds(16));
    EXPECT_TRUE(set.limits.warm);
    EXPECT_FALSE(set.limits.operatedBy.empty());
    EXPECT_FALSE(set.replicas.early.empty());
    EXPECT_FALSE(set.replicas.late.empty());
    const ThermalDevice& undelayed = *test::tables().thermalDevice(adjustable, amperes(160));
    EXPECT_TRUE(undelayed.limits.operatedBy.empty());
    EXPECT_NE(&set, &undelayed);
    // IEC 60947-2: an hour up to I_n = 63 A and two above, whatever I_r is set to.
    const auto conventionalTime = [&](double setting, double frame) {
        return test::tables()
            .thermalDevice(adjustable, amperes(setting), {}, amperes(frame))
            ->limits.warm->operatedBy.time;
    };
    EXPECT_EQ(conventionalTime(63, 250), hours(2));
    EXPECT_EQ(conventionalTime(63, 63), hours(1));
}

TEST(ThermalDevice, OfOneStandardsBreakersAllAreAlikePerAmpere) {
    const auto& small = test::tables().thermalDevice(family("60898-B"), amperes(6))->replicas;
    const auto& large = test::tables().thermalDevice(family("60898-C"), amperes(32))->replicas;
    ASSERT_EQ(small.late.size(), large.late.size());
    for (std::size_t i = 0; i < small.late.size(); ++i)
        EXPECT_DOUBLE_EQ(small.late[i].reference / amperes(6), large.late[i].reference / amperes(32));
}

TEST(ThermalDevice, IsMadeOnceAndOnlyInRatingsThatThereAre) {
    EXPECT_EQ(test::tables().thermalDevice(family("60898-B"), amperes(33.3)), nullptr);
    EXPECT_EQ(test::tables().thermalDevice(family("1362"), amperes(20)), nullptr);
    const ThermalDevice* plug = test::tables().thermalDevice(family("1362"), amperes(5));
    ASSERT_NE(plug, nullptr) << "every plug fuse carries 1.6 I_n for half an hour";
    EXPECT_EQ(plug->limits.notBefore.front().current, amperes(5) * 1.6);
    std::array<const ThermalDevice*, 4> found{};
    {
        std::vector<std::jthread> askers;
        for (auto& each : found)
            askers.emplace_back(
                [&each] { each = test::tables().thermalDevice(family("88-2"), amperes(40)); });
    }
    for (const ThermalDevice* each : found)
        EXPECT_EQ(each, found.front());
    EXPECT_NE(found.front(), nullptr);
}

TEST(HeatTables, CablesTakeUpMoreHeatThanTheirConductorsAndInsulationHasALife) {
    for (const Insulation insulation : {Insulation::Pvc70, Insulation::Xlpe90}) {
        double smaller = 0;
        for (const double size : {1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 95.0, 300.0}) {
            const auto heat = test::tables().heatAroundConductor(insulation, squareMillimetres(size));
            ASSERT_TRUE(heat) << size;
            EXPECT_GT(heat->value, smaller) << size;
            smaller = heat->value;
        }
        const auto& life = test::tables().insulationLife(insulation);
        EXPECT_LT(life.value.least, life.value.most);
        EXPECT_FALSE(life.source.title.empty());
    }
    EXPECT_FALSE(test::tables().heatAroundConductor(Insulation::Pvc70, squareMillimetres(2.7)));
}

} // namespace
} // namespace loopwright
