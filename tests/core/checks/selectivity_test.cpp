// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// The overcurrent device of a circuit against the next one upstream.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

std::string_view said(const Fixture& fixture) {
    return fixture.find("selectivity").sentence.key;
}
double provenUpTo(const Finding& finding) {
    for (const Term& term : finding.working->terms)
        if (term.symbol == "I_s") return term.value.value;
    return 0;
}

double argument(const Finding& finding, std::size_t index) {
    return std::get<Measure>(finding.sentence.arguments.at(index)).value;
}

// A 100 A gG fuse holds out for 0.1 s up to 820 A (IEC 60269-1, table 3), by when a type B breaker of 20 A,
// sure to operate at once from 100 A (IEC 60898-1, table 2), has operated.
TEST(Selectivity, OfABreakerBehindAFuseIsProvenUpToTheFusesGate) {
    Fixture fixture;
    const Finding finding = fixture.find("selectivity");
    EXPECT_EQ(finding.verdict, Verdict::Holds);
    EXPECT_EQ(finding.sentence.key, "check.selectivity.partial") << "2.8 kA may flow";
    EXPECT_NEAR(provenUpTo(finding), 0.82, 1e-9) << testing::PrintToString(finding);
    EXPECT_NEAR(finding.result->value, 29, 1e-9) << "1.45 x 20 A";
    EXPECT_NEAR(finding.limit->value, 125, 1e-9) << "1.25 x 100 A";
    fixture.board().phases = Phases::L1;
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(0.7), 1);
    fixture.boardReading().loopImpedance = read(ohms(0.4));
    EXPECT_EQ(said(fixture), "check.selectivity.holds") << "0.7 kA";
}

// Class 3, type B up to 32 A, 6 kA: 45 000 A2s (EN 60898-1, annex ZA). A 160 A fuse needs 64 000 A2s to begin
// to melt (IEC 60269-2), both from memory.
TEST(Selectivity, OfABreakerBehindALargeFuseIsProvenByEnergy) {
    Fixture fixture;
    fixture.supply().fuse.ratedCurrent = typed(amperes(160));
    const Finding finding = fixture.find("selectivity");
    EXPECT_EQ(finding.sentence.key, "check.selectivity.holds") << testing::PrintToString(finding);
    EXPECT_NEAR(provenUpTo(finding), 6, 1e-9) << "the breaker's own breaking capacity";
    EXPECT_TRUE(finding.working->restsOnAssumption)
        << "nobody recorded its class " << testing::PrintToString(finding);
}

// 1.6 : 1 (IEC 60269-2): 100 A above 63 A, not above 80 A.
TEST(Selectivity, OfFusesGoesByRatioAndEnergy) {
    Fixture fixture;
    fixture.circuit().device = {"88-2", typed(amperes(63)), typed(kiloamperes(80))};
    EXPECT_EQ(said(fixture), "check.selectivity.holds");
    fixture.circuit().device.ratedCurrent = typed(amperes(80));
    const Finding near = fixture.find("selectivity");
    EXPECT_EQ(near.verdict, Verdict::Close) << "1.6 x 80 A is more than 1.25 x 100 A";
    EXPECT_EQ(near.sentence.key, "check.selectivity.close");
}

TEST(Selectivity, OfBreakersEndsBelowTheInstantaneousBandUpstream) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    feeder.device = {"60898-C", typed(amperes(63)), typed(kiloamperes(10))};
    const Finding finding = fixture.find("selectivity");
    EXPECT_EQ(finding.sentence.key, "check.selectivity.gap") << testing::PrintToString(finding);
    EXPECT_NEAR(provenUpTo(finding), 0.07119, 1e-9) << "1.13 x 63 A";
    EXPECT_NEAR(argument(finding, 5), 100, 1e-9) << "5 x 20 A";
    EXPECT_NEAR(argument(finding, 6), 315, 1e-9) << "5 x 63 A";
    feeder.device = {"60898-B", typed(amperes(32)), typed(kiloamperes(10))};
    const Finding close = fixture.find("selectivity");
    EXPECT_EQ(close.verdict, Verdict::Close) << "20 A operates from 100 A on, 32 A may from 96 A on";
    EXPECT_EQ(close.sentence.key, "check.selectivity.no-faults");
    feeder.device.ratedCurrent = typed(amperes(20));
    EXPECT_EQ(said(fixture), "check.selectivity.close") << "alike";
}

// A type C breaker of 32 A is sure to operate at once from 320 A on (IEC 60898-1, table 7) and in a minute at
// 2.55 times its rating; a 63 A gG fuse is promised to hold 1.25 times its rating, and 0.1 s at 450 A (IEC
// 60269-1, table 3): from memory. Between 79 A and 320 A nobody promises which is first.
TEST(Selectivity, NamesTheGapBetweenOverloadAndFault) {
    Fixture fixture;
    fixture.supply().fuse.ratedCurrent = typed(amperes(63));
    fixture.circuit().device = {"60898-C", typed(amperes(32)), typed(kiloamperes(6))};
    fixture.board().phases = Phases::L1;
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(0.36));
    fixture.boardReading().loopImpedance = read(ohms(0.7));
    const Finding finding = fixture.find("selectivity");
    EXPECT_EQ(finding.sentence.key, "check.selectivity.gap") << testing::PrintToString(finding);
    EXPECT_NEAR(provenUpTo(finding), 0.07875, 1e-9) << "not 0.45 kA";
    EXPECT_NEAR(argument(finding, 5), 320, 1e-9);
    EXPECT_NEAR(argument(finding, 6), 450, 1e-9);
    fixture.boardReading().prospectiveFaultCurrent = read(kiloamperes(0.25));
    fixture.boardReading().loopImpedance = read(ohms(1));
    EXPECT_EQ(said(fixture), "check.selectivity.no-faults")
        << "none of the faults that may flow is told apart";
}

TEST(Selectivity, OfAnAdjustableBreakerGoesByItsSettings) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    feeder.device = {"60947-2", typed(amperes(160)), typed(kiloamperes(36))};
    feeder.device.thermalSetting = typed(amperes(100));
    feeder.device.instantaneousSetting = typed(amperes(1500));
    const Finding finding = fixture.find("selectivity");
    EXPECT_NEAR(finding.limit->value, 105, 1e-9) << "1.05 I_r (IEC 60947-2)";
    feeder.device.shortTimeSetting = typed(amperes(800));
    feeder.device.shortTimeDelay = typed(seconds(0.3), 1);
    EXPECT_GT(provenUpTo(fixture.find("selectivity")), 0.6) << testing::PrintToString(finding);
    feeder.device.thermalSetting = typed(amperes(20));
    EXPECT_EQ(fixture.find("selectivity").verdict, Verdict::Close);
}

// 1.13 x 40 A = 45.2 A are carried where it was calibrated (IEC 60898-1, table 7); a maker's breakers carry
// 0.745 of that 40 K above, which is less than the 1.45 x 25 A that are sure to operate the own device.
TEST(Selectivity, WarmthUpstreamLeavesLessToTellOverloadsApart) {
    Fixture fixture;
    fixture.nest().device = {"60898-C", typed(amperes(40)), typed(kiloamperes(6))};
    fixture.circuit().device.ratedCurrent = typed(amperes(25));
    Board& upstream = fixture.installation.boards.back();
    EXPECT_EQ(fixture.find("selectivity").verdict, Verdict::Holds);
    upstream.ambient = typed(celsius(70));
    const Finding warm = fixture.find("selectivity");
    EXPECT_EQ(warm.verdict, Verdict::Close) << testing::PrintToString(warm);
    EXPECT_NEAR(warm.limit->value, 1.13 * 40 * 0.745, 1e-9);
    fixture.circuit().device.ratedCurrent = typed(amperes(16));
    const Finding usual = fixture.find("selectivity");
    upstream.ambient = {};
    EXPECT_EQ(usual.verdict, fixture.find("selectivity").verdict) << "23.2 A is less than 33.7 A";
    upstream.ambient = typed(celsius(90));
    EXPECT_EQ(fixture.find("selectivity").verdict, Verdict::CannotTell) << "nobody knows how little";
}

// 1.45 x 25 A = 36.25 A are sure to operate it; in the cold it takes up to 1.156 times as much.
TEST(Selectivity, ColdHoldsTheOwnDeviceBack) {
    Fixture fixture;
    fixture.nest().device = {"60898-C", typed(amperes(35)), typed(kiloamperes(6))};
    fixture.circuit().device.ratedCurrent = typed(amperes(25));
    EXPECT_EQ(fixture.find("selectivity").verdict, Verdict::Holds) << "39.55 A are carried";
    fixture.board().ambient = typed(celsius(0));
    EXPECT_EQ(fixture.find("selectivity").verdict, Verdict::Close)
        << testing::PrintToString(fixture.find("selectivity"));
}

TEST(Selectivity, SaysWhereOnlyOverloadsAreTold) {
    Fixture fixture;
    fixture.supply().fuse = {"1361", typed(amperes(100)), typed(kiloamperes(33))};
    const Finding finding = fixture.find("selectivity");
    EXPECT_EQ(finding.verdict, Verdict::Holds);
    EXPECT_EQ(finding.sentence.key, "check.selectivity.overload-only");
}

TEST(Selectivity, CannotBeToldOfDevicesThatNobodyKnows) {
    Fixture fixture;
    fixture.supply().fuse = {};
    EXPECT_EQ(test::missingFields(fixture.find("selectivity")), "fuse.family fuse.ratedCurrent_A");
    fixture.nest().device.family = "";
    EXPECT_EQ(test::missingFields(fixture.find("selectivity")), "device.family");
    fixture.installation.circuits.back().device = {"60898-B", typed(amperes(500)), {}};
    EXPECT_EQ(test::missingFields(fixture.find("selectivity")), "device.ratedCurrent_A") << "none is made";
}

} // namespace
} // namespace loopwright
