// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Load, device and wiring. "we-..." names a row of the collection of published worked examples, whose source
/// is quoted beside it.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

double resultOf(const Finding& finding) {
    return finding.result ? finding.result->value : -1;
}
double limitOf(const Finding& finding) {
    return finding.limit ? finding.limit->value : -1;
}

/// A fixture whose only load is one piece of equipment.
Fixture withEquipment(Power power, Voltage voltage) {
    Fixture fixture;
    fixture.circuit().load = {};
    fixture.addEquipment("Heater", power).ratedVoltage = typed(voltage);
    return fixture;
}

TEST(LoadDevice, HoldsIsCloseAndFailsByTheMargin) {
    Fixture fixture;
    const auto find = [&](double load) {
        fixture.circuit().load = typed(amperes(load), 1);
        return fixture.find("load-device");
    };
    EXPECT_EQ(find(13).verdict, Verdict::Holds);
    EXPECT_DOUBLE_EQ(find(13).margin.value(), 7.0 / 20);
    EXPECT_EQ(find(19.5).verdict, Verdict::Close) << "2.5 % under 20 A";
    EXPECT_EQ(find(20).verdict, Verdict::Close) << "nothing left, and nothing passed";
    EXPECT_EQ(find(20.1).verdict, Verdict::Fails);
    EXPECT_EQ(find(20.1).margin < 0, true);
}

TEST(LoadDevice, LoadsFollowFromPowerAndVoltage) {
    // we-n-04: 10 kW at 240 V, 41.67 A (engineerfix.com). we-n-03: 1150 W at 230 V, 5 A (look4.net.nz, school
    // physics).
    EXPECT_NEAR(resultOf(withEquipment(kilowatts(10), volts(240)).find("load-device")), 41.67, 0.01);
    EXPECT_NEAR(resultOf(withEquipment(watts(1150), volts(230)).find("load-device")), 5.0, 0.001);
    // Common practice, no source: an 8.5 kW heater at 240 V draws 35 to 36 A.
    EXPECT_NEAR(resultOf(withEquipment(watts(8500), volts(240)).find("load-device")), 35.4, 0.05);
}

TEST(LoadDevice, MotorsDrawMoreThanTheirShaftGives) {
    // we-k-02: 160 kW, 440 V, efficiency 0.93, power factor 0.92: 245.4 A (Handbook of Electrical
    // Engineering, Wiley). we-k-03: 7.5 kW, 415 V, 0.85, 0.8: 15.3 A (The Electrician's Guide, EPA Press).
    struct Motor {
        double power, voltage, efficiency, factor, current, tolerance;
    };
    for (const Motor& motor :
         {Motor{160e3, 440, 0.93, 0.92, 245.4, 0.05}, Motor{7500, 415, 0.85, 0.8, 15.3, 0.06}}) {
        Fixture fixture = withEquipment(watts(motor.power), volts(motor.voltage));
        fixture.circuit().phases = Phases::Three;
        fixture.installation.equipment.front().efficiency = typed(motor.efficiency, 2);
        fixture.installation.equipment.front().powerFactor = typed(motor.factor, 2);
        EXPECT_NEAR(resultOf(fixture.find("load-device")), motor.current, motor.tolerance) << motor.power;
    }
}

TEST(LoadDevice, APowerFactorOrEfficiencyAboveOneIsASlip) {
    struct Row {
        Entry<Ratio> Equipment::*figure;
        double value;
        const char* missing;
    };
    for (const Row& row :
         {Row{&Equipment::powerFactor, 95, "powerFactor"}, Row{&Equipment::powerFactor, 1.01, "powerFactor"},
          Row{&Equipment::efficiency, 85, "efficiency"}}) {
        Fixture fixture = withEquipment(kilowatts(10), volts(230));
        fixture.installation.equipment.front().*row.figure = typed(row.value, 2);
        const Finding finding = fixture.find("load-device");
        EXPECT_EQ(finding.verdict, Verdict::CannotTell) << row.missing << " " << row.value;
        EXPECT_EQ(finding.sentence.key, "check.lacks.unusable");
        EXPECT_EQ(test::missingFields(finding), row.missing) << row.value;
        fixture.installation.equipment.front().*row.figure = typed(1.0, 2);
        EXPECT_NEAR(resultOf(fixture.find("load-device")), 43.48, 0.01) << row.missing << " of 1";
    }
}

TEST(LoadDevice, SinglePhasePiecesOnAThreePhaseCircuitLoadOnePhaseMost) {
    Fixture fixture = withEquipment(watts(2300), volts(230));
    fixture.circuit().phases = Phases::Three;
    const auto load = [&](double count) {
        fixture.installation.equipment.front().count = typed(count);
        return resultOf(fixture.find("load-device"));
    };
    EXPECT_NEAR(load(1), 10, 1e-9);
    EXPECT_NEAR(load(3), 10, 1e-9);
    EXPECT_NEAR(load(4), 20, 1e-9) << "two of the four hang on one phase";
    fixture.installation.equipment.front().ratedVoltage = typed(volts(400));
    EXPECT_NEAR(load(1), 2300 / 400.0 / 1.7320508, 1e-6) << "a three-phase piece spreads over all three";
}

TEST(LoadDevice, TheClampGoesBeforeWhatIsTypedAndThatBeforeTheEquipment) {
    Fixture fixture;
    fixture.addEquipment("Heater", watts(4140));
    fixture.reading().measuredLoad = read(amperes(11), 1);
    fixture.circuit().load = typed(amperes(13));
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("load-device")), 11);
    EXPECT_EQ(fixture.find("load-device").working->terms.front().origin, TermOrigin::Read);
    fixture.reading().measuredLoad = test::limited<Current>("no room for a clamp");
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("load-device")), 13);
    EXPECT_EQ(fixture.find("load-device").working->terms.front().origin, TermOrigin::Typed);
    fixture.circuit().load = {};
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("load-device")), 18);
    fixture.installation.equipment.front().current = typed(amperes(17.2), 1);
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("load-device")), 17.2)
        << "the plate's current goes before its power";
    fixture.installation.equipment.clear();
    const Finding finding = fixture.find("load-device");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "load_A");
}

TEST(LoadDevice, SaysWhatAnOverloadMeansForTheDevice) {
    // Common practice, no source: a 30 A cartridge fuse carries 35.4 A with no operation that can be counted
    // on; a type C 50 A breaker that carries 65 A stands between its conventional currents (1.13 and 1.45
    // times, IEC 60898-1).
    struct Row {
        const char* family;
        double rated, load;
        std::string_view phrase;
    };
    for (const Row& row : {Row{"1361", 30, 35.4, "check.load-device.fails-unsure"},
                           Row{"60898-C", 50, 65, "check.load-device.fails-unsure"},
                           Row{"60898-C", 50, 55, "check.load-device.fails-carried"},
                           Row{"60898-C", 50, 75, "check.load-device.fails"},
                           Row{"88-2", 32, 39, "check.load-device.fails-carried"}}) {
        Fixture fixture;
        fixture.circuit().device.family = row.family;
        fixture.circuit().device.ratedCurrent = typed(amperes(row.rated));
        fixture.circuit().load = typed(amperes(row.load), 1);
        const Finding finding = fixture.find("load-device");
        EXPECT_EQ(finding.verdict, Verdict::Fails) << row.family;
        EXPECT_EQ(finding.sentence.key, row.phrase) << row.family << " " << row.load;
    }
}

// Of an adjustable device I_n is the current that it is set to (IEC 60364-4-43, 433.1, note 1).
TEST(LoadDevice, AnAdjustableBreakerIsTakenAtItsSetting) {
    Fixture fixture;
    fixture.circuit().device = {"60947-2", typed(amperes(250)), typed(kiloamperes(36))};
    fixture.circuit().load = typed(amperes(200));
    fixture.wiring().lineSize =
        typed(squareMillimetres(70)); // two loaded conductors by method C: above 160 A
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Holds) << "without a setting its rating counts";
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("device-wiring")), 250);
    fixture.circuit().device.thermalSetting = typed(amperes(160));
    const Finding finding = fixture.find("load-device");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_DOUBLE_EQ(limitOf(finding), 160);
    EXPECT_DOUBLE_EQ(resultOf(fixture.find("device-wiring")), 160);
    fixture.circuit().device.thermalSetting = test::above(amperes(160));
    EXPECT_EQ(test::missingFields(fixture.find("load-device")), "device.thermalSetting_A");
}

TEST(LoadDevice, FiguresThatCannotBeReckonedWithNeverReachAVerdict) {
    for (const double value :
         {0.0, -3.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        Fixture fixture;
        fixture.circuit().load = typed(amperes(value));
        EXPECT_EQ(fixture.find("load-device").verdict, Verdict::CannotTell) << value;
        EXPECT_EQ(test::missingFields(fixture.find("load-device")), "load_A") << value;
    }
}

TEST(LoadDevice, WhatIsNotApplicableDoesNotApply) {
    Fixture fixture;
    fixture.circuit().device.ratedCurrent = test::notApplicable<Current>();
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.find("load-device").sentence.key, "check.not-applicable");
}

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
    fixture.wiring().method = InstallationMethod::C;
    fixture.ruleSet = test::rules("bs-7671-2018");
    EXPECT_NEAR(limitOf(fixture.find("device-wiring")), limitOf(fixture.find("load-wiring")), 1e-9);
    EXPECT_EQ(fixture.find("device-wiring").working->formula, "I_n ≤ I_z");
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

TEST(PlugFuse, AFixedHeaterInThe16AmpereRangeOverloadsA13AmpereFuse) {
    // Common practice, no source.
    Fixture fixture;
    EXPECT_EQ(fixture.find("plug-fuse").verdict, Verdict::DoesNotApply);
    Equipment& heater = fixture.addEquipment("Heater, bindery", watts(3600));
    heater.plugFuse = typed(amperes(13));
    const Finding finding = fixture.find("plug-fuse");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_NEAR(resultOf(finding), 15.65, 0.01);
    EXPECT_DOUBLE_EQ(limitOf(finding), 13);
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments.front()), "Heater, bindery");

    fixture.installation.equipment.back().power = typed(watts(2900));
    EXPECT_EQ(fixture.find("plug-fuse").verdict, Verdict::Close) << "12.6 A";
    fixture.installation.equipment.back().power = typed(watts(2000));
    EXPECT_EQ(fixture.find("plug-fuse").verdict, Verdict::Holds);
    fixture.installation.equipment.back().power = {};
    EXPECT_EQ(test::missingFields(fixture.find("plug-fuse")), "power_W");
}

TEST(PlugFuse, WhatRunsForHoursIsCloseSooner) {
    Fixture fixture;
    Equipment& heater = fixture.addEquipment("Heater, bindery", watts(2600));
    heater.plugFuse = typed(amperes(13));
    const auto verdictOf = [&](EquipmentKind kind, std::optional<Time> on) {
        Equipment& equipment = fixture.installation.equipment.back();
        equipment.kind = kind;
        equipment.onTime = on ? typed(*on) : Entry<Time>{};
        return fixture.find("plug-fuse").verdict;
    };
    EXPECT_EQ(verdictOf(EquipmentKind::General, std::nullopt), Verdict::Holds) << "11.3 A";
    EXPECT_EQ(verdictOf(EquipmentKind::SpaceHeating, std::nullopt), Verdict::Close);
    EXPECT_EQ(fixture.find("plug-fuse").sentence.key, "check.plug-fuse.continuous");
    EXPECT_EQ(verdictOf(EquipmentKind::SpaceHeating, minutes(20)), Verdict::Holds);
    EXPECT_EQ(verdictOf(EquipmentKind::StorageHeating, std::nullopt), Verdict::Close);
    EXPECT_EQ(verdictOf(EquipmentKind::General, hours(4)), Verdict::Close);
    fixture.installation.equipment.back().power = typed(watts(2300));
    EXPECT_EQ(verdictOf(EquipmentKind::SpaceHeating, std::nullopt), Verdict::Holds) << "10 A of 10.4 A";
}

TEST(PlugFuse, TheWorstPieceDecidesAndCountsByItself) {
    Fixture fixture;
    Equipment& heater = fixture.addEquipment("Heaters", watts(2000));
    heater.plugFuse = typed(amperes(13));
    heater.count = typed(6.0);
    EXPECT_EQ(fixture.find("plug-fuse").verdict, Verdict::Holds) << "each has a fuse of its own";
    fixture.addEquipment("Lamp", watts(1000)).plugFuse = typed(amperes(3));
    const Finding finding = fixture.find("plug-fuse");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments.front()), "Lamp");
}

} // namespace
} // namespace loopwright
