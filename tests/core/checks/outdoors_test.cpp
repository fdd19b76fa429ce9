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

// IEC 60364-4-41:2005+A1:2017 and BS 7671:2018, 411.3.4 (from memory): luminaires in dwellings, of whatever
// rating.
TEST(Lights, OfADwellingAskForResidualProtection) {
    for (const char* key : {"iec-60364", "bs-7671-2018"}) {
        Fixture fixture;
        fixture.ruleSet = test::rules(key);
        fixture.circuit().use = CircuitUse::Lighting;
        fixture.installation.site.occupancy = Occupancy::SmallBusiness;
        EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply) << key;
        fixture.installation.site.occupancy = Occupancy::Dwelling;
        const Finding none = fixture.find("additional-protection");
        EXPECT_EQ(none.verdict, Verdict::Fails) << key << testing::PrintToString(none);
        EXPECT_EQ(none.sentence.key, "check.additional-protection.none-lights");
        EXPECT_EQ(none.working->clause, "411.3.4");
        fixture.circuit().residual = {true, test::typed(milliamperes(30)), ResidualType::A,
                                      ResidualDelay::General};
        EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Holds) << key;
        fixture.circuit().residual = {};
        fixture.ruleSet.additionalProtectionLighting = false;
        EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply)
            << "where the rules do not ask";
    }
}

} // namespace
} // namespace loopwright
