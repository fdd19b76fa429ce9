// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Fault currents, what they heat, and voltage drop.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

TEST(BreakingCapacity, TheProspectiveCurrentOfTheBoardCounts) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Holds);
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(5.8), 1);
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Close);
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(6.4), 1);
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Fails);
    fixture.reading().prospectiveFaultCurrent = read(kiloamperes(3), 1);
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Holds) << "read at the device itself";
}

TEST(BreakingCapacity, FollowsFromTheLoopWhereNobodyReadIt) {
    // 1.1 x 230 V / 0.18 ohm = 1.406 kA, twice that between three phases (IEC 60909-0; common practice for
    // the twice).
    Fixture fixture;
    fixture.boardReading().prospectiveFaultCurrent = {};
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 2 * 1.4056, 0.001);
    fixture.board().phases = Phases::L1;
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 1.4056, 0.001);
}

TEST(BreakingCapacity, TheLargestOfWhatWasReadAndWhatFollowsCounts) {
    // To earth 1.1 x 230 V / 0.18 ohm = 1.406 kA, to neutral 253 V / 0.1 ohm = 2.53 kA, between three phases
    // 5.06 kA.
    Fixture fixture;
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 2 * 1.4056, 0.001) << "2.6 kA was read";
    fixture.boardReading().neutralLoopImpedance = read(ohms(0.1));
    const Finding finding = fixture.find("breaking-capacity");
    EXPECT_NEAR(finding.result->value, 5.06, 1e-9) << testing::PrintToString(finding);
    std::string symbols;
    for (const Term& term : finding.working->terms)
        if (term.value.unit == units::kiloampere) symbols += term.symbol + " ";
    EXPECT_EQ(symbols, "I_pf I_LE I_LN I_LLL I_pf I_cn ");
    fixture.board().phases = Phases::L1;
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 2.6, 1e-9) << "what was read is more";
    fixture.boardReading().prospectiveFaultCurrent = {};
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 2.53, 1e-9);
    fixture.boardReading().neutralLoopImpedance = test::below(ohms(0.05));
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::CannotTell) << "5.06 kA or more";
}

TEST(BreakingCapacity, ALoopThroughAnElectrodeSaysNothingOfFaultsToNeutral) {
    Fixture fixture;
    fixture.makeTt();
    fixture.boardReading().prospectiveFaultCurrent = {};
    fixture.supplyReading().prospectiveFaultCurrent = {};
    EXPECT_EQ(test::missingFields(fixture.find("breaking-capacity")), "prospectiveFaultCurrent_kA");
    fixture.boardReading().neutralLoopImpedance = read(ohms(0.1));
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, 5.06, 1e-9);
}

TEST(BreakingCapacity, TheSupplysCurrentIsOnlyAnUpperBoundFurtherIn) {
    Fixture fixture;
    fixture.nest().wiring.length = {};
    fixture.boardReading().prospectiveFaultCurrent = {};
    fixture.boardReading().loopImpedance = {};
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Holds) << "3.2 kA at the supply, less here";
    fixture.supplyReading().prospectiveFaultCurrent = read(kiloamperes(9), 1);
    const Finding finding = fixture.find("breaking-capacity");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "prospectiveFaultCurrent_kA");
    EXPECT_EQ(finding.missing.front().kind, RecordKind::BoardReading);
}

// 16 mm2 of copper, 1.15 mohm/m at 20 degC (IEC 60228, table 2, class 2), behind a supply of 253 V / 9 kA. A
// length that was paced may be less by 30 % (our own choice, judgement_bands.csv).
TEST(BreakingCapacity, TheWiringUpToABoardTakesOffWhatItsLineConductorsMust) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    feeder.wiring.length = typed(metres(60));
    fixture.boardReading().prospectiveFaultCurrent = {};
    fixture.boardReading().loopImpedance = {};
    fixture.supplyReading().prospectiveFaultCurrent = read(kiloamperes(9), 1);
    const double driving = 230 * fixture.ruleSet.voltageFactorMax, run = 0.7 * 0.00115 * 60;
    const auto left = [&](double resistance) {
        return driving / std::hypot(driving / 9000, resistance) / 1000;
    };
    const Finding behind = fixture.find("breaking-capacity");
    EXPECT_EQ(behind.verdict, Verdict::Holds) << testing::PrintToString(behind);
    EXPECT_NEAR(behind.result->value, left(run), 1e-9);
    feeder.wiring.parallelConductors = typed(2.0);
    EXPECT_NEAR(fixture.find("breaking-capacity").result->value, left(run / 2), 1e-9);
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::CannotTell)
        << "6.8 kA and less; 6 kA breaker";
}

// 253 V through 0.5 ohm are 506 A, through 0.2 ohm 1265 A; with a protective conductor of its own the loop to
// earth may be several times that to neutral.
TEST(BreakingCapacity, TheLoopToEarthAloneIsALowerBound) {
    Fixture fixture;
    fixture.supply().earthing = Earthing::TnS;
    fixture.board().phases = Phases::L1;
    fixture.circuit().device = {"3036", typed(amperes(30)), typed(kiloamperes(1))};
    fixture.boardReading().prospectiveFaultCurrent = {};
    fixture.supplyReading().prospectiveFaultCurrent = {};
    fixture.boardReading().loopImpedance = read(ohms(0.5));
    const Finding lower = fixture.find("breaking-capacity");
    EXPECT_EQ(lower.verdict, Verdict::CannotTell) << testing::PrintToString(lower);
    EXPECT_EQ(test::missingFields(lower), "prospectiveFaultCurrent_kA");
    fixture.boardReading().neutralLoopImpedance = read(ohms(0.2));
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Fails);
    fixture.boardReading().neutralLoopImpedance = {};
    fixture.boardReading().loopImpedance = read(ohms(0.2));
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Fails) << "no less than this flows";
    fixture.boardReading().loopImpedance = read(ohms(0.5));
    fixture.supply().earthing = Earthing::TnCS;
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Holds) << "the loops are one up to here";
    fixture.nest();
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::CannotTell) << "but not behind a feeder";
    fixture.supplyReading().prospectiveFaultCurrent = read(kiloamperes(0.9), 1);
    fixture.supplyReading().externalLoopImpedance = read(ohms(0.6));
    EXPECT_EQ(fixture.find("breaking-capacity").verdict, Verdict::Holds) << "no more comes from the supply";
}

TEST(BreakingCapacity, AnUnmarkedDeviceIsTakenAsTheLeastOfItsFamily) {
    Fixture fixture;
    fixture.circuit().device = {
        "3036", typed(amperes(15)), {}}; // S1A: 1 kA (Guide to the Wiring Regulations, C 4.3)
    const Finding above = fixture.find("breaking-capacity");
    EXPECT_EQ(above.verdict, Verdict::CannotTell) << "a better one may be fitted";
    EXPECT_EQ(test::missingFields(above), "device.breakingCapacity_kA");
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(0.8), 1);
    fixture.boardReading().loopImpedance = read(ohms(0.7)); // which comes to less, three-phase too
    const Finding below = fixture.find("breaking-capacity");
    EXPECT_EQ(below.verdict, Verdict::Holds);
    EXPECT_TRUE(below.working->restsOnAssumption);
}

// A consumer unit behind a 100 A service fuse of type II: 16 kA, where its maker declares it (BS EN 61439-3).
TEST(BreakingCapacity, AFuseUpstreamMayBackItUp) {
    Fixture fixture;
    fixture.board().withstandCurrent = typed(kiloamperes(16));
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(9), 1);
    const auto finding = [&] { return fixture.find("breaking-capacity"); };
    EXPECT_EQ(finding().verdict, Verdict::Fails) << "no table is published for a BS 88-2 fuse";
    EXPECT_EQ(finding().sentence.key, "check.breaking-capacity.fails-behind-fuse");
    fixture.supply().fuse = {"1361", typed(amperes(100)), typed(kiloamperes(33))};
    EXPECT_EQ(finding().verdict, Verdict::Close) << testing::PrintToString(finding());
    EXPECT_EQ(finding().sentence.key, "check.breaking-capacity.backed-up");
    EXPECT_NEAR(finding().limit->value, 16, 1e-9);
    fixture.board().withstandCurrent = typed(kiloamperes(6));
    EXPECT_EQ(finding().verdict, Verdict::Fails) << "its maker does not declare it";
    fixture.board().withstandCurrent = typed(kiloamperes(16));
    fixture.supply().fuse.breakingCapacity = typed(kiloamperes(16.5), 1);
    EXPECT_EQ(finding().verdict, Verdict::Fails) << "a fuse of type I";
    fixture.supply().fuse = {};
    EXPECT_EQ(finding().sentence.key, "check.breaking-capacity.fails") << "no fuse is known";
    fixture.nest();
    EXPECT_EQ(finding().sentence.key, "check.breaking-capacity.fails-behind-fuse") << "the feeder's";
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(17), 1);
    fixture.supply().fuse = {"1361", typed(amperes(100)), typed(kiloamperes(33))};
    EXPECT_EQ(finding().verdict, Verdict::Fails);
}

TEST(BoardWithstand, ComparesWithWhatTheBoardMayBeUsedAt) {
    Fixture fixture;
    EXPECT_EQ(fixture.onBoard("board-withstand").verdict, Verdict::Holds);
    fixture.board().withstandCurrent = typed(kiloamperes(2));
    EXPECT_EQ(fixture.onBoard("board-withstand").verdict, Verdict::Fails);
    fixture.board().withstandCurrent = typed(kiloamperes(2.85), 2); // 2 x 253 V / 0.18 ohm = 2.81 kA
    EXPECT_EQ(fixture.onBoard("board-withstand").verdict, Verdict::Close);
    fixture.board().withstandCurrent = {};
    EXPECT_EQ(test::missingFields(fixture.onBoard("board-withstand")), "withstandCurrent_kA");
}

TEST(Adiabatic, AFuseLetsInTheEnergyOfItsLatestTime) {
    // we-b-01: 90 A for 0.4 s behind a 15 A BS 3036 fuse, k 115: 0.49 mm2 (Basic Electrical Installation
    // Work, Newnes).
    Fixture fixture;
    fixture.circuit().device = {"3036", typed(amperes(15)), typed(kiloamperes(4))};
    fixture.reading().loopImpedance = read(ohms(230.0 / 90));
    for (const char* check : {"adiabatic-line", "adiabatic-protective"}) {
        const Finding finding = fixture.find(check);
        EXPECT_EQ(finding.verdict, Verdict::Holds) << testing::PrintToString(finding);
        EXPECT_NEAR(finding.result->value, 0.495, 0.001) << check;
    }
    fixture.wiring().protectiveSize = typed(squareMillimetres(0.5), 1);
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::Close);
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::Holds);
    fixture.wiring().protectiveSize = typed(squareMillimetres(0.4), 1);
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::Fails);
    fixture.wiring().lineSize = typed(squareMillimetres(0.4), 1);
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::Fails);
    fixture.wiring().parallelConductors = typed(2.0);
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::Holds) << "two share the current";
}

TEST(Adiabatic, ABreakerLetsInItsTimeOrItsClassWhicheverIsLess) {
    Fixture fixture; // at the start 2.81 kA; class 3, type B over 16 up to 32 A, 6 kA: 45 000 A2s
    EXPECT_NEAR(fixture.find("adiabatic-line").result->value, std::sqrt(45000) / 115, 0.002);
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    fixture.reading().loopImpedance = read(ohms(0.19));
    const Finding finding = fixture.find("adiabatic-line");
    const double byTime = 230 / 0.19 * std::sqrt(0.1) / 115;
    EXPECT_LT(finding.result->value, byTime) << testing::PrintToString(finding);
    fixture.circuit().device.breakingCapacity = {};
    EXPECT_NEAR(fixture.find("adiabatic-line").result->value, byTime, 1e-9)
        << "no class without a marked capacity";
    EXPECT_TRUE(fixture.find("adiabatic-line").working->restsOnAssumption) << "that it breaks what may flow";
    fixture.wiring().method = InstallationMethod::Unknown;
    EXPECT_EQ(test::missingFields(fixture.find("adiabatic-line")), "device.breakingCapacity_kA")
        << "and whether it protects against overload is not known";
}

TEST(Adiabatic, WithoutAnEndToTheFaultThereIsNoSize) {
    Fixture fixture;
    fixture.reading().loopImpedance = read(ohms(9));
    const Finding finding = fixture.find("adiabatic-line");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_EQ(finding.sentence.key, "check.adiabatic.unlimited");
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::Holds)
        << "a residual device ends it in 40 ms";
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::Fails)
        << "but does not see a fault between live conductors (IEC 60364-5-53, 531.3, from memory)";
}

// 18 m of 2.5 mm2 copper at 7.41 mohm/m (IEC 60228, class 1) there and back are 0.2668 ohm; with 0.2 ohm at
// the board 230 V drive 492.7 A, for 0.1 s (IEC 60898-1): sqrt(I2t) / 115 = 1.355 mm2.
TEST(Adiabatic, ALoopThroughAnElectrodeSaysNothingAboutFaultsBetweenLiveConductors) {
    Fixture fixture;
    fixture.makeTt();
    const Finding unknown = fixture.find("adiabatic-line");
    EXPECT_EQ(unknown.verdict, Verdict::CannotTell) << testing::PrintToString(unknown);
    EXPECT_EQ(test::missingFields(unknown), "neutralLoopImpedance_ohm");
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::Holds);

    fixture.circuit().device.breakingCapacity = {}; // so that no class bounds what it lets through
    fixture.wiring().lineSize = typed(squareMillimetres(2.5), 1);
    fixture.boardReading().neutralLoopImpedance = read(ohms(0.2));
    const auto current = [&] {
        const Finding finding = fixture.find("adiabatic-line");
        for (const Term& term : finding.working->terms)
            if (term.symbol == "I_f") return term.value.value;
        return 0.0;
    };
    EXPECT_NEAR(current(), 492.7, 0.1) << testing::PrintToString(fixture.find("adiabatic-line"));
    fixture.wiring().length = {};
    EXPECT_EQ(test::missingFields(fixture.find("adiabatic-line")), "wiring.length_m");
    fixture.supply().earthing = Earthing::Unknown;
    EXPECT_EQ(test::missingFields(fixture.find("adiabatic-line")), "earthing");
}

// At 1.7 ohm flow 135 A: a type B breaker of 32 A, sure to operate at once from 160 A on, may take the 60 s
// of its test at 2.55 I_n (IEC 60898-1, table 2). 1.5 mm2 of copper in PVC reach their limit in 1.6 s, 4 mm2
// in 11.6 s, 10 mm2 in 72 s (k 115).
TEST(Adiabatic, ALongFaultIsBeyondTheEquationUnlessItHoldsOrIsOverBefore) {
    Fixture fixture;
    fixture.circuit().device.ratedCurrent = typed(amperes(32));
    fixture.reading().loopImpedance = read(ohms(1.7));
    const auto with = [&](double size) {
        fixture.wiring().lineSize = typed(squareMillimetres(size), 1);
        return fixture.find("adiabatic-line");
    };
    const auto tellsOfTime = [](const Finding& finding) {
        for (const Term& term : finding.working->terms)
            if (term.symbol == "t_ad") return true;
        return false;
    };
    EXPECT_EQ(with(1.5).verdict, Verdict::Fails) << "the limit is reached while no heat flows off";
    const Finding unsure = with(4);
    EXPECT_EQ(unsure.verdict, Verdict::CannotTell) << testing::PrintToString(unsure);
    EXPECT_EQ(unsure.sentence.key, "check.adiabatic.too-long");
    EXPECT_TRUE(tellsOfTime(unsure));
    const Finding large = with(10);
    EXPECT_EQ(large.verdict, Verdict::Holds) << testing::PrintToString(large);
    EXPECT_TRUE(tellsOfTime(large));
    fixture.ruleSet.adiabaticTime = seconds(12);
    EXPECT_EQ(with(4).verdict, Verdict::Fails) << "the rule set says how long";
    fixture.reading().loopImpedance = read(ohms(0.53));
    EXPECT_FALSE(tellsOfTime(with(4)));
}

TEST(Adiabatic, WhatServesWithoutASizeDoesNotApplyAndBoundsSettleNothing) {
    Fixture fixture;
    fixture.wiring().protectiveSize = test::notApplicable<CrossSection>();
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::DoesNotApply);
    fixture.wiring().protectiveSize = {};
    EXPECT_EQ(test::missingFields(fixture.find("adiabatic-protective")), "wiring.protectiveSize_mm2");
    fixture.reading().loopImpedance = test::below(ohms(0.5));
    const Finding finding = fixture.find("adiabatic-line");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "loopImpedance_ohm");
}

Finding dropOf(Fixture& fixture, Phases phases, double size, double load, double length) {
    fixture.circuit().phases = phases;
    fixture.circuit().load = typed(amperes(load));
    fixture.wiring().lineSize = typed(squareMillimetres(size), 1);
    fixture.wiring().length = typed(metres(length));
    return fixture.find("drop");
}

TEST(Drop, FollowsFromThePublishedFigures) {
    // we-d-01: 100 A, 150 m, 35 mm2, 1.1 mV/A/m: 16.5 V (cse-distributors.co.uk). we-d-05: 32 A, 30 m, 6 mm2,
    // 7.3 mV/A/m: about 7.0 V (diybanter.com post 4241736).
    Fixture fixture;
    EXPECT_NEAR(dropOf(fixture, Phases::Three, 35, 100, 150).result->value, 16.5 / 398.37 * 100, 0.01);
    const Finding heater = dropOf(fixture, Phases::L1, 6, 32, 30);
    EXPECT_NEAR(heater.result->value, 7.0 / 230 * 100, 0.01);
    EXPECT_EQ(heater.verdict, Verdict::Holds) << "5 %";
    fixture.circuit().use = CircuitUse::Lighting;
    EXPECT_EQ(fixture.find("drop").verdict, Verdict::Fails) << "3 % for lighting";
    EXPECT_EQ(dropOf(fixture, Phases::L1, 6, 32, 29).verdict, Verdict::Close);
}

TEST(Drop, ARingSharesItsLoadOverHalfItsLengthEachWay) {
    // 2.5 mm2, 18 mV/A/m: 26 A over 98 m / 4 = 11.47 V (On-Site Guide method, without its correction for
    // temperature).
    Fixture fixture;
    fixture.makeRing();
    EXPECT_NEAR(dropOf(fixture, Phases::L1, 2.5, 26, 98).result->value, 11.466 / 230 * 100, 0.001);
}

TEST(Drop, TheFeedersShareIsAdded) {
    Fixture fixture;
    const double own = fixture.find("drop").result->value;
    Circuit& feeder = fixture.nest();
    const Id feederId = feeder.id;
    const double share = fixture.find("drop", feederId).result->value;
    EXPECT_GT(share, 0);
    EXPECT_NEAR(fixture.find("drop").result->value, own + share, 1e-9);
}

TEST(Drop, ASinglePhaseLoadOnThreeLinesReturnsThroughTheNeutral) {
    // The same 30 A along the same conductor: 2 r l I over U_0 against sqrt(3) r l I over sqrt(3) U_0 of a
    // balanced load, worked by hand: twice as much (two-core 18, three-core 15 mV/A/m: 2.08 times).
    Fixture fixture;
    fixture.circuit().load = {};
    Equipment& heater = fixture.addEquipment("heater", watts(2300));
    heater.ratedVoltage = typed(volts(230));
    const double alone = fixture.find("drop").result->value;
    fixture.circuit().phases = Phases::Three;
    const auto drop = [&] { return fixture.find("drop").result->value; };
    EXPECT_NEAR(drop(), alone, 1e-9) << testing::PrintToString(fixture.find("drop"));
    fixture.installation.equipment.back().count = typed(3.0);
    EXPECT_LT(drop(), 0.6 * alone) << "one on each line";
    fixture.installation.equipment.back().count = typed(2.0);
    EXPECT_NEAR(drop(), alone, 1e-9);
    fixture.installation.equipment.back().ratedVoltage = typed(volts(400));
    EXPECT_LT(drop(), 0.6 * alone) << "three-phase";
}

TEST(Drop, ABoardOfOnePhaseLoadsOneLineOfItsFeeder) {
    Fixture fixture;
    const Id feeder = fixture.nest().id;
    const double balanced = fixture.find("drop", feeder).result->value;
    fixture.board().phases = Phases::L1;
    EXPECT_GT(fixture.find("drop", feeder).result->value, 1.9 * balanced);
}

TEST(Drop, AFeederOfUnknownLoadIsTakenAtItsRatingAndCannotFailByThat) {
    Fixture fixture;
    fixture.nest().load = {};
    const Finding within = fixture.find("drop");
    EXPECT_EQ(within.verdict, Verdict::Holds);
    EXPECT_TRUE(within.working->restsOnAssumption);
    fixture.wiring().length = typed(metres(45));
    const Finding beyond = fixture.find("drop");
    EXPECT_EQ(beyond.verdict, Verdict::CannotTell) << testing::PrintToString(beyond);
    EXPECT_EQ(test::missingFields(beyond), "load_A");
    EXPECT_EQ(beyond.missing.front().id, fixture.installation.circuits.back().id) << "the feeder's";
    EXPECT_EQ(beyond.sentence.key, "check.lacks.assumed");
}

TEST(Drop, AConductorWithoutAPublishedFigureGoesByItsResistance) {
    Fixture fixture;
    fixture.wiring().material = Material::Aluminium;
    const Finding finding = dropOf(fixture, Phases::L1, 16, 20, 30);
    // 2 x 1.91 ohm/km (IEC 60228) x (1 + 0.00403 x 50) x 20 A x 30 m / 230 V, worked by hand.
    EXPECT_NEAR(finding.result->value, 2 * 1.91e-3 * 1.2015 * 20 * 30 / 230 * 100, 0.01)
        << testing::PrintToString(finding);
    fixture.wiring().length = {};
    EXPECT_EQ(test::missingFields(fixture.find("drop")), "wiring.length_m");
}

} // namespace
} // namespace loopwright
