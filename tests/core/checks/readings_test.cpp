// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

/// Insulation, rings, polarity, electrodes, the supply's loop, and what is missing.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

TEST(Insulation, TheSmallerReadingDecides) {
    // IEC 60364-6, table 6.1: 1.0 megohm up to 500 V.
    Fixture fixture;
    const auto find = [&](Entry<Resistance> live, Entry<Resistance> earth) {
        fixture.reading().insulationLive = live;
        fixture.reading().insulationEarth = earth;
        return fixture.find("insulation");
    };
    const Finding holds = find(test::above(megohms(999)), read(megohms(310)));
    EXPECT_EQ(holds.verdict, Verdict::Holds);
    EXPECT_DOUBLE_EQ(holds.result->value, 310);
    EXPECT_DOUBLE_EQ(holds.limit->value, 1);
    EXPECT_EQ(find(test::above(megohms(999)), test::above(megohms(999))).verdict, Verdict::Holds);
    EXPECT_EQ(find(read(megohms(1.02)), read(megohms(50))).verdict, Verdict::Close);
    const Finding fails = find(read(megohms(200)), read(megohms(0.8), 1));
    EXPECT_EQ(fails.verdict, Verdict::Fails);
    EXPECT_DOUBLE_EQ(fails.result->value, 0.8);
    EXPECT_NEAR(fails.margin.value(), -0.2, 1e-9);
    EXPECT_EQ(find(read(megohms(0)), read(megohms(5))).verdict, Verdict::Fails)
        << "a dead short is a reading";
}

TEST(Insulation, BoundsAndGapsCannotPass) {
    Fixture fixture;
    fixture.reading().insulationLive = test::above(megohms(0.5));
    EXPECT_EQ(fixture.find("insulation").verdict, Verdict::CannotTell) << "0.5 or more may be less than 1";
    fixture.reading().insulationLive = test::below(megohms(0.05));
    EXPECT_EQ(fixture.find("insulation").verdict, Verdict::Fails);
    fixture.reading().insulationLive = {};
    const Finding missing = fixture.find("insulation");
    EXPECT_EQ(missing.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(missing), "insulationLive_Mohm");
    fixture.reading().insulationEarth = read(megohms(0.3));
    EXPECT_EQ(fixture.find("insulation").verdict, Verdict::Fails)
        << "a failure stands whatever else is missing";
    EXPECT_TRUE(fixture.find("insulation").missing.empty());
}

// "<1.00" is less than the 1.0 megohm that IEC 60364-6, table 6.1, asks for at least; ">1" is more.
TEST(Insulation, ABoundAtTheLimitThatPointsPastItFails) {
    Fixture fixture;
    fixture.reading().insulationEarth = test::below(megohms(1));
    const Finding past = fixture.find("insulation");
    EXPECT_EQ(past.verdict, Verdict::Fails) << testing::PrintToString(past);
    EXPECT_DOUBLE_EQ(past.margin.value_or(-9), 0);
    fixture.reading().insulationEarth = test::above(megohms(1));
    EXPECT_EQ(fixture.find("insulation").verdict, Verdict::Close);
}

TEST(Insulation, OneReadingThatIsNotApplicableLeavesTheOtherToDecide) {
    Fixture fixture;
    const auto find = [&](Entry<Resistance> live, Entry<Resistance> earth) {
        fixture.reading().insulationLive = live;
        fixture.reading().insulationEarth = earth;
        return fixture.find("insulation");
    };
    const auto none = test::notApplicable<Resistance>();
    EXPECT_EQ(find(none, read(megohms(200))).verdict, Verdict::Holds);
    EXPECT_EQ(find(none, read(megohms(1.02))).verdict, Verdict::Close);
    EXPECT_EQ(find(none, read(megohms(0.4))).verdict, Verdict::Fails);
    EXPECT_EQ(test::missingFields(find(none, {})), "insulationEarth_Mohm");
    EXPECT_EQ(find(none, test::limited<Resistance>("locked")).sentence.key, "check.lacks.limited");
    EXPECT_EQ(test::missingFields(find({}, none)), "insulationLive_Mohm");
    EXPECT_EQ(find(read(megohms(200)), none).verdict, Verdict::Holds);
    EXPECT_EQ(find(none, none).verdict, Verdict::DoesNotApply);
}

TEST(Ring, AWholeRingReadsAsItsSizesSay) {
    // r_2 / r_1 = 12.1 / 7.41 (IEC 60228); R_1+R_2 = (r_1 + r_2) / 4 (electriciansforums.net thread 16502).
    Fixture fixture;
    EXPECT_EQ(fixture.find("ring").verdict, Verdict::DoesNotApply);
    fixture.makeRing();
    const Finding finding = fixture.find("ring");
    EXPECT_EQ(finding.verdict, Verdict::Holds) << testing::PrintToString(finding);
}

TEST(Ring, SaysWhichPairDisagrees) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().ringNeutral = read(ohms(0.52));
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.fails-neutral");

    // we-f-01: r_1 = r_n = 1.6 and r_2 = 4.1 ohm: the ratio is 2.6 and should be 1.6 (diynot.com thread
    // 443716).
    fixture.reading().ringLine = fixture.reading().ringNeutral = read(ohms(1.6));
    fixture.reading().ringProtective = read(ohms(4.1));
    fixture.reading().continuity = read(ohms(1.42));
    const Finding protective = fixture.find("ring");
    EXPECT_EQ(protective.verdict, Verdict::Fails);
    EXPECT_EQ(protective.sentence.key, "check.ring.fails-protective");

    fixture.makeRing();
    fixture.reading().continuity = read(ohms(0.15));
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.fails-continuity");
    fixture.reading().continuity = read(ohms(0.38));
    EXPECT_EQ(fixture.find("ring").verdict, Verdict::Close) << "a spur may explain a higher reading";
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.ring.spur");
}

TEST(Ring, NamesTheReadingsThatAreMissing) {
    Fixture fixture;
    fixture.makeRing();
    fixture.reading().ringNeutral = fixture.reading().ringProtective = {};
    const Finding finding = fixture.find("ring");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "ringNeutral_ohm ringProtective_ohm");
    EXPECT_EQ(finding.sentence.key, "check.lacks.two");
    fixture.installation.circuitReadings.clear();
    EXPECT_EQ(test::missingFields(fixture.find("ring")),
              "ringLine_ohm ringNeutral_ohm ringProtective_ohm continuity_ohm");
    EXPECT_EQ(fixture.find("ring").sentence.key, "check.lacks.more");
}

TEST(Polarity, WrongFailsAndNotDoneCannotTell) {
    Fixture fixture;
    const auto find = [&](TestOutcome outcome) {
        fixture.reading().polarity = fixture.boardReading().polarity = fixture.supplyReading().polarity =
            outcome;
        const Verdict verdict = fixture.find("polarity").verdict;
        EXPECT_EQ(fixture.onBoard("polarity").verdict, verdict);
        EXPECT_EQ(fixture.onSupply("polarity").verdict, verdict);
        return verdict;
    };
    EXPECT_EQ(find(TestOutcome::Correct), Verdict::Holds);
    EXPECT_EQ(find(TestOutcome::Wrong), Verdict::Fails);
    EXPECT_EQ(find(TestOutcome::NotDone), Verdict::CannotTell);
    EXPECT_EQ(find(TestOutcome::Limited), Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(fixture.find("polarity")), "polarity");
    EXPECT_EQ(find(TestOutcome::NotApplicable), Verdict::DoesNotApply);
}

TEST(Completeness, AsksForWhatThisKindOfCircuitNeeds) {
    Fixture fixture;
    EXPECT_EQ(fixture.find("completeness").verdict, Verdict::Holds);
    EXPECT_EQ(std::get<std::int64_t>(fixture.find("completeness").sentence.arguments.front()), 5);
    fixture.reading().loopImpedance = {};
    EXPECT_EQ(test::missingFields(fixture.find("completeness")), "loopImpedance_ohm");
    fixture.reading().loopImpedance = test::notApplicable<Resistance>();
    EXPECT_EQ(fixture.find("completeness").verdict, Verdict::Holds)
        << "what is not applicable is not missing";
    fixture.reading().loopImpedance = test::limited<Resistance>("behind fixed joinery");
    const Finding limited = fixture.find("completeness");
    EXPECT_EQ(limited.verdict, Verdict::CannotTell);
    EXPECT_EQ(std::get<std::string>(limited.sentence.arguments.back()), "behind fixed joinery");
}

TEST(Completeness, AsksMoreOfRingsResidualDevicesAndBoards) {
    Fixture fixture;
    fixture.makeRing();
    EXPECT_EQ(fixture.find("completeness").verdict, Verdict::Holds);
    fixture.reading().ringLine = {};
    fixture.reading().residualTime = {};
    fixture.reading().residualButton = TestOutcome::NotDone;
    EXPECT_EQ(test::missingFields(fixture.find("completeness")),
              "ringLine_ohm residualTime_ms residualButton");

    EXPECT_EQ(fixture.onBoard("completeness").verdict, Verdict::Holds);
    fixture.board().earthing = BoardEarthing::OwnElectrode;
    fixture.board().residual.fitted = true;
    fixture.boardReading().phaseSequence = TestOutcome::NotDone;
    EXPECT_EQ(test::missingFields(fixture.onBoard("completeness")),
              "phaseSequence electrodeResistance_ohm residualTime_ms");
    EXPECT_EQ(fixture.onSupply("completeness").verdict, Verdict::Holds);
    fixture.supplyReading().externalLoopImpedance = {};
    EXPECT_EQ(test::missingFields(fixture.onSupply("completeness")), "externalLoopImpedance_ohm");
}

TEST(SupplyLoop, AboveTheUsualFigureIsAQuestionAndNoFailure) {
    // 0.35 ohm for TN-C-S, 0.8 ohm for TN-S (a distributor's statement, ssen.co.uk/ForContractors).
    Fixture fixture;
    const auto find = [&](Earthing earthing, double loop) {
        fixture.supply().earthing = earthing;
        fixture.supplyReading().externalLoopImpedance = read(ohms(loop));
        return fixture.onSupply("supply-loop");
    };
    EXPECT_EQ(find(Earthing::TnCS, 0.14).verdict, Verdict::Holds);
    EXPECT_DOUBLE_EQ(find(Earthing::TnCS, 0.14).limit->value, 0.35);
    EXPECT_EQ(find(Earthing::TnCS, 0.34).verdict, Verdict::Close);
    EXPECT_EQ(find(Earthing::TnCS, 0.6).verdict, Verdict::Close);
    EXPECT_EQ(find(Earthing::TnCS, 0.6).sentence.key, "check.supply-loop.above-usual");
    EXPECT_EQ(find(Earthing::TnS, 0.6).verdict, Verdict::Holds);
    EXPECT_EQ(find(Earthing::Tt, 60).verdict, Verdict::DoesNotApply);
    EXPECT_EQ(test::missingFields(find(Earthing::Unknown, 0.2)), "earthing");
    find(Earthing::TnCS, 0.2);
    fixture.supplyReading().externalLoopImpedance = test::below(ohms(0.5));
    const Finding untold = fixture.onSupply("supply-loop");
    EXPECT_EQ(untold.verdict, Verdict::CannotTell) << "below 0.5 may be 0.2 or 0.45";
    EXPECT_EQ(test::missingFields(untold), "externalLoopImpedance_ohm");
    fixture.supplyReading().externalLoopImpedance = test::above(ohms(0.35));
    EXPECT_EQ(fixture.onSupply("supply-loop").sentence.key, "check.supply-loop.above-usual");
}

TEST(Electrode, IsTakenToBeStableUpTo200Ohms) {
    // BS 7671, table 41.5, note 2 (from memory).
    Fixture fixture;
    EXPECT_EQ(fixture.onBoard("electrode").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.onSupply("electrode").verdict, Verdict::DoesNotApply);
    fixture.board().earthing = BoardEarthing::OwnElectrode;
    EXPECT_EQ(test::missingFields(fixture.onBoard("electrode")), "electrodeResistance_ohm");
    fixture.boardReading().electrodeResistance = read(ohms(68));
    EXPECT_EQ(fixture.onBoard("electrode").verdict, Verdict::Holds);
    fixture.boardReading().electrodeResistance = read(ohms(195));
    EXPECT_EQ(fixture.onBoard("electrode").sentence.key, "check.electrode.close");
    fixture.boardReading().electrodeResistance = read(ohms(240));
    EXPECT_EQ(fixture.onBoard("electrode").verdict, Verdict::Close);
    EXPECT_EQ(fixture.onBoard("electrode").sentence.key, "check.electrode.unstable");
    fixture.boardReading().electrodeResistance = test::below(ohms(500));
    EXPECT_EQ(fixture.onBoard("electrode").verdict, Verdict::CannotTell) << "it may be 90 or 450";
    fixture.makeTt();
    EXPECT_EQ(fixture.onSupply("electrode").verdict, Verdict::Holds);
}

} // namespace
} // namespace loopwright
