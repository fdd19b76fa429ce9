// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/fixture.h"

#include "core/checks/context.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace loopwright {
namespace {

using test::Fixture;

TEST(Assess, ASoundCircuitHoldsInEveryCheckThatApplies) {
    const Fixture fixture;
    for (const Finding& finding : fixture.assess().findings)
        EXPECT_THAT(finding.verdict, testing::AnyOf(Verdict::Holds, Verdict::DoesNotApply))
            << testing::PrintToString(finding);
}

TEST(Assess, EveryCheckSpeaksOnceOfEachSubject) {
    const Fixture fixture;
    const Assessment assessment = fixture.assess();
    EXPECT_EQ(assessment.findings.size(),
              circuitChecks().size() + boardChecks().size() + supplyChecks().size() +
                  fixture.installation.instruments.size() * instrumentChecks().size());
    EXPECT_EQ(assessment.about(fixture.installation.circuits.front().id).size(), circuitChecks().size());
}

TEST(Assess, FindingsStandByPlaceThenWorstFirst) {
    Fixture fixture;
    fixture.nest();
    fixture.reading().insulationEarth = test::read(megohms(0.3));
    fixture.reading().polarity = TestOutcome::NotDone;
    const Assessment assessment = fixture.assess();
    std::vector<Id> places;
    for (std::size_t i = 0; i < assessment.findings.size(); ++i) {
        const Finding& finding = assessment.findings[i];
        if (places.empty() || places.back() != finding.subject.id)
            places.push_back(finding.subject.id);
        else
            EXPECT_LE(assessment.findings[i - 1].verdict, finding.verdict) << testing::PrintToString(finding);
    }
    const auto& circuits = fixture.installation.circuits;
    const auto& boards = fixture.installation.boards;
    EXPECT_THAT(places, testing::ElementsAre(fixture.supply().id, fixture.installation.instruments.at(0).id,
                                             boards[0].id, circuits[0].id, boards[1].id, circuits[1].id));
}

TEST(Assess, DependsOnNothingButItsArguments) {
    Fixture fixture;
    fixture.nest();
    const Assessment first = fixture.assess();
    const Assessment second = fixture.assess();
    EXPECT_EQ(first.findings, second.findings);
    EXPECT_EQ(first.ruleSet, "bs-7671-2018");
    EXPECT_EQ(first.ruleSetRevision, test::rules().revision);
}

TEST(Assess, AVisitThatIsNotThereFindsNothing) {
    const Fixture fixture;
    EXPECT_TRUE(assess(fixture.installation, Id{}, test::tables(), test::rules()).findings.empty());
}

TEST(Assess, ASpareWayHasOneFindingThatDoesNotApply) {
    Fixture fixture;
    fixture.circuit().use = CircuitUse::Spare;
    const auto about = fixture.assess();
    const auto findings = about.about(fixture.circuit().id);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings.front()->verdict, Verdict::DoesNotApply);
    EXPECT_EQ(findings.front()->sentence.key, "check.spare");
}

TEST(Assess, ACircuitTakenOutOfUseHasOneFindingThatDoesNotApply) {
    Fixture fixture;
    fixture.circuit().takenOut = true;
    const auto about = fixture.assess();
    const auto findings = about.about(fixture.circuit().id);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings.front()->verdict, Verdict::DoesNotApply);
    EXPECT_EQ(findings.front()->sentence.key, "check.taken-out");
}

TEST(Assess, BoardsThatFeedEachOtherInACircleEnd) {
    Fixture fixture;
    Circuit& feeder = fixture.nest();
    fixture.installation.boards.back().fedFrom = feeder.id;
    EXPECT_FALSE(fixture.assess().findings.empty());
    fixture.installation.boards.back().fedFrom = fixture.circuit().id;
    EXPECT_FALSE(fixture.assess().findings.empty());
}

TEST(Assess, AnElectrodeOfABoardFurtherUpMakesWhatItFeedsTt) {
    Fixture fixture;
    fixture.nest();
    EXPECT_EQ(fixture.find("residual-touch").verdict, Verdict::DoesNotApply);
    fixture.installation.boards.back().earthing = BoardEarthing::OwnElectrode;
    EXPECT_EQ(fixture.find("residual-touch").verdict, Verdict::Fails) << "no residual device is fitted";
}

TEST(Assess, ReadingsOfAnotherVisitDoNotCount) {
    Fixture fixture;
    fixture.reading().visit = Id{};
    const Finding finding = fixture.find("loop");
    EXPECT_EQ(finding.verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(finding), "loopImpedance_ohm");
    EXPECT_TRUE(finding.missing.front().id.isNone()) << "there is no row of readings yet";
}

TEST(Assessment, TalliesCountCircuitsByTheirWorst) {
    Fixture fixture;
    fixture.circuit().load = test::typed(amperes(33));
    const Assessment assessment = fixture.assess();
    EXPECT_EQ(assessment.worst(fixture.circuit().id), Verdict::Fails);
    EXPECT_EQ(assessment.circuits(fixture.installation, fixture.board().id).of(Verdict::Fails), 1);
    EXPECT_EQ(assessment.worst(Id{}), Verdict::DoesNotApply);
    const Tally checks = assessment.checks();
    int sum = 0;
    for (const int count : checks.counts)
        sum += count;
    EXPECT_EQ(sum, static_cast<int>(assessment.findings.size()));
    EXPECT_EQ(assessment.about(fixture.circuit().id).front()->verdict, Verdict::Fails) << "worst first";
}

TEST(Answer, AnOpenObservationOrAFailureIsNotFit) {
    Fixture fixture;
    EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::Fit);

    fixture.installation.observations.push_back(
        {.visit = fixture.visit().id, .grade = Grade::WorthImproving});
    EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::Fit);
    for (const Grade grade : {Grade::MakeSafe, Grade::PutRight, Grade::LookFurther}) {
        fixture.installation.observations.back().grade = grade;
        EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::NotFit) << static_cast<int>(grade);
    }
    fixture.installation.observations.back().putRight = Date{std::chrono::year(2026) / 4 / 1};
    EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::Fit) << "put right";
    fixture.installation.observations.back().putRight.reset();
    fixture.installation.observations.back().visit = Id{};
    EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::Fit) << "another visit's";

    fixture.reading().polarity = TestOutcome::Wrong;
    EXPECT_EQ(answer(fixture.installation, fixture.assess()), Answer::NotFit);
}

TEST(ReadingsDone, CountsCellsThatApply) {
    Fixture fixture;
    const auto done = [&] { return readingsDone(fixture.installation, fixture.assess()); };
    // Supply: loop, current, polarity, sequence. Board: the same. Circuit: continuity, two of insulation,
    // polarity, loop.
    EXPECT_EQ(done().needed, 4 + 4 + 5);
    EXPECT_EQ(done().done, 13);
    fixture.reading().continuity = {};
    EXPECT_EQ(done().done, 12);
    fixture.reading().insulationLive = test::limited<Resistance>("electronics on the circuit");
    EXPECT_EQ(done().done, 12) << "a limitation is an entry";
    fixture.reading().insulationLive = test::notApplicable<Resistance>();
    EXPECT_EQ(done().needed, 12) << "what does not exist is not needed";
    fixture.makeRing();
    EXPECT_EQ(done().needed, 12 + 3 + 2)
        << "three readings of the ring, time and button of the residual device";
    fixture.circuit().use = CircuitUse::Spare;
    EXPECT_EQ(done().needed, 8);
}

} // namespace
} // namespace loopwright
