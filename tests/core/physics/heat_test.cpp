// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/physics/heat.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::physics {
namespace {

RC_GTEST_PROP(Heat, SizeTimeAndWithstandAreOneEquation, ()) {
    const AdiabaticFactor k(*rc::gen::inRange(20, 230));
    const Current current = amperes(*rc::gen::inRange(10, 50000));
    const Time time = milliseconds(*rc::gen::inRange(1, 5000));
    const CrossSection size = adiabaticSize(jouleIntegral(current, time), k);
    RC_ASSERT(std::abs(withstand(k, size) / jouleIntegral(current, time) - 1) < 1e-12);
    RC_ASSERT(std::abs(permissibleTime(k, size, current) / time - 1) < 1e-12);
    RC_ASSERT(std::abs(permissibleCurrent(k, size, time) / current - 1) < 1e-12);
}

TEST(Heat, FactorGrowsWithTheRoomLeftForHeating) {
    // Copper, IEC 60364-5-54 table A.54.1.
    const ConductorConstants copper{joulesPerKelvinCubicMillimetre(3.45e-3), kelvins(234.5),
                                    ohmMillimetres(17.241e-6)};
    EXPECT_NEAR(adiabaticFactor(copper, celsius(70), celsius(160)).base(), 115, 0.5);
    EXPECT_GT(adiabaticFactor(copper, celsius(30), celsius(160)),
              adiabaticFactor(copper, celsius(70), celsius(160)));
    EXPECT_GT(adiabaticFactor(copper, celsius(70), celsius(250)),
              adiabaticFactor(copper, celsius(70), celsius(160)));
    EXPECT_EQ(adiabaticFactor(copper, celsius(70), celsius(70)).base(), 0);
}

} // namespace
} // namespace loopwright::physics
