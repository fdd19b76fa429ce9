// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/checks/figures.h"
#include "tests/core/fixture.h"

/// Load and device. "we-..." names a row of the collection of published worked examples, whose source
/// is quoted beside it.
namespace loopwright {
namespace {

using test::Fixture;
using test::limitOf;
using test::read;
using test::resultOf;
using test::typed;

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
