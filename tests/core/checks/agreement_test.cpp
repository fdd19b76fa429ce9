// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Readings and records held against each other: loops and continuity, rings, contradictions, the visit
/// before.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

TEST(LoopAgreement, LessThanThePartsIsUsualAndFarMoreIsNot) {
    Fixture fixture; // Z_db 0.18, R_1+R_2 0.35
    const Finding sum = fixture.find("loop-agreement");
    EXPECT_EQ(sum.verdict, Verdict::Holds) << testing::PrintToString(sum);
    fixture.reading().loopImpedance = read(ohms(0.31));
    const Finding below = fixture.find("loop-agreement");
    EXPECT_EQ(below.verdict, Verdict::Holds);
    EXPECT_EQ(below.sentence.key, "check.loop-agreement.below");
    fixture.reading().loopImpedance = read(ohms(0.95));
    EXPECT_EQ(fixture.find("loop-agreement").verdict, Verdict::Fails);
}

TEST(LoopAgreement, BelowTheLoopWhereTheCircuitBeginsIsNotUsual) {
    Fixture fixture; // Z_db 0.18: a quarter and 0.05 ohm below is 0.085
    fixture.reading().loopImpedance = read(ohms(0.10));
    EXPECT_EQ(fixture.find("loop-agreement").sentence.key, "check.loop-agreement.below");
    fixture.reading().loopImpedance = read(ohms(0.05));
    const Finding below = fixture.find("loop-agreement");
    EXPECT_EQ(below.verdict, Verdict::Close) << testing::PrintToString(below);
    EXPECT_EQ(below.sentence.key, "check.loop-agreement.below-start");
    EXPECT_DOUBLE_EQ(std::get<Measure>(below.sentence.arguments.at(1)).value, 0.18);
    fixture.reading().loopImpedance = test::above(ohms(0.05));
    EXPECT_NE(fixture.find("loop-agreement").verdict, Verdict::Close) << "it may be more";
    fixture.reading().loopImpedance = read(ohms(0.02));
    fixture.boardReading().loopImpedance = {};
    EXPECT_EQ(fixture.find("loop-agreement").sentence.key, "check.loop-agreement.below")
        << "Z_e was read with the earth apart";
}

TEST(LoopAgreement, TakesTheSupplyWhereTheBoardWasNotRead) {
    Fixture fixture;
    fixture.boardReading().loopImpedance = {};
    EXPECT_EQ(fixture.find("loop-agreement").verdict, Verdict::Holds);
    fixture.supplyReading().externalLoopImpedance = {};
    const Finding missing = fixture.find("loop-agreement");
    EXPECT_EQ(missing.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(missing), "loopImpedance_ohm");
}

// 18 m of 2.5/1.5 mm2: (7.41 + 12.10) mohm/m x 18 m = 0.351 ohm (IEC 60228, table 1).
TEST(ContinuityAgreement, FollowsLengthSizesAndTemperature) {
    Fixture fixture;
    const Finding sound = fixture.find("continuity-agreement");
    EXPECT_EQ(sound.verdict, Verdict::Holds) << testing::PrintToString(sound);
    const auto expected = [](const Finding& finding) {
        return std::get<Measure>(finding.sentence.arguments.at(1)).value;
    };
    EXPECT_NEAR(expected(sound), 0.351, 0.001);
    fixture.visit().conductorTemperature = read(celsius(30), 0);
    EXPECT_NEAR(expected(fixture.find("continuity-agreement")), 0.351 * 1.0393, 0.001);

    fixture.reading().continuity = read(ohms(0.9));
    EXPECT_EQ(fixture.find("continuity-agreement").verdict, Verdict::Fails);
    fixture.wiring().length.origin = Origin::Assumed;
    EXPECT_EQ(fixture.find("continuity-agreement").sentence.key, "check.continuity-agreement.assumed");
    fixture.reading().continuity = read(ohms(0.05));
    const Finding low = fixture.find("continuity-agreement");
    EXPECT_EQ(low.verdict, Verdict::Close);
    EXPECT_EQ(low.sentence.key, "check.continuity-agreement.low");
}

TEST(ContinuityAgreement, OfARingIsAQuarterAndOfArmourNothing) {
    Fixture fixture;
    fixture.makeRing();
    const Finding ring = fixture.find("continuity-agreement");
    EXPECT_EQ(ring.verdict, Verdict::Holds) << testing::PrintToString(ring);
    fixture.wiring().protectiveConductor = ProtectiveConductor::Armour;
    EXPECT_EQ(fixture.find("continuity-agreement").verdict, Verdict::DoesNotApply);
    fixture.wiring().protectiveConductor = ProtectiveConductor::InCable;
    fixture.wiring().length = {};
    EXPECT_EQ(test::missingFields(fixture.find("continuity-agreement")), "wiring.length_m");
}

TEST(Ring, NamesTheLegThatIsOpen) {
    Fixture fixture;
    const auto saidWith = [&](Entry<Resistance> CircuitReading::*leg, Entry<Resistance> reading) {
        fixture.makeRing();
        fixture.reading().*leg = reading;
        return std::string(fixture.find("ring").sentence.key);
    };
    for (const auto& reading : {test::above(ohms(99.9)), read(ohms(4.8))}) {
        EXPECT_EQ(saidWith(&CircuitReading::ringLine, reading), "check.ring.open-line");
        EXPECT_EQ(saidWith(&CircuitReading::ringNeutral, reading), "check.ring.open-neutral");
        EXPECT_EQ(saidWith(&CircuitReading::ringProtective, reading), "check.ring.open-protective");
    }
}

// A link half way along closes the far half to a loop of its own: the ends read 0.20 and 0.33 instead of 0.40
// and 0.65, the far side still (0.40 + 0.65) / 4.
TEST(Ring, TellsALinkAcrossFromASpur) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().continuity = read(ohms(0.40));
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.spur");
    fixture.reading().ringLine = fixture.reading().ringNeutral = read(ohms(0.20));
    fixture.reading().ringProtective = read(ohms(0.33));
    fixture.reading().continuity = read(ohms(0.26));
    const Finding eight = fixture.find("ring");
    EXPECT_EQ(eight.verdict, Verdict::Close) << testing::PrintToString(eight);
    EXPECT_EQ(eight.sentence.key, "check.ring.figure-of-eight");
    fixture.wiring().length = {};
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.spur")
        << "without a length nobody can tell them apart";
}

// The ring alone reads (0.40 + 0.65) / 4 = 0.26; a spur that adds several times as much is none.
TEST(Ring, NoSpurExplainsManyTimesTheRing) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().continuity = read(ohms(0.75));
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.spur");
    for (const double far : {0.82, 5.0}) {
        fixture.reading().continuity = read(ohms(far));
        const Finding finding = fixture.find("ring");
        EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
        EXPECT_EQ(finding.sentence.key, "check.ring.fails-continuity");
    }
}

TEST(Contradictions, AreFindingsOfTheirOwn) {
    Fixture fixture;
    for (const char* check : {"conductor-sizes", "device-rating", "phases"})
        EXPECT_EQ(fixture.find(check).verdict, Verdict::Holds) << check;
    fixture.wiring().protectiveSize = typed(squareMillimetres(4));
    EXPECT_EQ(fixture.find("conductor-sizes").verdict, Verdict::Fails);
    fixture.wiring().protectiveConductor = ProtectiveConductor::Separate;
    EXPECT_EQ(fixture.find("conductor-sizes").verdict, Verdict::DoesNotApply);
    fixture.circuit().device.ratedCurrent = typed(amperes(21));
    EXPECT_EQ(fixture.find("device-rating").verdict, Verdict::Close) << "the tables may lack a rating";
    fixture.board().phases = Phases::L2;
    EXPECT_EQ(fixture.find("phases").verdict, Verdict::Fails);
    EXPECT_EQ(fixture.onBoard("phases").verdict, Verdict::Holds);
    fixture.supply().phases = Phases::L1;
    EXPECT_EQ(fixture.onBoard("phases").verdict, Verdict::Fails);
}

TEST(Contradictions, AnAdjustableBreakerIsNotSetAboveItsRating) {
    Fixture fixture;
    fixture.circuit().device = {"60947-2", typed(amperes(160)), typed(kiloamperes(36))};
    EXPECT_EQ(fixture.find("device-rating").verdict, Verdict::DoesNotApply);
    fixture.circuit().device.thermalSetting = typed(amperes(144));
    EXPECT_EQ(fixture.find("device-rating").verdict, Verdict::Holds);
    fixture.circuit().device.thermalSetting = typed(amperes(200));
    EXPECT_EQ(fixture.find("device-rating").sentence.key, "check.device-rating.setting");
}

TEST(Contradictions, AnRcboHasAResidualPart) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("device-residual").verdict, Verdict::DoesNotApply);
    fixture.circuit().device.family = "61009-B";
    const Finding finding = fixture.find("device-residual");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
    EXPECT_EQ(test::missingFields(finding), "residual.fitted");
    EXPECT_EQ(finding.sentence.key, "check.device-residual.not-recorded");
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    EXPECT_EQ(fixture.find("device-residual").verdict, Verdict::Holds);
}

TEST(Contradictions, EquipmentForTheVoltageBetweenLinesNeedsThreePhases) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("equipment-voltage").verdict, Verdict::DoesNotApply);
    fixture.addEquipment("Oven", kilowatts(10)).ratedVoltage = typed(volts(240));
    EXPECT_EQ(fixture.find("equipment-voltage").verdict, Verdict::Holds);
    fixture.installation.equipment.back().ratedVoltage = typed(volts(400));
    const Finding finding = fixture.find("equipment-voltage");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments.front()), "Oven");
    fixture.circuit().phases = Phases::Three;
    EXPECT_EQ(fixture.find("equipment-voltage").verdict, Verdict::DoesNotApply);
}

/// A shower of 45.7 A on a 32 A breaker in flat cable of 4 mm2, which carries 37 A (BS 7671, table 4D5, from
/// memory).
Fixture withShower() {
    Fixture fixture;
    fixture.circuit().device.ratedCurrent = typed(amperes(32));
    fixture.circuit().load = {};
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    fixture.addEquipment("shower", kilowatts(10.5)).kind = EquipmentKind::InstantaneousHeater;
    return fixture;
}

TEST(LoadAgreement, AClampReadWhileTheEquipmentRestedSettlesNothing) {
    Fixture fixture = withShower();
    EXPECT_EQ(fixture.find("load-agreement").verdict, Verdict::DoesNotApply) << "one figure";
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Fails);
    fixture.reading().measuredLoad = read(amperes(2), 0);
    const Finding finding = fixture.find("load-agreement");
    EXPECT_EQ(finding.verdict, Verdict::Close) << testing::PrintToString(finding);
    EXPECT_NEAR(finding.result->value, 45.65, 0.01);
    EXPECT_NEAR(finding.limit->value, 2.2, 1e-9) << "a tenth";
    for (const char* check :
         {"load-device", "load-wiring", "hidden-overload", "conductor-heat", "early-operation"}) {
        const Finding doubted = fixture.find(check);
        EXPECT_EQ(doubted.verdict, Verdict::CannotTell) << testing::PrintToString(doubted);
        EXPECT_EQ(doubted.sentence.key, "check.load.measured-in-doubt") << check;
        EXPECT_EQ(test::missingFields(doubted), "measuredLoad_A") << check;
        EXPECT_EQ(fixture.find(check, fixture.circuit().id, Detail::VerdictOnly).verdict,
                  Verdict::CannotTell);
    }
    fixture.reading().measuredLoad = read(amperes(44), 0);
    EXPECT_EQ(fixture.find("load-agreement").verdict, Verdict::Holds) << "within a tenth";
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Fails) << "the clamp goes before";
}

// 45.65 A over 30 m drop 6.5 % of 230 V at 11 mV/A/m (BS 7671, table 4D5, from memory); 2 A drop 0.3 %.
TEST(LoadAgreement, ADropThatTheEquipmentWouldNotKeepToIsInDoubt) {
    Fixture fixture = withShower();
    fixture.wiring().length = typed(metres(30));
    fixture.reading().measuredLoad = read(amperes(2), 0);
    const Finding doubted = fixture.find("drop");
    EXPECT_EQ(doubted.verdict, Verdict::CannotTell) << testing::PrintToString(doubted);
    EXPECT_EQ(doubted.sentence.key, "check.load.measured-in-doubt");
    fixture.wiring().length = typed(metres(15));
    const Finding near = fixture.find("drop");
    EXPECT_EQ(near.verdict, Verdict::Holds) << "3.3 % with either " << testing::PrintToString(near);
}

TEST(LoadAgreement, AHeatThatTheEquipmentWouldPassOverItsRunsIsInDoubt) {
    Fixture fixture = withShower();
    Equipment& lamp = fixture.addEquipment("lamp", watts(460));
    lamp.onTime = lamp.offTime = typed(minutes(5));
    fixture.reading().measuredLoad = read(amperes(2), 0);
    const Finding doubted = fixture.find("conductor-heat");
    EXPECT_EQ(doubted.verdict, Verdict::CannotTell)
        << "the shower runs without end " << testing::PrintToString(doubted);
    EXPECT_EQ(doubted.sentence.key, "check.load.measured-in-doubt");
    Equipment& shower = fixture.installation.equipment.front();
    shower.onTime = typed(minutes(1));
    shower.offTime = typed(minutes(59));
    EXPECT_EQ(fixture.find("conductor-heat").verdict, Verdict::Holds)
        << "in short runs the wiring bears it " << testing::PrintToString(fixture.find("conductor-heat"));
}

TEST(LoadAgreement, WhatHoldsByTheEquipmentTooHolds) {
    Fixture fixture = withShower();
    fixture.circuit().device.ratedCurrent = typed(amperes(50));
    fixture.reading().measuredLoad = read(amperes(2), 0);
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Holds);
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::Holds);
    EXPECT_EQ(fixture.find("load-agreement").verdict, Verdict::Close);
}

TEST(LoadAgreement, EquipmentThatCameLaterIsNoWitness) {
    Fixture fixture = withShower();
    fixture.addEquipment("lamp", watts(460));
    fixture.reading().measuredLoad = read(amperes(2), 0);
    fixture.visit().started = fixture.visit().ended = Date{std::chrono::year{2021} / 3 / 15};
    fixture.installation.equipment.front().since = Date{std::chrono::year{2024} / 5 / 8};
    EXPECT_EQ(fixture.find("load-agreement").verdict, Verdict::Holds) << "the lamp's 2 A";
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Holds);
}

TEST(LoadAgreement, ATypedLoadIsDoubtedLikewiseUnlessItHoldsAnAllowance) {
    Fixture fixture = withShower();
    fixture.circuit().load = typed(amperes(5));
    EXPECT_EQ(fixture.find("load-agreement").sentence.key, "check.load-agreement.close-typed");
    EXPECT_EQ(fixture.find("load-device").sentence.key, "check.load.typed-in-doubt");
    EXPECT_EQ(test::missingFields(fixture.find("hidden-overload")), "load_A");
    fixture.circuit().load = typed(amperes(21));
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::CannotTell);
    // 10 A and 30 % of the rest of a household's cooking appliances (The Electrician's Guide,
    // table 6.2): 20.7 A.
    fixture.installation.equipment.back().kind = EquipmentKind::Cooker;
    fixture.installation.site.occupancy = Occupancy::Dwelling;
    EXPECT_EQ(fixture.find("load-device").verdict, Verdict::Holds);
    EXPECT_EQ(fixture.find("load-agreement").sentence.key, "check.load-agreement.holds-typed");
}

TEST(Contradictions, NeedNothingThatIsNotRecorded) {
    Fixture fixture;
    fixture.circuit().device = {};
    fixture.wiring().lineSize = {};
    fixture.wiring().protectiveSize = test::notApplicable<CrossSection>();
    for (const char* check : {"conductor-sizes", "device-rating", "load-agreement"})
        EXPECT_EQ(fixture.find(check).verdict, Verdict::DoesNotApply) << check;
}

/// The visit before, in which the same was read.
struct TwoVisits : Fixture {
    TwoVisits() {
        const Id earlier = installation.site.id; // any id that no other visit has
        Visit before = visit();
        before.id = earlier;
        installation.visits.insert(installation.visits.begin(), before);
        CircuitReading circuitBefore = reading();
        circuitBefore.visit = earlier;
        installation.circuitReadings.push_back(circuitBefore);
        BoardReading boardBefore = boardReading();
        boardBefore.visit = earlier;
        installation.boardReadings.push_back(boardBefore);
    }
    /// What the check finds in the second visit.
    Finding now(std::string_view check, Id subject) const {
        const Assessment assessment =
            loopwright::assess(installation, installation.visits.back().id, test::tables(), ruleSet);
        for (const Finding& finding : assessment.findings)
            if (finding.check == check && finding.subject.id == subject) return finding;
        throw std::runtime_error("no finding of " + std::string(check));
    }
    Finding drift(Id subject) const { return now("drift", subject); }
    CircuitReading& before() { return installation.circuitReadings.back(); }
};

TEST(Drift, IsSeenAgainstTheVisitBefore) {
    TwoVisits fixture;
    const Id circuit = fixture.circuit().id;
    EXPECT_EQ(fixture.drift(circuit).verdict, Verdict::Holds)
        << testing::PrintToString(fixture.drift(circuit));
    fixture.before().loopImpedance = read(ohms(0.25));
    EXPECT_EQ(fixture.drift(circuit).sentence.key, "check.drift.loop");
    EXPECT_EQ(fixture.drift(circuit).verdict, Verdict::Close) << "a drift is no fault";
    fixture.before().loopImpedance = read(ohms(0.53));
    fixture.before().insulationEarth = read(megohms(40), 0);
    fixture.reading().insulationEarth = read(megohms(3), 0);
    EXPECT_EQ(fixture.drift(circuit).sentence.key, "check.drift.insulation");
    fixture.reading().insulationEarth = read(megohms(20), 0);
    EXPECT_EQ(fixture.drift(circuit).verdict, Verdict::Holds);
    fixture.before() = {};
    EXPECT_EQ(fixture.drift(circuit).verdict, Verdict::DoesNotApply);
}

TEST(Drift, OfAnElectrodeIsSeenAtItsBoard) {
    TwoVisits fixture;
    fixture.boardReading().electrodeResistance = read(ohms(210), 0);
    fixture.installation.boardReadings.back().electrodeResistance = read(ohms(142), 0);
    EXPECT_EQ(fixture.drift(fixture.board().id).sentence.key, "check.drift.electrode");
}

/// A day of a year.
Date inMay(int year) {
    return Date{std::chrono::year{year} / 5 / 8};
}

TEST(Changed, NewEquipmentOnAnOldDeviceIsTold) {
    Fixture first;
    first.addEquipment("Kiln", kilowatts(3)).since = inMay(2023);
    EXPECT_EQ(first.find("changed").verdict, Verdict::DoesNotApply) << "there is no visit before";

    TwoVisits fixture;
    fixture.installation.visits.front().started = inMay(2021);
    Equipment& kiln = fixture.addEquipment("Kiln", kilowatts(3));
    const auto changed = [&] { return fixture.now("changed", fixture.circuit().id); };
    EXPECT_EQ(changed().verdict, Verdict::DoesNotApply) << "nobody recorded a day";
    kiln.since = inMay(2023);
    EXPECT_EQ(changed().verdict, Verdict::Close);
    EXPECT_EQ(changed().sentence.key, "check.changed.close");
    fixture.installation.visits.front().ended = inMay(2023);
    EXPECT_EQ(changed().verdict, Verdict::Holds) << "on the last day of the visit itself";
    fixture.installation.visits.front().ended.reset();
    fixture.circuit().deviceSince = inMay(2020);
    EXPECT_EQ(changed().verdict, Verdict::Close) << "the device is older";
    fixture.circuit().deviceSince = inMay(2023);
    EXPECT_EQ(changed().sentence.key, "check.changed.together");
    kiln.since.reset();
    EXPECT_EQ(changed().sentence.key, "check.changed.device") << "the device alone";
    fixture.installation.visits.back().ended = inMay(2022);
    EXPECT_EQ(changed().verdict, Verdict::Holds) << "it was changed after this visit";
    fixture.installation.visits.back().ended.reset();
    EXPECT_EQ(changed().verdict, Verdict::Close);
    fixture.circuit().wiringSince = inMay(2023);
    EXPECT_EQ(changed().verdict, Verdict::Holds);
}

} // namespace
} // namespace loopwright
