// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Residual current devices: what they protect, how quickly they act, and where they are called for.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

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
