// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Residual protection outdoors is asked for what people plug in and carry (IEC 60364-4-41, 411.3.3).
namespace loopwright {
namespace {

using test::Fixture;

TEST(Outdoors, AFixedLampAsksForNoResidualProtection) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Lighting;
    fixture.circuit().outdoors = true;
    fixture.addEquipment("floodlight", watts(200));
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply);
}

TEST(Outdoors, EquipmentThatIsCarriedAboutAsksForIt) {
    Fixture fixture;
    fixture.circuit().outdoors = true;
    fixture.addEquipment("hedge trimmer", watts(500)).fixed = false;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
}

TEST(Outdoors, SocketsForOneUseAskForItThere) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Sockets;
    fixture.circuit().generalSockets = false;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply);
    fixture.circuit().outdoors = true;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
}

} // namespace
} // namespace loopwright
