// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Types and series of residual current devices, main conductors, starts, and the instruments themselves.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

struct Asked {
    EquipmentKind kind;
    Phases phases;
    ResidualType type;
    Verdict verdict;
};

// Sources beside the rows of residual_types.csv: IEC 62423, IEC 60364-7-712, IEC 60364-7-722 (from memory).
TEST(ResidualType, MustSeeWhatTheEquipmentCanFeedIt) {
    using enum ResidualType;
    for (const Asked& asked : {Asked{EquipmentKind::Drive, Phases::Three, A, Verdict::Fails},
                               Asked{EquipmentKind::Drive, Phases::Three, F, Verdict::Fails},
                               Asked{EquipmentKind::Drive, Phases::Three, B, Verdict::Holds},
                               Asked{EquipmentKind::Drive, Phases::L1, F, Verdict::Holds},
                               Asked{EquipmentKind::Drive, Phases::L1, A, Verdict::Fails},
                               Asked{EquipmentKind::EvCharging, Phases::L1, AC, Verdict::Fails},
                               Asked{EquipmentKind::EvCharging, Phases::L1, A, Verdict::Close},
                               Asked{EquipmentKind::EvCharging, Phases::L1, B, Verdict::Holds},
                               Asked{EquipmentKind::InductionHob, Phases::L1, AC, Verdict::Fails},
                               Asked{EquipmentKind::PvInverter, Phases::L1, A, Verdict::Close},
                               Asked{EquipmentKind::SocketFed, Phases::L1, AC, Verdict::Close},
                               Asked{EquipmentKind::StoredHeater, Phases::L1, AC, Verdict::DoesNotApply}}) {
        Fixture fixture;
        fixture.circuit().phases = asked.phases;
        fixture.circuit().residual = {true, typed(milliamperes(30)), asked.type, ResidualDelay::General};
        fixture.addEquipment("load", kilowatts(2)).kind = asked.kind;
        const Finding finding = fixture.find("residual-type");
        EXPECT_EQ(finding.verdict, asked.verdict)
            << choiceKey(asked.kind) << " " << choiceKey(asked.phases) << " " << choiceKey(asked.type) << "\n"
            << testing::PrintToString(finding);
    }
}

TEST(ResidualType, CountsOnEveryDeviceOnTheWay) {
    Fixture fixture;
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::B, ResidualDelay::General};
    fixture.board().residual = {true, typed(milliamperes(300)), ResidualType::A, ResidualDelay::Delayed};
    fixture.circuit().phases = Phases::Three;
    fixture.addEquipment("lathe", kilowatts(4)).kind = EquipmentKind::Drive;
    EXPECT_EQ(fixture.find("residual-type").verdict, Verdict::Fails) << "the one before it is blinded";
    fixture.board().residual.type = ResidualType::Unknown;
    EXPECT_EQ(test::missingFields(fixture.find("residual-type")), "residual.type");
    fixture.board().residual = fixture.circuit().residual = {};
    EXPECT_EQ(fixture.find("residual-type").verdict, Verdict::DoesNotApply);
}

TEST(ResidualHalf, IsJudgedWhereItWasTested) {
    Fixture fixture;
    fixture.makeRing();
    EXPECT_EQ(fixture.find("residual-half").verdict, Verdict::DoesNotApply);
    fixture.reading().residualHalf = TestOutcome::Correct;
    EXPECT_EQ(fixture.find("residual-half").verdict, Verdict::Holds);
    fixture.reading().residualHalf = TestOutcome::Wrong;
    EXPECT_EQ(fixture.find("residual-half").verdict, Verdict::Fails);
    fixture.makeTt();
    fixture.boardReading().residualHalf = TestOutcome::Wrong;
    EXPECT_EQ(fixture.onBoard("residual-half").verdict, Verdict::Fails);
}

// Delayed, and three times the rated residual current: IEC 60364-5-53, 536.4 (from memory).
TEST(ResidualSeries, AsksForDelayAndRatio) {
    Fixture fixture;
    fixture.makeRing();
    EXPECT_EQ(fixture.find("residual-series").verdict, Verdict::DoesNotApply);
    fixture.board().residual = {true, typed(milliamperes(300)), ResidualType::A, ResidualDelay::Delayed};
    EXPECT_EQ(fixture.find("residual-series").verdict, Verdict::Holds);
    fixture.board().residual.delay = ResidualDelay::General;
    EXPECT_EQ(fixture.find("residual-series").sentence.key, "check.residual-series.not-delayed");
    fixture.board().residual = {true, typed(milliamperes(80)), ResidualType::A, ResidualDelay::Delayed};
    EXPECT_EQ(fixture.find("residual-series").sentence.key, "check.residual-series.too-near");
    EXPECT_EQ(fixture.find("residual-series").verdict, Verdict::Close);
    fixture.board().residual.residualCurrent = {};
    EXPECT_EQ(test::missingFields(fixture.find("residual-series")), "residual.residualCurrent_mA");
}

// Tails of 25 ask for 16 mm2 of earthing conductor and, on TN-C-S, 10 mm2 of bonding; tails of 95 for 47.5
// and 25 (BS 7671, tables 54.7 and 54.8, from memory). Elsewhere half the earthing conductor, at least 6 mm2.
TEST(MainConductors, GoByTheTailsAndTheEarthing) {
    Fixture fixture;
    EXPECT_EQ(fixture.onSupply("earthing-conductor").verdict, Verdict::Holds);
    EXPECT_EQ(fixture.onSupply("main-bonding").verdict, Verdict::Holds);
    fixture.supply().tails = typed(squareMillimetres(95));
    EXPECT_NEAR(fixture.onSupply("earthing-conductor").limit->value, 47.5, 1e-9);
    EXPECT_EQ(fixture.onSupply("earthing-conductor").verdict, Verdict::Close);
    EXPECT_NEAR(fixture.onSupply("main-bonding").limit->value, 25, 1e-9);
    EXPECT_EQ(fixture.onSupply("main-bonding").verdict, Verdict::Fails);
    fixture.supply().earthing = Earthing::TnS;
    EXPECT_NEAR(fixture.onSupply("main-bonding").limit->value, 8, 1e-9);
    fixture.supply().mainBonding = {};
    EXPECT_EQ(test::missingFields(fixture.onSupply("main-bonding")), "mainBonding_mm2");
}

// Which table counts depends on the earthing, so nothing stands in for it.
TEST(MainConductors, CannotBeToldWithoutTheEarthing) {
    Fixture fixture;
    fixture.supply().earthing = Earthing::Unknown;
    fixture.supply().mainBonding = typed(squareMillimetres(1));
    for (const char* check : {"earthing-conductor", "main-bonding"}) {
        const Finding finding = fixture.onSupply(check);
        EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
        EXPECT_EQ(test::missingFields(finding), "earthing");
    }
}

// Type B operates at once between 3 and 5 I_n (IEC 60898-1, table 2).
TEST(MotorStart, RidesBelowTheInstantaneousBand) {
    Fixture fixture; // type B, 20 A: 60 A to 100 A
    EXPECT_EQ(fixture.find("motor-start").verdict, Verdict::DoesNotApply);
    Equipment& saw = fixture.addEquipment("saw", kilowatts(2.3)); // 10 A at 230 V
    const auto startsWith = [&](double multiple) {
        saw.startMultiple = typed(multiple, 1);
        return fixture.find("motor-start").verdict;
    };
    EXPECT_EQ(startsWith(5), Verdict::Holds);
    EXPECT_EQ(startsWith(8), Verdict::Close);
    EXPECT_EQ(startsWith(11), Verdict::Fails);
    saw.power = {};
    EXPECT_EQ(test::missingFields(fixture.find("motor-start")), "power_W");
    fixture.circuit().device.family = "88-2";
    EXPECT_EQ(fixture.find("motor-start").verdict, Verdict::DoesNotApply);
}

TEST(MotorStart, AnAdjustableBreakerIsHeldAgainstItsSettings) {
    Fixture fixture;
    Device& device = fixture.circuit().device;
    device = {"60947-2", typed(amperes(100)), typed(kiloamperes(36))};
    Equipment& motor = fixture.addEquipment("Press", watts(9200)); // 40 A at 230 V
    motor.startMultiple = typed(6.0);
    EXPECT_EQ(test::missingFields(fixture.find("motor-start")), "device.instantaneousSetting_A");
    device.instantaneousSetting = typed(amperes(500));
    EXPECT_EQ(fixture.find("motor-start").verdict, Verdict::Holds) << "240 A of at least 400 A";
    device.shortTimeSetting = typed(amperes(200));
    EXPECT_EQ(fixture.find("motor-start").verdict, Verdict::Fails) << "which the short-time release ends";
}

TEST(MotorStart, KeepsTheBoundOfACurrent) {
    Fixture fixture; // type B, 20 A: 60 A to 100 A
    Equipment& saw = fixture.addEquipment("saw", {});
    saw.startMultiple = typed(6.0, 0);
    const auto with = [&](const Entry<Current>& current) {
        saw.current = current;
        return fixture.find("motor-start");
    };
    EXPECT_EQ(with(test::above(amperes(5))).verdict, Verdict::CannotTell) << "30 A or more";
    EXPECT_EQ(test::missingFields(with(test::above(amperes(5)))), "current_A");
    EXPECT_EQ(with(test::above(amperes(12))).verdict, Verdict::CannotTell) << "72 A or more";
    EXPECT_EQ(with(test::above(amperes(20))).verdict, Verdict::Fails) << "120 A or more";
    EXPECT_EQ(with(test::below(amperes(5))).verdict, Verdict::Holds) << "30 A or less";
    EXPECT_EQ(with(test::below(amperes(12))).verdict, Verdict::CannotTell) << "72 A or less";
    saw.current = test::above(amperes(5)); // the last use: adding the fan moves it
    Equipment& fan = fixture.addEquipment("fan", {});
    fan.current = typed(amperes(8));
    fan.startMultiple = typed(5.0, 0);
    EXPECT_EQ(fixture.find("motor-start").verdict, Verdict::CannotTell) << "40 A, or the saw's 30 A or more";
}

TEST(Calibration, CountsOnTheLastDayOfTheVisit) {
    Fixture fixture;
    const auto calibration = [&] { return fixture.find("calibration", fixture.instrument().id); };
    EXPECT_EQ(calibration().verdict, Verdict::Holds);
    fixture.visit().ended = Date{std::chrono::year{2026} / 10 / 1};
    EXPECT_EQ(calibration().verdict, Verdict::Fails);
    fixture.instrument().calibrationDue.reset();
    EXPECT_EQ(test::missingFields(calibration()), "calibrationDue");
}

// The largest operating uncertainty of IEC 61557-3 is 30 % (from memory).
TEST(Uncertainty, MakesAVerdictCloseAndSaysSo) {
    Fixture fixture; // type B, 20 A: at most 0.8 x 2.19 ohm
    fixture.reading().loopImpedance = read(ohms(1.45));
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Holds);
    fixture.instrument().loopUncertainty = typed(0.25);
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Close);
    EXPECT_EQ(fixture.find("loop").working->terms.back().note.key, "check.note.uncertainty-instrument");
    fixture.instrument().loopUncertainty = {};
    const Finding byStandard = fixture.find("loop");
    EXPECT_EQ(byStandard.verdict, Verdict::Close);
    const Term& told = byStandard.working->terms.back();
    EXPECT_EQ(told.symbol, "u");
    EXPECT_NEAR(told.value.value, 30, 1e-9);
    EXPECT_TRUE(told.source.fromMemory);
    fixture.reading().loopImpedance = read(ohms(1.8));
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Fails) << "no uncertainty turns a failure";
    fixture.reading().loopImpedance = read(ohms(0.5));
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Holds);
}

// IEC 61557-3 allows 30 %, IEC 61557-6 10 % of the time (from memory).
TEST(InstrumentUncertainty, IsHeldAgainstItsStandard) {
    Fixture fixture;
    const auto finding = [&] { return fixture.find("instrument-uncertainty", fixture.instrument().id); };
    EXPECT_EQ(finding().verdict, Verdict::Holds);
    fixture.instrument().loopUncertainty = typed(0.4);
    EXPECT_EQ(finding().verdict, Verdict::Close);
    EXPECT_NEAR(finding().limit->value, 30, 1e-9);
    fixture.instrument() = {.id = fixture.instrument().id, .visit = fixture.visit().id, .name = "Tester 1"};
    EXPECT_EQ(finding().verdict, Verdict::DoesNotApply);
}

TEST(InstrumentRange, WhatLiesBeyondItIsSaidWhereItWasRead) {
    Fixture fixture;
    const auto finding = [&] { return fixture.find("instrument-range", fixture.instrument().id); };
    EXPECT_EQ(finding().verdict, Verdict::DoesNotApply) << "nobody says how far it goes";
    fixture.reading().loopImpedance = read(ohms(0.35), 2);
    fixture.boardReading().loopImpedance = read(ohms(0.06), 2);
    fixture.instrument().loopFrom = typed(ohms(0.05));
    EXPECT_EQ(finding().verdict, Verdict::Holds);
    fixture.instrument().loopFrom = typed(ohms(0.2));
    const Finding beyond = finding();
    EXPECT_EQ(beyond.verdict, Verdict::Close) << testing::PrintToString(beyond);
    EXPECT_NEAR(beyond.result->value, 0.06, 1e-12);
    EXPECT_EQ(std::get<std::string>(beyond.sentence.arguments.back()), fixture.board().name);
    fixture.reading().insulationEarth = test::above(megohms(999));
    fixture.instrument().insulationTo = typed(megohms(500));
    EXPECT_NEAR(finding().result->value, 0.06, 1e-12) << "what is shown as beyond the range says so itself";

    Instrument other = fixture.instrument();
    other.id = RandomIds().next();
    other.loopFrom = typed(ohms(0.01));
    fixture.installation.instruments.push_back(other);
    EXPECT_EQ(finding().verdict, Verdict::Holds) << "the other one reads so little";
}

} // namespace
} // namespace loopwright
