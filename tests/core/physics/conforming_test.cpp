// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/conforming.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace loopwright::physics {
namespace {

/// A breaker of 16 A by IEC 60898-1: 1.13 and 1.45 I_n for an hour, 2.55 I_n in 1 s to 60 s.
ThermalLimits breaker() {
    return {{{amperes(18.08), hours(1)}, {amperes(40.8), seconds(1)}},
            {{amperes(40.8), seconds(60)}},
            ThermalLimits::Warm{{amperes(18.08), hours(1)}, {amperes(23.2), hours(1)}},
            amperes(16)};
}

/// A 32 A gG fuse by IEC 60269-1: conventional currents and gates.
ThermalLimits fuse() {
    return {{{amperes(40), hours(1)}, {amperes(75), seconds(10)}, {amperes(200), seconds(0.1)}},
            {{amperes(51.2), hours(1)}, {amperes(150), seconds(5)}, {amperes(350), seconds(0.1)}},
            std::nullopt};
}

OperationBand steady(const ReplicaSet& set, double current, double preload = 0) {
    const std::array duty{DutyStep{amperes(current), hours(100)}};
    return operationOf(set, duty, amperes(preload), 1);
}

void expectWithin(const ReplicaSet& set, const ThermalLimits& limits) {
    for (const TimeCurrent& test : limits.notBefore) {
        const OperationEdge edge = steady(set, test.current.base()).earliest;
        EXPECT_TRUE(edge.operation == Operation::Never ||
                    edge.reached.inAll.base() >= test.time.base() * (1 - 1e-6))
            << "operates after " << edge.reached.inAll.base() << " s at " << test.current.base()
            << " A, which it carries for " << test.time.base() << " s";
    }
    for (const TimeCurrent& test : limits.operatedBy) {
        const OperationEdge edge = steady(set, test.current.base()).latest;
        ASSERT_EQ(edge.operation, Operation::Operates) << test.current.base() << " A";
        EXPECT_LE(edge.reached.inAll.base(), test.time.base() * (1 + 1e-6)) << test.current.base() << " A";
    }
}

TEST(ConformingReplicas, OfABreakerKeepWithinEveryTest) {
    const ReplicaSet set = conformingReplicas(breaker(), Elements::One);
    ASSERT_FALSE(set.early.empty());
    ASSERT_FALSE(set.late.empty());
    expectWithin(set, breaker());
    EXPECT_NEAR(steady(set, 40.8).earliest.reached.inAll.base(), 1, 0.02)
        << "the limits are met, not only kept";
    EXPECT_NEAR(steady(set, 40.8).latest.reached.inAll.base(), 60, 1);
    const OperationEdge warm = steady(set, 23.2, 18.08).latest;
    ASSERT_EQ(warm.operation, Operation::Operates);
    EXPECT_LE(warm.reached.inAll.base(), 3600 * (1 + 1e-6));
}

TEST(ConformingReplicas, BetweenItsConventionalCurrentsASoundBreakerMayOrMayNotOperate) {
    const ReplicaSet set = conformingReplicas(breaker(), Elements::One);
    EXPECT_EQ(steady(set, 21).earliest.operation, Operation::Operates);
    EXPECT_EQ(steady(set, 21).latest.operation, Operation::Never);
    EXPECT_EQ(steady(set, 17).earliest.operation, Operation::Never);
}

/// A sound breaker may be 0.3 element with a body of 19 to 60 minutes: it meets every test of the standard,
/// which asks 1.45 I_n only after an hour at 1.13 I_n.
TEST(ConformingReplicas, ASlowBodyKeepsASoundBreakerWithinItsTestsInLongRuns) {
    const ReplicaSet set = conformingReplicas(breaker(), Elements::Two);
    expectWithin(set, breaker());
    const auto latestIn = [&](double multiple, Time on, Time off) {
        const std::array duty{DutyStep{amperes(multiple * 16), on}, DutyStep{amperes(0), off}};
        return operationOf(set, duty).latest;
    };
    for (const Time run : {minutes(10), minutes(20)})
        EXPECT_EQ(latestIn(1.5, run, run).operation, Operation::Never) << run.base() << " s";
    const OperationEdge at15 = steady(set, 1.5 * 16).latest, at2 = steady(set, 2 * 16).latest;
    EXPECT_GT(at15.reached.inAll, minutes(75));
    EXPECT_LT(at15.reached.inAll, hours(2)) << "both tests together take two hours";
    EXPECT_GT(at2.reached.inAll, minutes(17));
    const std::array tests{DutyStep{amperes(18.08), hours(1)}, DutyStep{amperes(23.2), hours(1)}};
    const OperationEdge tested = operationOf(set, tests, {}, 1).latest;
    ASSERT_EQ(tested.operation, Operation::Operates) << "the second test follows an hour of the first";
    EXPECT_LE(tested.reached.inAll.base(), 7200 * (1 + 1e-6));
    EXPECT_GT(tested.reached.inAll.base(), 7100) << "and is met, not only kept";
}

TEST(ConformingReplicas, NoSingleTimeConstantMeetsTheGatesOfAFuse) {
    EXPECT_TRUE(conformingReplicas(fuse(), Elements::One).early.empty());
    const ReplicaSet set = conformingReplicas(fuse(), Elements::Two);
    ASSERT_FALSE(set.early.empty());
    expectWithin(set, fuse());
}

TEST(ConformingReplicas, WithoutALimitOnOneSideNothingIsSaidThere) {
    ThermalLimits limits = breaker();
    limits.notBefore.clear();
    limits.carries = {};
    const ReplicaSet set = conformingReplicas(limits, Elements::One);
    EXPECT_TRUE(set.early.empty());
    EXPECT_EQ(steady(set, 100).earliest.operation, Operation::Unknown);
    EXPECT_TRUE(conformingReplicas({}, Elements::One).late.empty());
}

TEST(ConformingReplicas, WithoutAShortTestNothingHoldsADeviceBackAtALargeCurrent) {
    const ThermalLimits plugFuse{
        {{amperes(8), minutes(30)}}, {{amperes(9.5), minutes(30)}}, std::nullopt, amperes(5)};
    const ReplicaSet set = conformingReplicas(plugFuse, Elements::Two);
    expectWithin(set, plugFuse);
    EXPECT_LT(steady(set, 15).earliest.reached.inAll, seconds(1));
}

TEST(ConformingReplicas, ContradictingLimitsAllowNoDevice) {
    const ThermalLimits limits{{{amperes(50), seconds(100)}}, {{amperes(40), seconds(10)}}, std::nullopt};
    EXPECT_TRUE(conformingReplicas(limits, Elements::Two).early.empty());
}

/// 1.31 times the rating for 4 minutes in 20: an early breaker operates in a run, a sound one need never.
TEST(ConformingReplicas, AnOverloadInShortRunsWorksAndIsNoProofOfAnything) {
    const ReplicaSet set = conformingReplicas(breaker(), Elements::One);
    const std::array duty{DutyStep{amperes(1.31 * 16), minutes(4)}, DutyStep{amperes(0), minutes(16)}};
    const OperationBand band = operationOf(set, duty);
    EXPECT_EQ(band.earliest.operation, Operation::Operates);
    EXPECT_EQ(band.earliest.reached.cycle, 0U);
    EXPECT_EQ(band.latest.operation, Operation::Never);
}

} // namespace
} // namespace loopwright::physics
