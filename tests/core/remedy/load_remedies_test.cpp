// SPDX-License-Identifier: GPL-3.0-or-later
// Remedies that take a load off: no more than is recorded of what goes.
#include "core/remedy/recorded_load.h"
#include "tests/core/remedy/remedies_of.h"

namespace loopwright {
namespace {

using test::Fixture;
using test::remediesOf;
using test::remedyIn;
using test::setTo;
using test::told;
using test::typed;

/// A circuit of 20 A with pieces that draw so much, whose load somebody typed.
Fixture loaded(double load, std::initializer_list<double> pieces) {
    Fixture fixture;
    fixture.circuit().load = typed(amperes(load));
    for (const double each : pieces)
        fixture.addEquipment("Piece of " + std::to_string(each) + " A", watts(1)).current =
            typed(amperes(each), 1);
    return fixture;
}
/// The same with runs of a quarter of the time.
Fixture inRuns(Fixture fixture) {
    for (Equipment& equipment : fixture.installation.equipment) {
        equipment.onTime = typed(minutes(15));
        equipment.offTime = typed(minutes(45));
    }
    return fixture;
}
/// What a clamp read takes the place of what was typed.
Fixture clamped(Fixture fixture) {
    fixture.reading().measuredLoad = test::read(fixture.circuit().load.value, 1);
    fixture.circuit().load = {};
    return fixture;
}
std::optional<double> loadLeftBy(const Remedy& remedy, const Fixture& fixture) {
    const auto load = setTo(remedy.change, fixture.installation.circuits.front().id, "load_A");
    return load ? std::optional(std::stod(*load)) : std::nullopt;
}
const CircuitReading& readingIn(const Installation& site) {
    return site.circuitReadings.front();
}

TEST(LoadLeft, IsLessByWhatGoesAndNoLessThanWhatStays) {
    EXPECT_EQ(loadLeft(amperes(40), amperes(8), amperes(6)), amperes(32)) << "26 A stay unexplained";
    EXPECT_EQ(loadLeft(amperes(14), amperes(8), amperes(6)), amperes(6));
    EXPECT_EQ(loadLeft(amperes(20), amperes(15), amperes(15)), amperes(15)) << "the other draws as much";
    EXPECT_EQ(loadLeft(amperes(5), amperes(8), amperes(6)), amperes(5)) << "it never rises";
    EXPECT_EQ(loadLeft(amperes(14), amperes(-4), amperes(18)), amperes(18)) << "what comes is added";
}

TEST(LoadRemedies, MoveNoMoreThanIsRecordedOfThePiece) {
    const Fixture fixture = loaded(25, {8, 6});
    const auto found = remediesOf(fixture);
    const Remedy* own = remedyIn(found, RemedyKind::SeparateCircuit);
    ASSERT_NE(own, nullptr) << told(found);
    EXPECT_EQ(loadLeftBy(*own, fixture), 17) << "25 A without the 8 A";

    const auto none = remediesOf(loaded(40, {8, 6}));
    EXPECT_EQ(remedyIn(none, RemedyKind::SeparateCircuit), nullptr) << "32 A are left: " << told(none);
    EXPECT_EQ(remedyIn(none, RemedyKind::UnlaidCircuit), nullptr) << told(none);
}

TEST(LoadRemedies, InTurnsSaveNoMoreThanIsRecordedOfTheOthers) {
    const Fixture fixture = inRuns(loaded(22, {4, 4}));
    const auto found = remediesOf(fixture);
    const Remedy* turns = remedyIn(found, RemedyKind::RunInTurns);
    ASSERT_NE(turns, nullptr) << told(found);
    EXPECT_EQ(loadLeftBy(*turns, fixture), 18) << "4 A do not run beside the others";

    const auto none = remediesOf(inRuns(loaded(30, {4, 4})));
    EXPECT_EQ(remedyIn(none, RemedyKind::RunInTurns), nullptr) << "26 A are left: " << told(none);
    Fixture open = inRuns(loaded(22, {4, 4, 1}));
    open.installation.equipment.back().current = test::below(amperes(1));
    EXPECT_EQ(remedyIn(remediesOf(open), RemedyKind::RunInTurns), nullptr)
        << "of one piece nobody knows what it draws";
}

TEST(LoadRemedies, WriteNoLoadWhereOnlyABoundIsKnown) {
    Fixture fixture = loaded(24, {8, 6});
    fixture.circuit().load = test::above(amperes(24));
    const auto found = remediesOf(inRuns(fixture));
    ASSERT_EQ(fixture.find("load-device").verdict, Verdict::Fails) << "or nothing is asked for";
    for (const Remedy& remedy : found)
        EXPECT_FALSE(loadLeftBy(remedy, fixture)) << remedy.change.label.key << " counts on 24 A";
}

TEST(LoadRemedies, FromWhatAClampReadTakeTheSameAndSayThatItCounts) {
    for (const bool isClamped : {true, false}) {
        const Fixture fixture = isClamped ? clamped(loaded(25, {8, 6})) : loaded(25, {8, 6});
        ASSERT_EQ(fixture.find("load-device").verdict, Verdict::Fails);
        const auto found = remediesOf(fixture);
        const Remedy *own = remedyIn(found, RemedyKind::SeparateCircuit),
                     *less = remedyIn(found, RemedyKind::LessLoad);
        ASSERT_TRUE(own && less) << told(found);
        for (const Remedy* remedy : {own, less})
            EXPECT_EQ(remedy->isClampStale, isClamped) << remedy->change.label.key;
        if (!isClamped) continue;
        EXPECT_FALSE(loadLeftBy(*own, fixture)) << "nobody typed one";
        const Entry<Current> clamp = readingIn(test::foretoldBy(*own, fixture)).measuredLoad;
        EXPECT_NEAR(clamp.value.base(), 17, 1e-9);
        EXPECT_EQ(clamp.origin, Origin::Computed);
        const Remedy* device = remedyIn(found, RemedyKind::OtherDevice);
        EXPECT_TRUE(!device || !device->isClampStale) << "the load stays as it was read";
    }
}

TEST(LoadRemedies, AClampReadingStaysWhereEquipmentDrawsWhatItDrew) {
    const Fixture fixture = clamped(loaded(25, {8, 6}));
    const Installation& site = fixture.installation;
    const Change longer{
        {}, {setField(RecordKind::Equipment, site.equipment.front().id, "onTime_min", "10 (typed)")}};
    const auto result = whatIf(site, site.visits.front().id, site.circuits.front().id, longer, test::tables(),
                               fixture.ruleSet);
    ASSERT_TRUE(result);
    EXPECT_EQ(readingIn(result->changed).measuredLoad, readingIn(site).measuredLoad);
    EXPECT_FALSE(result->isClampStale);
}

TEST(LoadRemedies, AreJudgedWhenTheyAreTakenAsTheyWereForetold) {
    const Fixture fixture = inRuns(loaded(22, {10, 12}));
    const auto found = remediesOf(fixture);
    const Remedy* turns = remedyIn(found, RemedyKind::RunInTurns);
    ASSERT_NE(turns, nullptr) << told(found);
    Fixture taken = fixture;
    ASSERT_TRUE(apply(taken.installation, turns->change));
    EXPECT_EQ(taken.find("load-device").verdict, Verdict::Holds)
        << "the pieces draw 22 A together, but never do: "
        << testing::PrintToString(taken.find("load-device"));
}

TEST(LoadRemedies, AreTheSameAgainstWhatIsKnownAlready) {
    const Fixture fixture = loaded(25, {8, 6});
    const Installation& site = fixture.installation;
    const Id visit = site.visits.front().id, circuit = site.circuits.front().id;
    const AsItIs known{
        assessCircuit(site, visit, circuit, test::tables(), fixture.ruleSet, Detail::VerdictOnly),
        assessAround(site, visit, circuit, test::tables(), fixture.ruleSet, Detail::VerdictOnly)};
    for (const Remedy& remedy : remediesOf(fixture)) {
        const auto full = whatIf(site, visit, circuit, remedy.change, test::tables(), fixture.ruleSet);
        const auto brief =
            whatIf(site, visit, circuit, remedy.change, test::tables(), fixture.ruleSet, known);
        ASSERT_TRUE(full && brief) << remedy.change.label.key;
        const auto verdicts = [](const std::vector<CheckShift>& shifts) {
            std::vector<std::tuple<Id, std::string_view, std::optional<Verdict>, std::optional<Verdict>>>
                told;
            const auto verdictOf = [](const std::optional<Finding>& finding) {
                return finding ? std::optional(finding->verdict) : std::nullopt;
            };
            for (const CheckShift& shift : shifts)
                told.emplace_back(shift.subject.id, shift.check, verdictOf(shift.before),
                                  verdictOf(shift.after));
            return told;
        };
        EXPECT_TRUE(verdicts(full->circuit) == verdicts(brief->circuit)) << remedy.change.label.key;
        EXPECT_TRUE(verdicts(full->elsewhere) == verdicts(brief->elsewhere)) << remedy.change.label.key;
        EXPECT_TRUE(verdicts(full->made) == verdicts(brief->made)) << remedy.change.label.key;
    }
}

} // namespace
} // namespace loopwright
