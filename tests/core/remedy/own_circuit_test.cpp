// SPDX-License-Identifier: GPL-3.0-or-later
// A circuit of its own for what is taken off an overloaded one.
#include "core/checks/context.h"
#include "tests/core/remedy/remedies_of.h"

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

using test::Fixture;
using test::ovenAnd;
using test::typed;

/// Ids that no record of these tests has; counts those that were asked for.
class CountedIds final : public IdSource {
  public:
    Id next() override {
        ++asked;
        return ids_.next();
    }
    int asked = 0;

  private:
    SequentialIds ids_{1'000'000};
};

Id visitOf(const Fixture& fixture) {
    return fixture.installation.visits.front().id;
}
Id circuitOf(const Fixture& fixture) {
    return fixture.installation.circuits.front().id;
}
std::optional<Remedy> remedyOf(const Fixture& fixture, RemedyKind kind, CountedIds&& ids = {}) {
    for (Remedy& remedy : remedies(fixture.installation, visitOf(fixture), circuitOf(fixture), test::tables(),
                                   fixture.ruleSet, ids))
        if (remedy.kind == kind) return std::move(remedy);
    return std::nullopt;
}

/// The edit that makes the circuit, or takes the spare way.
Edit& making(Change& change, const Fixture& fixture) {
    for (Edit& edit : change.edits)
        if (edit.kind == RecordKind::Circuit && edit.id != circuitOf(fixture)) return edit;
    throw std::runtime_error("no circuit is made");
}
std::string& valueOf(Edit& edit, std::string_view key) {
    const auto found = std::ranges::find(edit.values, key, &Edit::Value::key);
    if (found == edit.values.end()) throw std::runtime_error("nothing is said of " + std::string(key));
    return found->text;
}
/// What is found about the circuit that is made.
std::vector<Finding> foundOfMade(Change change, const Fixture& fixture) {
    const auto changed = foretold(fixture.installation, visitOf(fixture), circuitOf(fixture), change,
                                  test::tables(), fixture.ruleSet);
    if (!changed) throw std::runtime_error(std::string(changed.error().key));
    return assessCircuit(*changed, visitOf(fixture), making(change, fixture).id, test::tables(),
                         fixture.ruleSet);
}
bool anyFails(const std::vector<Finding>& findings) {
    return std::ranges::any_of(findings,
                               [](const Finding& finding) { return finding.verdict == Verdict::Fails; });
}

/// Whether everything that conductors decide is known and holds.
bool isSure(const std::vector<Finding>& findings) {
    return !anyFails(findings) && std::ranges::none_of(findings, [](const Finding& finding) {
        const bool isOfConductors = finding.check == "adiabatic-line" ||
                                    finding.check == "adiabatic-protective" || finding.check == "loop" ||
                                    finding.check == "disconnection" || finding.check == "drop" ||
                                    finding.check == "device-wiring";
        return isOfConductors && finding.verdict == Verdict::CannotTell;
    });
}

CrossSection leastLine(const Fixture& fixture) {
    return test::tables().leastLine(fixture.ruleSet.capacityStandard, Material::Copper)->value;
}

TEST(OwnCircuit, IsLaidOutWithTheSmallestThatHolds) {
    for (const double kiln : {2700.0, 4000.0, 6500.0}) {
        Fixture fixture = ovenAnd(watts(kiln));
        const auto remedy = remedyOf(fixture, RemedyKind::SeparateCircuit);
        ASSERT_TRUE(remedy) << kiln << " W";
        Change change = remedy->change;
        Edit& made = making(change, fixture);
        EXPECT_EQ(made.step, Edit::Step::Insert) << "the board has no spare way";
        EXPECT_EQ(valueOf(made, "device.family"), "60898-B") << "as the present one";
        EXPECT_EQ(valueOf(made, "wiring.method"), "C");
        EXPECT_EQ(valueOf(made, "wiring.length_m"), "18 (assumed)");
        const auto found = foundOfMade(change, fixture);
        EXPECT_FALSE(anyFails(found)) << kiln << " W: " << testing::PrintToString(found);
        EXPECT_GE(squareMillimetres(std::stod(valueOf(made, "wiring.lineSize_mm2"))), leastLine(fixture));

        const Current rated = amperes(std::stod(valueOf(made, "device.ratedCurrent_A")));
        const CrossSection line = squareMillimetres(std::stod(valueOf(made, "wiring.lineSize_mm2")));
        const DeviceFamily& family = *test::tables().deviceFamily("60898-B");
        for (const Current smaller : test::tables().ratings(family))
            if (smaller < rated) {
                valueOf(made, "device.ratedCurrent_A") = std::to_string(smaller.base());
                EXPECT_TRUE(anyFails(foundOfMade(change, fixture)))
                    << smaller.base() << " A would do for " << kiln << " W";
            }
        valueOf(made, "device.ratedCurrent_A") = std::to_string(rated.base());
        for (const CrossSection smaller : test::tables().standardSizes(Material::Copper))
            if (smaller < line && smaller >= leastLine(fixture)) {
                valueOf(made, "wiring.lineSize_mm2") = std::to_string(smaller.base());
                valueOf(made, "wiring.protectiveSize_mm2") = std::to_string(smaller.base());
                const auto then = foundOfMade(change, fixture);
                EXPECT_FALSE(isSure(found) ? isSure(then) : !anyFails(then))
                    << smaller.base() << " mm2 would do for " << kiln << " W";
            }
    }
}

TEST(OwnCircuit, TakesTheEquipmentAlongAndItsIdFromTheSource) {
    const Fixture fixture = ovenAnd(watts(4000));
    CountedIds ids;
    const auto found = remedies(fixture.installation, visitOf(fixture), circuitOf(fixture), test::tables(),
                                fixture.ruleSet, ids);
    EXPECT_EQ(ids.asked, 1);
    const auto remedy = std::ranges::find(found, RemedyKind::SeparateCircuit, &Remedy::kind);
    ASSERT_NE(remedy, found.end());
    Installation changed = fixture.installation;
    ASSERT_TRUE(apply(changed, remedy->change));
    ASSERT_EQ(changed.circuits.size(), fixture.installation.circuits.size() + 1);
    const Circuit& made = changed.circuits.back();
    EXPECT_EQ(made.id, SequentialIds(1'000'000).next());
    EXPECT_EQ(made.board, changed.circuits.front().board);
    EXPECT_EQ(made.name, "Kiln");
    ASSERT_EQ(changed.equipment.size(), 2U) << "nothing that was recorded is lost";
    EXPECT_EQ(changed.equipment.back().circuit, made.id);
    EXPECT_EQ(changed.equipment.front().circuit, changed.circuits.front().id);
    EXPECT_EQ(changed.circuitReadings.size(), fixture.installation.circuitReadings.size())
        << "what is predicted is no reading";
}

TEST(OwnCircuit, TakesASpareWayWhereTheBoardHasOne) {
    Fixture fixture = ovenAnd(watts(4000));
    Circuit spare = {.id = SequentialIds(2'000'000).next(),
                     .board = fixture.board().id,
                     .way = "7",
                     .use = CircuitUse::Spare};
    fixture.installation.circuits.push_back(spare);
    CountedIds ids;
    const auto found = remedies(fixture.installation, visitOf(fixture), circuitOf(fixture), test::tables(),
                                fixture.ruleSet, ids);
    EXPECT_EQ(ids.asked, 0);
    const auto remedy = std::ranges::find(found, RemedyKind::SeparateCircuit, &Remedy::kind);
    ASSERT_NE(remedy, found.end());
    EXPECT_EQ(remedy->change.label.key, "remedy.separate-cable-spare");
    Installation changed = fixture.installation;
    ASSERT_TRUE(apply(changed, remedy->change));
    EXPECT_EQ(changed.circuits.size(), fixture.installation.circuits.size());
    const Circuit& taken = changed.circuits.back();
    EXPECT_EQ(taken.id, spare.id);
    EXPECT_EQ(taken.way, "7");
    EXPECT_EQ(taken.use, CircuitUse::Fixed);
    EXPECT_TRUE(taken.device.ratedCurrent.hasFigure());
}

TEST(OwnCircuit, NeverHasALargerDeviceThanItsWiringCarries) {
    int laid = 0;
    for (const double kiln : {4600.0, 6900.0, 9200.0, 13800.0}) {
        for (const double metres_ : {5.0, 18.0, 60.0}) {
            Fixture fixture = ovenAnd(watts(kiln));
            fixture.wiring().length = typed(metres(metres_));
            fixture.wiring().groupedCircuits = typed(Ratio(3));
            fixture.wiring().lineSize = typed(squareMillimetres(4));
            fixture.wiring().protectiveSize = typed(squareMillimetres(2.5), 1);
            const auto remedy = remedyOf(fixture, RemedyKind::SeparateCircuit);
            if (!remedy) continue;
            ++laid;
            for (const Finding& finding : foundOfMade(remedy->change, fixture)) {
                const bool isOfWiring = finding.check == "device-wiring" || finding.check == "load-device" ||
                                        finding.check == "load-wiring" || finding.check == "conventional";
                if (isOfWiring) {
                    EXPECT_TRUE(finding.verdict != Verdict::Fails && finding.verdict != Verdict::CannotTell)
                        << kiln << " W, " << metres_ << " m: " << testing::PrintToString(finding);
                }
            }
        }
    }
    EXPECT_GT(laid, 0) << "or nothing is said";
}

TEST(OwnCircuit, HoldsByTheLoopThatIsPredictedBehindTheBoard) {
    Fixture fixture = ovenAnd(watts(4000));
    const auto remedy = remedyOf(fixture, RemedyKind::SeparateCircuit);
    ASSERT_TRUE(remedy);
    Change change = remedy->change;
    Edit& made = making(change, fixture);
    const auto changed = foretold(fixture.installation, visitOf(fixture), circuitOf(fixture), change,
                                  test::tables(), fixture.ruleSet);
    ASSERT_TRUE(changed);
    const CircuitReading* reading =
        findReading(changed->circuitReadings, visitOf(fixture), &CircuitReading::circuit, made.id);
    ASSERT_NE(reading, nullptr);
    const auto perLength = [&](const char* key) {
        const auto size = squareMillimetres(std::stod(valueOf(made, key)));
        return test::tables().conductorResistance(Material::Copper, size)->value;
    };
    const Resistance along =
        (perLength("wiring.lineSize_mm2") + perLength("wiring.protectiveSize_mm2")) * metres(18);
    EXPECT_NEAR(reading->continuity.value.base(), along.base(), 1e-9);
    EXPECT_NEAR(reading->loopImpedance.value.base(), 0.18 + along.base(), 1e-9) << "Z_db is 0.18 ohm";
    EXPECT_EQ(reading->loopImpedance.origin, Origin::Computed);
    EXPECT_TRUE(reading->insulationEarth.isMissing()) << "only a test can tell";
}

TEST(OwnCircuit, ThatNothingHoldsForIsToBePlannedAndComesLast) {
    Fixture fixture = ovenAnd(watts(4000));
    fixture.wiring().length = typed(metres(2000)); // no standard size keeps the drop small enough
    CountedIds ids;
    const auto found = remedies(fixture.installation, visitOf(fixture), circuitOf(fixture), test::tables(),
                                fixture.ruleSet, ids);
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.back().kind, RemedyKind::UnlaidCircuit);
    EXPECT_EQ(found.back().change.label.key, "remedy.unlaid-circuit");
    EXPECT_TRUE(std::ranges::none_of(
        found, [](const Remedy& remedy) { return remedy.kind == RemedyKind::SeparateCircuit; }));
    Installation changed = fixture.installation;
    ASSERT_TRUE(apply(changed, found.back().change));
    EXPECT_TRUE(changed.circuits.back().device.family.empty()) << "nobody says which device";
    EXPECT_EQ(changed.equipment.back().circuit, changed.circuits.back().id);
}

TEST(OwnCircuit, IsToldByWhatIfAndNotAsAChangeElsewhere) {
    const Fixture fixture = ovenAnd(watts(4000));
    const auto remedy = remedyOf(fixture, RemedyKind::SeparateCircuit);
    ASSERT_TRUE(remedy);
    EXPECT_TRUE(remedy->holdsThroughout);
    Change change = remedy->change;
    const Id made = making(change, fixture).id;
    const Installation untouched = fixture.installation;
    const auto result = whatIf(fixture.installation, visitOf(fixture), circuitOf(fixture), change,
                               test::tables(), fixture.ruleSet);
    ASSERT_TRUE(result);
    EXPECT_EQ(fixture.installation, untouched) << "nothing is written";
    EXPECT_EQ(result->made.size(), circuitChecks().size());
    for (const CheckShift& shift : result->made) {
        EXPECT_EQ(shift.subject.id, made);
        EXPECT_FALSE(shift.before) << "there was no such circuit";
        ASSERT_TRUE(shift.after);
        EXPECT_FALSE(shift.after->sentence.key.empty()) << "in full";
    }
    for (const CheckShift& shift : result->elsewhere)
        EXPECT_NE(shift.subject.id, made) << shift.check;
    const auto unread = std::ranges::find(remedy->made, "insulation", &CheckShift::check);
    ASSERT_NE(unread, remedy->made.end()) << "it is told as still to be found out";
    EXPECT_EQ(unread->after->verdict, Verdict::CannotTell);
}

TEST(OwnCircuit, ChangesElsewhereWhatJudgingTheWholeSiteFinds) {
    Fixture fixture = ovenAnd(watts(4000));
    fixture.addCircuit(Phases::L2, amperes(9));
    fixture.nest();
    Circuit spare = {.id = SequentialIds(2'000'000).next(),
                     .board = fixture.board().id,
                     .way = "7",
                     .use = CircuitUse::Spare,
                     .phases = Phases::L3};
    fixture.installation.circuits.push_back(spare);
    const auto remedy = remedyOf(fixture, RemedyKind::SeparateCircuit);
    ASSERT_TRUE(remedy);
    const auto result = whatIf(fixture.installation, visitOf(fixture), circuitOf(fixture), remedy->change,
                               test::tables(), fixture.ruleSet);
    ASSERT_TRUE(result);
    const auto rest = [&](const Installation& site) {
        auto findings =
            assess(site, visitOf(fixture), test::tables(), fixture.ruleSet, Detail::VerdictOnly).findings;
        std::erase_if(findings, [&](const Finding& finding) {
            return finding.subject.id == circuitOf(fixture) || finding.subject.id == spare.id;
        });
        return findings;
    };
    auto expected = shiftsBetween(rest(fixture.installation), rest(result->changed));
    std::erase_if(expected, [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
    ASSERT_EQ(result->elsewhere.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_EQ(result->elsewhere[i].subject.id, expected[i].subject.id);
        EXPECT_EQ(result->elsewhere[i].check, expected[i].check);
    }
}

} // namespace
} // namespace loopwright
