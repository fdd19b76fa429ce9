// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/motor.h"

#include "core/physics/load.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

TEST(Starter, EachKindTakesItsShareOfTheDirectCurrent) {
    const auto starting = [](StarterKind kind, double setting) {
        return startingCurrent(amperes(10), 6, {kind, setting}).base();
    };
    EXPECT_DOUBLE_EQ(starting(StarterKind::Direct, 1), 60);
    EXPECT_DOUBLE_EQ(starting(StarterKind::StarDelta, 1), 20);
    EXPECT_DOUBLE_EQ(starting(StarterKind::Autotransformer, 0.5), 15);
    EXPECT_DOUBLE_EQ(starting(StarterKind::Soft, 3), 30);
    EXPECT_DOUBLE_EQ(starting(StarterKind::Soft, 9), 60) << "no starter adds current";
}

RC_GTEST_PROP(Motor, EfficiencyIsTheConverseOfTheLoadCurrent, ()) {
    const Power shaft = watts(*rc::gen::inRange(100, 200000));
    const double efficiency = *rc::gen::inRange(10, 101) / 100.0,
                 powerFactor = *rc::gen::inRange(10, 101) / 100.0;
    const bool threePhase = *rc::gen::arbitrary<bool>();
    const Current line = loadCurrent(shaft, volts(230), threePhase, powerFactor, efficiency);
    RC_ASSERT(std::abs(motorEfficiency(shaft, volts(230), line, powerFactor, threePhase) / efficiency - 1) <
              1e-12);
}

} // namespace
} // namespace loopwright::physics
