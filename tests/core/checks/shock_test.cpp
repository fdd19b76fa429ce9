// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

#include <algorithm>
#include <cmath>

/// Protection against shock: loop, time, residual current devices.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

Finding loopOf(Fixture& fixture, Entry<Resistance> loop) {
    fixture.reading().loopImpedance = loop;
    return fixture.find("loop");
}

TEST(Loop, AGuardIsKeptForConductorsThatWereColdWhenRead) {
    // A 20 A type B breaker: 2.19 ohm (BS 7671:2018, table 41.3), 0.8 of it 1.752 ohm (appendix 3).
    Fixture fixture;
    const Finding holds = loopOf(fixture, read(ohms(0.53)));
    EXPECT_EQ(holds.verdict, Verdict::Holds);
    EXPECT_NEAR(holds.limit->value, 0.8 * 2.19, 1e-9);
    EXPECT_EQ(loopOf(fixture, read(ohms(1.70))).verdict, Verdict::Close);
    EXPECT_EQ(loopOf(fixture, read(ohms(1.76))).verdict, Verdict::Fails);
    fixture.ruleSet = test::rules("iec-60364");
    EXPECT_NEAR(loopOf(fixture, read(ohms(0.53))).limit->value, 2.0 / 3 * 2.3, 1e-9)
        << "IEC 60364-6, annex D: two thirds of U_0 / I_a";
}

TEST(Loop, BothTemperatureRulesAreShownAndTheRuleSetSaysWhichDecides) {
    // 0.18 + 0.35 x (1 + 0.00393 x (70 - 20)) = 0.599 ohm (IEC 60228 annex B; worked by hand).
    Fixture fixture;
    const auto value = [](const Finding& finding, std::string_view symbol) {
        for (const Term& term : finding.working->terms)
            if (term.symbol == symbol) return term.value.value;
        return -1.0;
    };
    const Finding guarded = fixture.find("loop");
    EXPECT_NEAR(value(guarded, "Z_s,θ"), 0.599, 0.001) << testing::PrintToString(guarded);
    fixture.ruleSet.loopRule = LoopRule::CorrectedReading;
    const Finding corrected = fixture.find("loop");
    EXPECT_NEAR(corrected.result->value, 0.599, 0.001);
    EXPECT_NEAR(corrected.limit->value, 2.19, 1e-9);
    EXPECT_NEAR(value(corrected, "g Z_max"), 0.8 * 2.19, 1e-9);
    fixture.boardReading().loopImpedance = {};
    EXPECT_NEAR(fixture.find("loop").result->value, 0.14 + 0.39 * 1.1965, 0.001) << "the supply's stands in";
    fixture.supplyReading().externalLoopImpedance = {};
    EXPECT_GT(fixture.find("loop").result->value, 0.6) << "without the board's loop all of the reading warms";
    EXPECT_TRUE(fixture.find("loop").working->restsOnAssumption);
    fixture.ruleSet.loopRule = LoopRule::GuardedLimit;
    EXPECT_FALSE(fixture.find("loop").working->restsOnAssumption) << "shown beside, and not leant on";
    fixture.ruleSet.loopRule = LoopRule::CorrectedReading;
    fixture.boardReading().loopImpedance = read(ohms(0.18));
    fixture.visit().conductorTemperature = typed(celsius(30));
    EXPECT_LT(fixture.find("loop").result->value, 0.599) << "conductors that were warm already grow less";
}

TEST(Loop, ABoundCountsOnlyOnTheSafeSide) {
    Fixture fixture;
    EXPECT_EQ(loopOf(fixture, test::below(ohms(0.05))).verdict, Verdict::Holds);
    EXPECT_EQ(loopOf(fixture, test::above(ohms(5))).verdict, Verdict::Fails)
        << "more than 5 is more than 1.752";
    const Finding open = loopOf(fixture, test::above(ohms(1)));
    EXPECT_EQ(open.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(open), "loopImpedance_ohm");
    EXPECT_EQ(open.sentence.key, "check.lacks.beyond-range");
    EXPECT_EQ(loopOf(fixture, test::below(ohms(3))).verdict, Verdict::CannotTell);
}

TEST(Loop, ALimitationIsMissingAndItsReasonIsSaid) {
    Fixture fixture;
    const Finding finding = loopOf(fixture, test::limited<Resistance>("store locked"));
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "loopImpedance_ohm");
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments.back()), "store locked");
    EXPECT_FALSE(finding.margin);
}

TEST(Loop, WhereOnlyTheResidualDeviceProtectsThatIsSaid) {
    Fixture fixture;
    EXPECT_EQ(loopOf(fixture, read(ohms(3))).verdict, Verdict::Fails);
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    const Finding finding = loopOf(fixture, read(ohms(3)));
    EXPECT_EQ(finding.verdict, Verdict::Close);
    EXPECT_EQ(finding.sentence.key, "check.loop.only-residual");
    // 50 V / 30 mA = 1667 ohm (BS 7671:2018, table 41.5).
    EXPECT_NEAR(finding.limit->value, 1667, 0.5);
    EXPECT_EQ(loopOf(fixture, read(ohms(1700), 0)).verdict, Verdict::Fails);
}

TEST(Loop, DoesNotApplyWhereAnElectrodeEarths) {
    Fixture fixture;
    fixture.makeTt();
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.find("loop").sentence.key, "check.loop.tt");
}

TEST(Loop, NamesEverythingItLacks) {
    Fixture fixture;
    fixture.supply().earthing = Earthing::Unknown;
    fixture.circuit().device = {};
    fixture.reading().loopImpedance = {};
    EXPECT_EQ(test::missingFields(fixture.find("loop")),
              "loopImpedance_ohm device.ratedCurrent_A device.family earthing");
    fixture.circuit().device = {"60898-B", typed(amperes(19)), {}};
    fixture.installation.supplies.clear();
    EXPECT_EQ(test::missingFields(fixture.find("loop")), "loopImpedance_ohm earthing");
}

/// A term of the working; NaN where it is not told.
double valueOf(const Finding& finding, std::string_view symbol) {
    const auto term = std::ranges::find(finding.working->terms, symbol, &Term::symbol);
    return term == finding.working->terms.end() ? std::nan("") : term->value.value;
}

// An instantaneous release set to 800 A is sure to act at 1.2 times that (IEC 60947-2, 8.3.3.1.2).
TEST(Loop, AnAdjustableBreakerIsHeldAgainstItsSettings) {
    Fixture fixture;
    Device& device = fixture.circuit().device;
    device = {"60947-2", typed(amperes(160)), typed(kiloamperes(36))};
    EXPECT_EQ(test::missingFields(fixture.find("loop")), "device.instantaneousSetting_A");
    device.instantaneousSetting = typed(amperes(800));
    fixture.reading().loopImpedance = read(ohms(0.1));
    const Finding within = fixture.find("loop");
    EXPECT_EQ(within.verdict, Verdict::Holds) << testing::PrintToString(within);
    EXPECT_NEAR(valueOf(within, "I_a"), 960, 1e-6);
    EXPECT_NEAR(valueOf(within, "Z_max"), fixture.ruleSet.voltageFactorMin * 230 / 960, 1e-9);
    fixture.reading().loopImpedance = read(ohms(0.3));
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Fails);
}

/// The time found for a loop through which the current `fault` flows (c_min U_0 / Z_s).
Finding timeAt(Fixture& fixture, double fault) {
    fixture.reading().loopImpedance = read(ohms(0.95 * 230 / fault));
    return fixture.find("disconnection");
}

TEST(Disconnection, ABreakerIsCountedOnFromTheTopOfItsInstantaneousBand) {
    Fixture fixture; // 20 A type B: at once from 100 A on, within 45 s from 60 A on, within 1 h from 29 A on
                     // (IEC 60898-1)
    const Finding atOnce = timeAt(fixture, 130);
    EXPECT_EQ(atOnce.verdict, Verdict::Holds) << testing::PrintToString(atOnce);
    EXPECT_DOUBLE_EQ(valueOf(atOnce, "t"), 0.1);
    EXPECT_DOUBLE_EQ(valueOf(atOnce, "t_max"), 0.4);
    const Finding barely = timeAt(fixture, 100);
    EXPECT_EQ(barely.verdict, Verdict::Close) << "an instrument may be off by more than this";
    EXPECT_EQ(barely.sentence.key, "check.disconnection.close-by-current");
    EXPECT_DOUBLE_EQ(barely.limit->value, 100);
    const Finding below = timeAt(fixture, 99);
    EXPECT_EQ(below.verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(below.result->value, 45);
    const Finding nothing = timeAt(fixture, 28);
    EXPECT_EQ(nothing.verdict, Verdict::Fails);
    EXPECT_EQ(nothing.sentence.key, "check.disconnection.fails-unlimited");
    EXPECT_EQ(nothing.result->unit, units::ampere) << "what flows against what is needed";
    EXPECT_DOUBLE_EQ(nothing.limit->value, 100);
}

TEST(Disconnection, AFuseIsCountedOnByItsPublishedPoints) {
    // we-j-02: a 15 A BS 3036 fuse operates in 0.4 s at 90 A (Basic Electrical Installation Work, Newnes).
    Fixture fixture;
    fixture.circuit().device = {"3036", typed(amperes(15)), typed(kiloamperes(4))};
    const Finding finding = timeAt(fixture, 90);
    EXPECT_EQ(finding.verdict, Verdict::Close) << testing::PrintToString(finding);
    EXPECT_NEAR(valueOf(finding, "t"), 0.4, 1e-9);
    EXPECT_DOUBLE_EQ(finding.limit->value, 90);
    EXPECT_EQ(timeAt(fixture, 80).verdict, Verdict::Fails);
}

// 728 A through 0.3 ohm, above 1.2 times the short-time setting of 500 A (IEC 60947-2, from memory); a
// release without a delay takes the 0.2 s of an instantaneous one.
TEST(Disconnection, AReleaseSetToNoDelayStillTakesItsTime) {
    Fixture fixture;
    Device& device = fixture.circuit().device;
    device = {"60947-2", typed(amperes(160)), typed(kiloamperes(36))};
    device.shortTimeSetting = typed(amperes(500));
    device.shortTimeDelay = typed(seconds(0));
    fixture.reading().loopImpedance = read(ohms(0.3));
    const Finding undelayed = fixture.find("disconnection");
    EXPECT_EQ(undelayed.verdict, Verdict::Holds) << testing::PrintToString(undelayed);
    ASSERT_TRUE(undelayed.result);
    EXPECT_NEAR(undelayed.result->value, 0.2, 1e-9);
    device.shortTimeDelay = test::above(seconds(0.1));
    EXPECT_NE(fixture.find("disconnection").verdict, Verdict::Holds) << "no longer than what?";
}

// 0.95 x 230 V / 1.365 ohm = 160.07 A, where type B of 32 A needs 160 A (IEC 60898-1, table 7); readings of
// loops may be off by 30 % (IEC 61557-3, from memory). 728 A of an adjustable breaker become 560 A, less than
// the 600 A at which its release is sure to act.
TEST(Disconnection, IsCloseWhereTheReadingMayHideThatItIsTooLate) {
    Fixture fixture;
    fixture.instrument().loopUncertainty = {};
    Device& device = fixture.circuit().device;
    device.ratedCurrent = typed(amperes(32));
    fixture.reading().loopImpedance = read(ohms(1.365), 3);
    EXPECT_EQ(fixture.find("disconnection").verdict, Verdict::Close)
        << testing::PrintToString(fixture.find("disconnection"));
    device = {"60947-2", typed(amperes(160)), typed(kiloamperes(36))};
    device.shortTimeSetting = typed(amperes(500));
    device.shortTimeDelay = typed(seconds(0.1), 1);
    fixture.reading().loopImpedance = read(ohms(0.3));
    const Finding byTime = fixture.find("disconnection");
    EXPECT_EQ(byTime.verdict, Verdict::Close) << testing::PrintToString(byTime);
    EXPECT_EQ(byTime.sentence.key, "check.disconnection.close-by-uncertainty");
    fixture.reading().loopImpedance = read(ohms(0.25));
    EXPECT_EQ(fixture.find("disconnection").verdict, Verdict::Holds);
}

TEST(Disconnection, TheTimeAllowedDependsOnSystemUseAndRating) {
    // IEC 60364-4-41 table 41.1 and 411.3.2.2 to 411.3.2.4: 0.4 s and 5 s in TN, 0.2 s and 1 s in TT at 230
    // V.
    const auto allowed = [](Fixture& fixture) { return valueOf(fixture.find("disconnection"), "t_max"); };
    Fixture fixture;
    EXPECT_DOUBLE_EQ(allowed(fixture), 0.4);
    fixture.circuit().device.ratedCurrent = typed(amperes(40));
    EXPECT_DOUBLE_EQ(allowed(fixture), 5) << "fixed equipment above 32 A";
    fixture.circuit().use = CircuitUse::Sockets;
    EXPECT_DOUBLE_EQ(allowed(fixture), 0.4) << "sockets up to 63 A";
    fixture.circuit().use = CircuitUse::Distribution;
    EXPECT_DOUBLE_EQ(allowed(fixture), 5);
    fixture.makeTt();
    EXPECT_DOUBLE_EQ(allowed(fixture), 1);
    fixture.circuit().use = CircuitUse::Lighting;
    fixture.circuit().device.ratedCurrent = typed(amperes(6));
    EXPECT_DOUBLE_EQ(allowed(fixture), 0.2);
}

TEST(Disconnection, AResidualDeviceCountsAndInTnIsSaidToStandAlone) {
    Fixture fixture;
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    const Finding alone = timeAt(fixture, 50);
    EXPECT_EQ(alone.verdict, Verdict::Close);
    EXPECT_EQ(alone.sentence.key, "check.disconnection.only-residual");
    EXPECT_DOUBLE_EQ(alone.result->value, 0.04) << "at five times and more (IEC 61008-1)";
    Fixture electrode;
    electrode.makeTt();
    EXPECT_EQ(electrode.find("disconnection").verdict, Verdict::Holds) << "what TT is made for";
}

// At 9 ohm flow 26 A, at which a breaker of 20 A need not operate at all (1.45 I_n; IEC 60898-1, table 7).
TEST(Residual, ADeviceOfUnknownRatingMayEndWhatTheOthersDoNot) {
    Fixture fixture;
    fixture.circuit().residual = {true, {}, ResidualType::A, ResidualDelay::General};
    fixture.reading().loopImpedance = read(ohms(9));
    for (const char* check : {"loop", "disconnection", "adiabatic-protective"}) {
        const Finding finding = fixture.find(check);
        EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
        EXPECT_EQ(test::missingFields(finding), "residual.residualCurrent_mA") << check;
    }
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::Fails) << "no residual device ends that";
    fixture.reading().loopImpedance = read(ohms(0.53));
    for (const char* check : {"loop", "disconnection", "adiabatic-protective"})
        EXPECT_EQ(fixture.find(check).verdict, Verdict::Holds) << check << ": the breaker does it alone";
    fixture.circuit().residual.fitted = false;
    fixture.reading().loopImpedance = read(ohms(9));
    EXPECT_EQ(fixture.find("loop").verdict, Verdict::Fails);
}

TEST(ResidualTouch, TheElectrodeAndTheDeviceTogetherKeepTheTouchVoltageLow) {
    // we-g-01, we-g-02: 50 V / 30 mA = 1667 ohm; 12.74 ohm passes (loop tester manual, Kewtech KT64).
    Fixture fixture;
    EXPECT_EQ(fixture.find("residual-touch").verdict, Verdict::DoesNotApply);
    fixture.makeTt();
    const auto find = [&](double electrode) {
        fixture.supplyReading().electrodeResistance = read(ohms(electrode));
        return fixture.find("residual-touch");
    };
    EXPECT_EQ(find(12.74).verdict, Verdict::Holds);
    EXPECT_NEAR(find(12.74).result->value, 0.382, 0.001);
    EXPECT_EQ(find(1666).verdict, Verdict::Close);
    EXPECT_EQ(find(1700).verdict, Verdict::Fails);
    fixture.board().residual.residualCurrent = typed(milliamperes(300));
    EXPECT_EQ(find(210).verdict, Verdict::Fails) << "63 V";
    EXPECT_NEAR(find(210).result->value, 63, 1e-9);
}

TEST(ResidualTouch, TheMostSensitiveDeviceInThePathCounts) {
    Fixture fixture;
    fixture.makeTt();
    fixture.board().residual.residualCurrent = typed(milliamperes(300));
    fixture.circuit().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    fixture.supplyReading().electrodeResistance = read(ohms(210));
    EXPECT_NEAR(fixture.find("residual-touch").result->value, 6.3, 1e-9);
}

TEST(ResidualTouch, WithoutADeviceItFailsAndWithoutARatingItCannotTell) {
    Fixture fixture;
    fixture.makeTt();
    fixture.board().residual.residualCurrent = {};
    const Finding unknown = fixture.find("residual-touch");
    EXPECT_EQ(unknown.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(unknown), "residual.residualCurrent_mA");
    EXPECT_EQ(unknown.missing.front().kind, RecordKind::Board);
    fixture.board().residual.fitted = false;
    const Finding none = fixture.find("residual-touch");
    EXPECT_EQ(none.verdict, Verdict::Fails);
    EXPECT_EQ(none.sentence.key, "check.residual-touch.none");
}

TEST(ResidualTouch, TheMeasuredLoopStandsForAnElectrodeThatWasNotRead) {
    Fixture fixture;
    fixture.makeTt();
    fixture.supplyReading().electrodeResistance = {};
    EXPECT_NEAR(fixture.find("residual-touch").result->value, 91 * 0.03, 1e-9);
    fixture.reading().loopImpedance = {};
    EXPECT_EQ(test::missingFields(fixture.find("residual-touch")), "electrodeResistance_ohm");
}

Finding timesOf(ResidualDelay delay, double once, double five) {
    Fixture fixture;
    fixture.makeRing();
    fixture.circuit().residual.delay = delay;
    fixture.reading().residualTime = read(milliseconds(once), 0);
    fixture.reading().residualTimeFive = five > 0 ? read(milliseconds(five), 0) : Entry<Time>{};
    return fixture.find("residual-time");
}

TEST(ResidualTime, KeepsTheTimesOfItsStandard) {
    // IEC 61008-1: general 300 ms at I_Δn, 40 ms at five times; delayed 130 to 500 ms, 50 to 150 ms (from
    // memory).
    using enum ResidualDelay;
    EXPECT_EQ(timesOf(General, 28, 14).verdict, Verdict::Holds);
    EXPECT_EQ(timesOf(General, 290, 14).verdict, Verdict::Close);
    EXPECT_EQ(timesOf(General, 342, 14).verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(timesOf(General, 342, 14).limit->value, 300);
    EXPECT_EQ(timesOf(General, 28, 45).verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(timesOf(General, 28, 45).limit->value, 40);
    EXPECT_EQ(timesOf(General, 28, 0).verdict, Verdict::Holds)
        << "the test at five times is judged where it was made";
    EXPECT_EQ(timesOf(Delayed, 400, 100).verdict, Verdict::Holds);
    EXPECT_EQ(timesOf(Delayed, 100, 100).sentence.key, "check.residual-time.fails-soon");
    EXPECT_EQ(timesOf(Delayed, 520, 100).sentence.key, "check.residual-time.fails");
}

TEST(ResidualTime, TheButtonCountsAndAMissingTimeIsNamed) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("residual-time").verdict, Verdict::DoesNotApply);
    fixture.makeRing();
    fixture.reading().residualTime = {};
    EXPECT_EQ(test::missingFields(fixture.find("residual-time")), "residualTime_ms");
    fixture.reading().residualTime = test::above(milliseconds(299));
    EXPECT_EQ(fixture.find("residual-time").verdict, Verdict::CannotTell) << "it may be 299.5";
    fixture.reading().residualTime = test::above(milliseconds(300));
    EXPECT_EQ(fixture.find("residual-time").verdict, Verdict::Fails)
        << "IEC 61008-1, table 1: 300 ms at most, and this is more";
    fixture.reading().residualTime = test::above(milliseconds(500));
    EXPECT_EQ(fixture.find("residual-time").verdict, Verdict::Fails);
    fixture.reading().residualTime = read(milliseconds(28), 0);
    fixture.reading().residualButton = TestOutcome::Wrong;
    EXPECT_EQ(fixture.find("residual-time").sentence.key, "check.residual-time.button");
}

TEST(ResidualTime, ABoardsDeviceIsJudgedOnce) {
    Fixture fixture;
    fixture.makeTt();
    EXPECT_EQ(fixture.onBoard("residual-time").verdict, Verdict::Holds);
    EXPECT_EQ(fixture.find("residual-time").verdict, Verdict::DoesNotApply);
    fixture.boardReading().residualTime = read(milliseconds(342), 0);
    EXPECT_EQ(fixture.onBoard("residual-time").verdict, Verdict::Fails);
}

TEST(AdditionalProtection, SocketsForGeneralUseAskFor30Milliamperes) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply) << "fixed equipment";
    fixture.circuit().use = CircuitUse::Sockets;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
    EXPECT_EQ(fixture.find("additional-protection").sentence.key, "check.additional-protection.none");

    ResidualDevice& own = fixture.circuit().residual;
    own = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Holds) << "30 is what 30 asks for";
    own.residualCurrent = typed(milliamperes(100));
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
    own.residualCurrent = {};
    EXPECT_EQ(test::missingFields(fixture.find("additional-protection")), "residual.residualCurrent_mA");
    own.residualCurrent = typed(milliamperes(30));
    own.delay = ResidualDelay::Delayed;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails)
        << "a delayed device does not count";
    fixture.board().residual = {true, typed(milliamperes(30)), ResidualType::A, ResidualDelay::General};
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Holds) << "the board's counts";
}

TEST(AdditionalProtection, IsAskedForUpToARatingAndOutdoors) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Sockets;
    fixture.circuit().device.ratedCurrent = typed(amperes(63));
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply);
    fixture.circuit().device.ratedCurrent = typed(amperes(32));
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
    fixture.circuit().generalSockets = false;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::DoesNotApply);
    fixture.circuit().outdoors = true;
    EXPECT_EQ(fixture.find("additional-protection").verdict, Verdict::Fails);
    fixture.circuit().device.ratedCurrent = {};
    EXPECT_EQ(test::missingFields(fixture.find("additional-protection")), "device.ratedCurrent_A");
}

} // namespace
} // namespace loopwright
