// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

#include <algorithm>

/// What a device lets into the conductors, where more is known of it than its latest time.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

TEST(FaultEnergy, AFuseLetsThroughNoMoreAtALargerCurrent) {
    Fixture fixture;
    fixture.circuit().device = {"1361", typed(amperes(30)), typed(kiloamperes(16.5), 1)};
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    // 200 A in 0.4 s (BS 1361 30 A, BS 7671:2008 table 41.2) are 16 000 A2s; with k = 115: 1.10 mm2.
    for (const double loop : {1.15, 0.6, 0.43, 0.25}) {
        fixture.reading().loopImpedance = read(ohms(loop));
        const Finding finding = fixture.find("adiabatic-protective");
        EXPECT_EQ(finding.verdict, Verdict::Holds) << loop << " ohm: " << testing::PrintToString(finding);
        ASSERT_TRUE(finding.result) << loop;
        EXPECT_NEAR(finding.result->value, 1.10, 0.01) << loop << " ohm";
    }
}

TEST(FaultEnergy, ABreakerIsTakenByTheClassOfItsOwnBreakingCapacity) {
    Fixture fixture;
    // Through 0.38 ohm flow 605 A, in 0.1 s 36 634 A2s. Class 3, type B up to 16 A, 6 kA: 35 000 A2s (EN
    // 60898-1, annex ZA, from memory), which is less; with k = 115: 1.63 mm2. The 3 kA row's 15 000 A2s are
    // not promised.
    fixture.wiring().protectiveSize = typed(squareMillimetres(2.5), 1);
    fixture.circuit().device = {"60898-B", typed(amperes(16)), typed(kiloamperes(6))};
    fixture.reading().loopImpedance = read(ohms(0.38));
    const Finding finding = fixture.find("adiabatic-protective");
    ASSERT_TRUE(finding.result);
    EXPECT_NEAR(finding.result->value, 1.63, 0.01) << testing::PrintToString(finding);
}

// Behind 0.05 ohm at the board 253 V drive 5.06 kA to earth, and 5.5 kA were read; at the end of the circuit
// flow 383 A, which in 0.1 s let through 14 694 A2s, so that 1.5 mm2 would hold (k 115).
TEST(FaultEnergy, ABreakerLetsThroughMostAtTheStartOfItsCircuit) {
    Fixture fixture;
    fixture.boardReading().loopImpedance = read(ohms(0.05));
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(5.5), 1);
    fixture.reading().loopImpedance = read(ohms(0.6));
    fixture.circuit().device = {"60898-B", typed(amperes(50)), typed(kiloamperes(6))};
    fixture.wiring().lineSize = typed(squareMillimetres(10));
    const Finding unpublished = fixture.find("adiabatic-protective");
    EXPECT_EQ(unpublished.verdict, Verdict::CannotTell) << "no class above 40 A (EN 60898-1, annex ZA)";
    EXPECT_EQ(unpublished.sentence.key, "check.adiabatic.let-through-unknown")
        << testing::PrintToString(unpublished);

    // Class 3, type B over 16 up to 32 A, 6 kA: 45 000 A2s, sqrt / 115 = 1.845 mm2 (EN 60898-1, annex ZA,
    // from memory).
    fixture.circuit().device.ratedCurrent = typed(amperes(32));
    fixture.reading().loopImpedance = read(ohms(0.6));
    fixture.wiring().protectiveSize = typed(squareMillimetres(2.5), 1);
    const Finding byClass = fixture.find("adiabatic-protective");
    EXPECT_EQ(byClass.verdict, Verdict::Holds) << testing::PrintToString(byClass);
    ASSERT_TRUE(byClass.result);
    EXPECT_NEAR(byClass.result->value, 1.845, 0.001);
    EXPECT_TRUE(byClass.working->restsOnAssumption) << "nobody recorded the class";
    fixture.wiring().protectiveSize = typed(squareMillimetres(1.5), 1);
    EXPECT_EQ(fixture.find("adiabatic-protective").verdict, Verdict::CannotTell) << "1.5 mm2 serve to 3 kA";
    fixture.boardReading().loopImpedance = read(ohms(0.1));
    const Finding published = fixture.find("adiabatic-protective");
    EXPECT_EQ(published.verdict, Verdict::Holds) << testing::PrintToString(published);
    EXPECT_EQ(published.sentence.key, "check.adiabatic.published-as-enough");
}

TEST(FaultEnergy, WhatNobodyReadAtTheStartIsTakenFromTheEndAndSaidSo) {
    Fixture fixture;
    fixture.boardReading().loopImpedance = {};
    fixture.boardReading().prospectiveFaultCurrent = {};
    fixture.supplyReading().externalLoopImpedance = {};
    fixture.supplyReading().prospectiveFaultCurrent = {};
    const Finding finding = fixture.find("adiabatic-protective"); // 434 A and 0.1 s: 1.19 mm2
    EXPECT_EQ(finding.verdict, Verdict::Holds) << testing::PrintToString(finding);
    EXPECT_TRUE(finding.working->restsOnAssumption);
    const auto shows = [](const Finding& shown, std::string_view note) {
        return std::ranges::any_of(shown.working->terms,
                                   [&](const Term& term) { return term.note.key == note; });
    };
    EXPECT_TRUE(shows(finding, "check.note.at-least-at-start"));
    fixture.wiring().protectiveSize = typed(squareMillimetres(2.5), 1);
    const Finding large = fixture.find("adiabatic-protective");
    EXPECT_FALSE(shows(large, "check.note.at-least-at-start")) << "it bears all that its class lets through";
    EXPECT_TRUE(shows(large, "check.note.let-through")) << testing::PrintToString(large);
}

// 435.1 of IEC 60364-4-43 (from memory): 1.5 mm2 of method C carry 6 A whatever happens, and the breaker
// breaks 6 kA; 35 000 A2s would ask for 1.63 mm2.
TEST(FaultEnergy, ABreakerThatProtectsAgainstOverloadProtectsAgainstShortCircuits) {
    Fixture fixture;
    fixture.circuit().device.ratedCurrent = typed(amperes(6));
    fixture.wiring().lineSize = typed(squareMillimetres(1.5), 1);
    fixture.reading().loopImpedance = read(ohms(1.2));
    const Finding finding = fixture.find("adiabatic-line");
    EXPECT_EQ(finding.verdict, Verdict::Holds) << testing::PrintToString(finding);
    EXPECT_EQ(finding.sentence.key, "check.adiabatic.overload-protects");
    fixture.wiring().method = InstallationMethod::Unknown;
    EXPECT_EQ(fixture.find("adiabatic-line").verdict, Verdict::CannotTell);
}

} // namespace
} // namespace loopwright
