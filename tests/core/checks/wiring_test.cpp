// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/checks/figures.h"
#include "tests/core/fixture.h"

/// What wiring carries, against load and device.
namespace loopwright {
namespace {

using test::Fixture;
using test::limitOf;
using test::resultOf;
using test::typed;

/// Singles in conduit, grouped at 0.7 (three circuits) in 40 degC (0.87).
Fixture hotConduit(double size) {
    Fixture fixture;
    fixture.circuit().device = {"88-2", typed(amperes(15)), typed(kiloamperes(80))};
    fixture.wiring().method = InstallationMethod::B1;
    fixture.wiring().lineSize = typed(squareMillimetres(size), 1);
    fixture.wiring().ambient = typed(celsius(40));
    fixture.wiring().groupedCircuits = typed(3.0);
    return fixture;
}

TEST(DeviceWiring, CapacityIsCorrectedForWhatSurroundsTheWiring) {
    // we-c-01: 15 A / (0.87 x 0.7) asks for 24.63 A, so 2.5 mm2 (24 A) is too small and 4 mm2 (32 A) does
    // (electriciansforums.net thread 46075).
    const Finding small = hotConduit(2.5).find("device-wiring");
    EXPECT_EQ(small.verdict, Verdict::Fails);
    EXPECT_NEAR(limitOf(small), 24 * 0.87 * 0.7, 1e-9);
    const Finding larger = hotConduit(4).find("device-wiring");
    EXPECT_EQ(larger.verdict, Verdict::Holds);
    EXPECT_NEAR(limitOf(larger), 32 * 0.87 * 0.7, 1e-9);

    Fixture inParallel = hotConduit(2.5);
    inParallel.wiring().parallelConductors = typed(2.0);
    EXPECT_NEAR(limitOf(inParallel.find("device-wiring")), 2 * 24 * 0.87 * 0.7, 1e-9);
    Fixture insulated = hotConduit(2.5);
    insulated.wiring().insulatedLength = typed(metres(0.5), 1);
    EXPECT_NEAR(limitOf(insulated.find("device-wiring")), 0.5 * 24 * 0.87 * 0.7, 1e-9);
}

// IEC 60364-5-52, 523.7 and table B.52.17, item 1 (0.80 for two, 0.70 for three): from memory.
TEST(DeviceWiring, ConductorsInParallelAreGroupedWithEachOther) {
    Fixture fixture;
    const double alone = limitOf(fixture.find("device-wiring"));
    fixture.wiring().parallelConductors = typed(2.0);
    const Finding two = fixture.find("device-wiring");
    EXPECT_NEAR(limitOf(two), 2 * alone * 0.8, 1e-9) << testing::PrintToString(two);
    fixture.wiring().groupedCircuits = typed(1.0);
    EXPECT_NEAR(limitOf(fixture.find("device-wiring")), 2 * alone * 0.8, 1e-9);
    fixture.wiring().groupedCircuits = typed(3.0);
    EXPECT_NEAR(limitOf(fixture.find("device-wiring")), 2 * alone * 0.7, 1e-9) << "what is recorded is more";
}

// IEC 60364-5-52, table B.52.16 (from memory): 1 at 2.5 K·m/W; at 0.5, 1.88 for cables in the ground and 1.28
// for ducts; at 3, 0.90 and 0.96.
TEST(DeviceWiring, BuriedWiringIsCorrectedForItsSoil) {
    Fixture fixture;
    fixture.ruleSet = test::rules("iec-60364");
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    fixture.wiring().method = InstallationMethod::D1;
    const Finding assumed = fixture.find("device-wiring");
    const double reference = limitOf(assumed);
    ASSERT_GT(reference, 0) << testing::PrintToString(assumed);
    EXPECT_TRUE(assumed.working->restsOnAssumption) << "nobody recorded the soil";
    const auto factorAt = [&](double soil) {
        fixture.wiring().soilResistivity = typed(kelvinMetresPerWatt(soil), 1);
        return limitOf(fixture.find("device-wiring")) / reference;
    };
    EXPECT_NEAR(factorAt(2.5), 1, 1e-9);
    EXPECT_FALSE(fixture.find("device-wiring").working->restsOnAssumption);
    EXPECT_NEAR(factorAt(0.5), 1.28, 1e-9);
    EXPECT_NEAR(factorAt(3), 0.96, 1e-9);
    EXPECT_NEAR(factorAt(2.2), 1, 1e-9) << "between two rows the stricter counts";
    factorAt(4);
    const Finding dry = fixture.find("device-wiring");
    EXPECT_EQ(dry.verdict, Verdict::CannotTell) << testing::PrintToString(dry);
    EXPECT_EQ(dry.sentence.key, "check.lacks.unpublished");
    EXPECT_EQ(test::missingFields(dry), "wiring.soilResistivity_Km_per_W");
    fixture.wiring().method = InstallationMethod::C;
    EXPECT_NE(fixture.find("device-wiring").verdict, Verdict::CannotTell) << "not in the ground";

    EXPECT_NEAR(test::tables().soilFactor(InstallationMethod::D2, kelvinMetresPerWatt(0.5))->value, 1.88,
                1e-9);
    EXPECT_NEAR(test::tables().soilFactor(InstallationMethod::D2, kelvinMetresPerWatt(3))->value, 0.9, 1e-9);
    EXPECT_FALSE(test::tables().soilFactor(InstallationMethod::C, kelvinMetresPerWatt(1)));
}

// BS 7671, appendix 4, 5.1 (from memory): C_c = 0.9 of a cable in the ground; IEC 60364-4-43 has no such
// factor.
TEST(DeviceWiring, SomeRulesCountLessOfABuriedCable) {
    Fixture fixture;
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    for (const InstallationMethod method : {InstallationMethod::D1, InstallationMethod::D2}) {
        fixture.wiring().method = method;
        fixture.ruleSet = test::rules("bs-7671-2018");
        const double carries = limitOf(fixture.find("load-wiring"));
        ASSERT_GT(carries, 0) << testing::PrintToString(fixture.find("load-wiring"));
        const Finding finding = fixture.find("device-wiring");
        EXPECT_NEAR(limitOf(finding), 0.9 * carries, 1e-9) << testing::PrintToString(finding);
        EXPECT_EQ(finding.working->formula, "I_n ≤ C_c I_z");
        EXPECT_NEAR(limitOf(fixture.find("conventional")), 1.45 * 0.9 * carries, 1e-9);
        fixture.ruleSet = test::rules("iec-60364");
        EXPECT_NEAR(limitOf(fixture.find("device-wiring")), limitOf(fixture.find("load-wiring")), 1e-9);
    }
    fixture.ruleSet = test::rules("bs-7671-2018");
    EXPECT_EQ(fixture.find("device-wiring").sentence.key, "check.device-wiring.holds-buried");
    fixture.circuit().topology = Topology::Ring;
    EXPECT_NEAR(resultOf(fixture.find("device-wiring")), limitOf(fixture.find("load-wiring")), 1e-9)
        << "a ring has its own allowance";
    fixture.circuit().topology = Topology::Radial;
    fixture.wiring().method = InstallationMethod::C;
    EXPECT_NEAR(limitOf(fixture.find("device-wiring")), limitOf(fixture.find("load-wiring")), 1e-9);
    EXPECT_EQ(fixture.find("device-wiring").working->formula, "I_n ≤ I_z");
}

// IEC 60364-5-52, table B.52.2: 25 mm2 of aluminium with PVC, two loaded, method C: 83 A. No row of BS 7671
// for aluminium is at hand.
TEST(DeviceWiring, WhereTheTablesOfTheRulesEndThoseTheyAreMadeAfterAreAssumed) {
    Fixture fixture;
    fixture.wiring().material = Material::Aluminium;
    fixture.wiring().lineSize = typed(squareMillimetres(25));
    fixture.ruleSet = test::rules("iec-60364");
    const Finding own = fixture.find("device-wiring");
    EXPECT_NEAR(limitOf(own), 83, 1e-9) << testing::PrintToString(own);
    EXPECT_FALSE(own.working->restsOnAssumption);
    fixture.ruleSet = test::rules("bs-7671-2018");
    const Finding borrowed = fixture.find("device-wiring");
    EXPECT_NEAR(limitOf(borrowed), 83, 1e-9) << testing::PrintToString(borrowed);
    EXPECT_TRUE(borrowed.working->restsOnAssumption);
    fixture.ruleSet.capacityElse.clear();
    EXPECT_EQ(fixture.find("device-wiring").verdict, Verdict::CannotTell);
}

TEST(DeviceWiring, NamesWhatItLacks) {
    Fixture fixture;
    fixture.wiring().method = InstallationMethod::Unknown;
    fixture.wiring().lineSize = {};
    fixture.circuit().device.ratedCurrent = test::limited<Current>("label painted over");
    const Finding finding = fixture.find("device-wiring");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "device.ratedCurrent_A wiring.lineSize_mm2 wiring.method");
    EXPECT_EQ(finding.sentence.key, "check.lacks.limited");
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments.back()), "label painted over");
}

TEST(DeviceWiring, ASizeThatNoTableHasIsSaidToBeUnpublished) {
    Fixture fixture;
    fixture.wiring().lineSize = typed(squareMillimetres(2.7), 1);
    const Finding finding = fixture.find("device-wiring");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(finding.sentence.key, "check.lacks.unpublished");
    EXPECT_EQ(test::missingFields(finding), "wiring.lineSize_mm2");
}

TEST(DeviceWiring, ARingMayHaveLegsSmallerThanItsDevice) {
    Fixture fixture;
    fixture.makeRing();
    const Finding free = fixture.find("device-wiring");
    EXPECT_EQ(free.verdict, Verdict::Holds) << testing::PrintToString(free);
    EXPECT_EQ(free.sentence.key, "check.device-wiring.holds-ring");

    // we-c-02: both legs in one mini trunking, 23 A x 0.8 = 18.4 A, under the 20 A that a ring's cable needs
    // (electriciansforums.net thread 9542).
    fixture.wiring().method = InstallationMethod::B2;
    fixture.wiring().groupedCircuits = typed(2.0);
    const Finding bunched = fixture.find("device-wiring");
    EXPECT_EQ(bunched.verdict, Verdict::Fails);
    EXPECT_NEAR(resultOf(bunched), 18.4, 1e-9);
    EXPECT_DOUBLE_EQ(limitOf(bunched), 20);

    fixture.circuit().device.ratedCurrent = typed(amperes(40));
    EXPECT_EQ(fixture.find("device-wiring").sentence.key, "check.device-wiring.fails-ring-device");
}

TEST(LoadWiring, ComparesTheLoadWithTheCapacity) {
    Fixture fixture; // 2.5 mm2 flat cable clipped direct: 27 A (BS 7671, table 4D5)
    const auto find = [&](double load) {
        fixture.circuit().load = typed(amperes(load), 1);
        return fixture.find("load-wiring");
    };
    EXPECT_DOUBLE_EQ(limitOf(find(13)), 27);
    EXPECT_EQ(find(13).verdict, Verdict::Holds);
    EXPECT_EQ(find(26).verdict, Verdict::Close);
    EXPECT_EQ(find(28).verdict, Verdict::Fails);
    fixture.makeRing();
    EXPECT_EQ(find(32).verdict, Verdict::Holds) << "20/32 of the load on one leg, by the ring allowance";
    EXPECT_DOUBLE_EQ(resultOf(find(32)), 20);
}

TEST(Conventional, ARewirableFuseAsksForWiringOfMoreThanItsRating) {
    // we-c-05: 1.45 / 2 = 0.725 (The Electrician's Guide 4.3.8; fusing factor 2, BS 7671 433.1.202).
    Fixture fixture;
    fixture.circuit().device = {"3036", typed(amperes(20)), typed(kiloamperes(4))};
    EXPECT_EQ(fixture.find("device-wiring").verdict, Verdict::Holds)
        << "20 A in 27 A: the factor counts once, and not here";
    const Finding finding = fixture.find("conventional");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(resultOf(finding), 40);
    EXPECT_DOUBLE_EQ(limitOf(finding), 1.45 * 27);
    EXPECT_EQ(20 <= 0.725 * 27, finding.verdict != Verdict::Fails) << "the same by the factor";
    fixture.circuit().device.ratedCurrent = typed(amperes(15));
    EXPECT_EQ(fixture.find("conventional").verdict, Verdict::Holds) << "30 A against 39.15 A";
}

TEST(Conventional, RuleSetsDifferOnCartridgeFuses) {
    // BS 7671 433.1.201 takes a gG fuse within the wiring's capacity to comply; by its conventional current
    // of 1.6 I_n (IEC 60269-1) a fuse of 25 A asks for 27.6 A of wiring: we-c-04, 1.6 / 1.45 = 1.10
    // (Electrical Installation Guide).
    Fixture fixture;
    fixture.circuit().device = {"88-2", typed(amperes(25)), typed(kiloamperes(80))};
    EXPECT_EQ(fixture.find("conventional").verdict, Verdict::Holds);
    fixture.ruleSet = test::rules("iec-60364");
    const Finding finding = fixture.find("conventional");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(resultOf(finding), 40);
}

// IEC 60947-2, table 6: sure to operate at 1.30 I_r.
TEST(Conventional, AnAdjustableBreakerGoesByItsSetting) {
    Fixture fixture; // 27 A of wiring: 1.45 x 27 A = 39.15 A
    fixture.circuit().device = {"60947-2", typed(amperes(63)), typed(kiloamperes(36))};
    const Finding unset = fixture.find("conventional");
    EXPECT_EQ(unset.verdict, Verdict::CannotTell) << "it may be set lower";
    EXPECT_EQ(test::missingFields(unset), "device.thermalSetting_A");
    fixture.circuit().device.thermalSetting = typed(amperes(25));
    const Finding set = fixture.find("conventional");
    EXPECT_EQ(set.verdict, Verdict::Holds) << testing::PrintToString(set);
    EXPECT_NEAR(resultOf(set), 1.3 * 25, 1e-9);
    fixture.circuit().device.thermalSetting = typed(amperes(40));
    EXPECT_EQ(fixture.find("conventional").verdict, Verdict::Fails);
    fixture.circuit().device.thermalSetting = {};
    fixture.circuit().device.ratedCurrent = typed(amperes(25));
    EXPECT_EQ(fixture.find("conventional").verdict, Verdict::Holds) << "it cannot be set above its rating";
}

TEST(Conventional, CannotTellWithoutTheFamilyAndDoesNotApplyToRings) {
    Fixture fixture;
    fixture.circuit().device.family = "";
    EXPECT_EQ(test::missingFields(fixture.find("conventional")), "device.family");
    fixture.makeRing();
    EXPECT_EQ(fixture.find("conventional").verdict, Verdict::DoesNotApply);
}

} // namespace
} // namespace loopwright
