// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/one_element.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <vector>

namespace loopwright::test {
namespace {

const ThermalElement element{amperes(10), seconds(600)};

struct Trial {
    std::vector<DutyStep> duty;
    Ratio start;
};

Trial anyTrial() {
    Trial trial;
    const int steps = *rc::gen::inRange(1, 5);
    for (int i = 0; i < steps; ++i)
        trial.duty.push_back(
            {amperes(*rc::gen::inRange(0, 300) / 10.0), seconds(*rc::gen::inRange(1, 2000) / 10.0)});
    trial.start = *rc::gen::inRange(0, 150) / 100.0;
    for (const DutyStep& step : trial.duty)
        RC_LOG() << step.current.base() << " A for " << step.duration.base() << " s\n";
    RC_LOG() << "from " << trial.start << "\n";
    return trial;
}

RC_GTEST_PROP(RepeatingDuty, ManyCyclesLeadToTheSettledOne, ()) {
    const Trial trial = anyTrial();
    const Ratio begin = settled(element, trial.duty).start[0];
    const double length = lengthOf(trial.duty) / element.constant;
    for (const std::uint64_t cycle : {1U, 7U, 200U}) {
        const Ratio left = (trial.start - begin) * std::exp(-static_cast<double>(cycle) * length);
        RC_ASSERT(std::abs(stateAtCycle(element, trial.start, trial.duty, cycle) - begin - left) < 1e-9);
    }
}

RC_GTEST_PROP(RepeatingDuty, TheLimitCycleClosesOnItself, ()) {
    const Trial trial = anyTrial();
    const LimitCycle cycle = settled(element, trial.duty);
    const Ratio begin = cycle.start[0];
    RC_ASSERT(std::abs(stateAfter(element, begin, trial.duty) - begin) < 1e-9 * (1 + begin));
    RC_ASSERT(std::abs(peakOver(element, begin, trial.duty) - cycle.peak) < 1e-9);
    RC_ASSERT(cycle.peak >= cycle.mean - 1e-9);
}

/// The first cycle found by stepping, at most `most` of them.
std::optional<std::uint64_t> steppedTo(const Trial& trial, Ratio threshold, std::uint64_t most) {
    Ratio state = trial.start;
    for (std::uint64_t cycle = 0; cycle < most; ++cycle) {
        if (peakOver(element, state, trial.duty) >= threshold) return cycle;
        state = stateAfter(element, state, trial.duty);
    }
    return std::nullopt;
}

RC_GTEST_PROP(RepeatingDuty, TheFirstCrossingIsTheOneThatSteppingFinds, ()) {
    const Trial trial = anyTrial();
    const Ratio threshold = *rc::gen::inRange(1, 4000) / 1000.0 + 0.00037;
    RC_LOG() << "to " << threshold << "\n";
    const auto reached = firstReached(element, trial.start, trial.duty, threshold);
    const auto stepped = steppedTo(trial, threshold, 20000);
    RC_ASSERT(reached.has_value() == stepped.has_value());
    if (!reached) return;
    RC_ASSERT(reached->cycle == *stepped);
    RC_ASSERT(reached->step < trial.duty.size());
    Ratio state = stateAtCycle(element, trial.start, trial.duty, reached->cycle);
    Time since;
    for (std::size_t i = 0; i < reached->step; ++i) {
        state = physics::stateAfter(element, state, trial.duty[i].current, trial.duty[i].duration);
        since += trial.duty[i].duration;
    }
    state = physics::stateAfter(element, state, trial.duty[reached->step].current, reached->inCycle - since);
    RC_ASSERT((trial.start >= threshold || std::abs(state - threshold) < 1e-9));
}

TEST(RepeatingDuty, IsThereWhereItBeginsThere) {
    const std::vector<DutyStep> duty{{amperes(5), seconds(60)}};
    const auto reached = firstReached(element, 1, duty, 1);
    ASSERT_TRUE(reached);
    EXPECT_EQ(reached->cycle, 0U);
    EXPECT_EQ(reached->inAll, Time());
}

TEST(RepeatingDuty, NeverReachesWhatItOnlyComesNearTo) {
    const std::vector<DutyStep> steady{{amperes(10), seconds(60)}};
    EXPECT_FALSE(firstReached(element, 0, steady, 1)) << "the reference current never operates it";
    EXPECT_TRUE(firstReached(element, 0, steady, 0.999));
}

TEST(RepeatingDuty, ALongWayOffIsFoundWithoutGoingThere) {
    // 1 ms on and off in turn: half of 1.5 times the reference squared is 1.125; it takes 2.197 tau to 1.
    const std::vector<DutyStep> duty{{amperes(15), milliseconds(1)}, {amperes(0), milliseconds(1)}};
    const auto reached = firstReached({amperes(10), hours(10)}, 0, duty, 1);
    ASSERT_TRUE(reached);
    EXPECT_NEAR(reached->inAll.base() / (36000 * std::log(1.125 / 0.125)), 1, 1e-6);
    EXPECT_GT(reached->cycle, 39'000'000U);
}

TEST(RepeatingDuty, AHotStartIsHottestInTheFirstCycle) {
    const std::vector<DutyStep> duty{{amperes(20), seconds(60)}, {amperes(0), seconds(1200)}};
    const Ratio hot = 0.9;
    const auto reached = firstReached(element, hot, duty, 1);
    ASSERT_TRUE(reached);
    EXPECT_EQ(reached->cycle, 0U);
    EXPECT_FALSE(firstReached(element, 0, duty, 1));
}

} // namespace
} // namespace loopwright::test
