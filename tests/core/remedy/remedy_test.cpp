// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/remedy.h"

#include "core/remedy/fitting.h"
#include "core/remedy/overloaded_circuit.h"
#include "core/sitefile/site_file.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/remedy/remedies_of.h"

#include <algorithm>

namespace loopwright {
namespace {

using test::Fixture;
using test::remediesOf;
using test::remedyIn;
using test::setTo;
using test::told;
using test::typed;

const Installation& demo() {
    static const Installation site = [] {
        SequentialIds ids;
        auto imported = importSite(test::bytesOf(test::demoFolder / "oakum-row.site.json"), ids,
                                   [](std::string_view path) -> tl::expected<std::string, Message> {
                                       return test::bytesOf(test::demoFolder / path);
                                   });
        if (!imported) throw std::runtime_error("the demo site is refused");
        return std::move(imported->installation);
    }();
    return site;
}
const Circuit& circuitAt(std::string_view path) {
    for (const Circuit& circuit : demo().circuits)
        if (pathOf(demo(), circuit) == path) return circuit;
    throw std::runtime_error("no circuit " + std::string(path));
}
const RuleSet& rulesOf(const Visit& visit) {
    return test::rules(visit.ruleSet);
}
std::vector<Remedy> remediesOf(const Circuit& circuit) {
    const Visit& visit = demo().visits.back();
    SequentialIds ids(test::unusedIds);
    return remedies(demo(), visit.id, circuit.id, test::tables(), rulesOf(visit), ids);
}
TEST(Remedies, TheFirstOfEachHiddenOverloadOfTheDemoMakesAllItsChecksHold) {
    for (const char* path : {"Board C / F1", "Board D / 3", "Board A / 7"}) {
        const Circuit& circuit = circuitAt(path);
        const auto found = remediesOf(circuit);
        ASSERT_FALSE(found.empty()) << path;
        EXPECT_TRUE(found.front().holdsThroughout) << path << ": " << told(found);
        const Visit& visit = demo().visits.back();
        const auto changed =
            foretold(demo(), visit.id, circuit.id, found.front().change, test::tables(), rulesOf(visit));
        ASSERT_TRUE(changed);
        for (const Finding& finding :
             assessCircuit(*changed, visit.id, circuit.id, test::tables(), rulesOf(visit)))
            EXPECT_NE(finding.verdict, Verdict::Fails) << path << ": " << testing::PrintToString(finding);
        EXPECT_TRUE(std::ranges::is_sorted(found, {}, &Remedy::kind)) << told(found);
    }
}

TEST(Remedies, OfTheDemoAreThoseThatAnInspectorWouldName) {
    EXPECT_EQ(remediesOf(circuitAt("Board D / 3")).front().kind, RemedyKind::RunInTurns)
        << "forge heater and welder need not run at once";
    EXPECT_EQ(remediesOf(circuitAt("Board A / 7")).front().kind, RemedyKind::WithoutPlugFuse)
        << "there is no larger plug fuse, and the convector is alone on its circuit";
    const auto kiln = remediesOf(circuitAt("Board C / F1"));
    EXPECT_EQ(kiln.front().kind, RemedyKind::LessLoad);
    EXPECT_TRUE(std::ranges::none_of(kiln, [](const Remedy& remedy) {
        return remedy.kind == RemedyKind::OtherDevice;
    })) << "its wiring carries no larger device";
    EXPECT_TRUE(std::ranges::any_of(kiln, [](const Remedy& remedy) {
        return remedy.kind == RemedyKind::DeviceAndConductor;
    })) << told(kiln);
}

TEST(Remedies, NeverFitALargerDeviceThanTheWiringCarries) {
    for (const double load : {22.0, 26.0, 31.0, 45.0}) {
        Fixture fixture;
        fixture.circuit().load = typed(amperes(load));
        const Installation& site = fixture.installation;
        for (const Remedy& remedy : remediesOf(fixture)) {
            auto changed = foretold(site, site.visits.front().id, site.circuits.front().id, remedy.change,
                                    test::tables(), fixture.ruleSet);
            ASSERT_TRUE(changed);
            Fixture after = fixture;
            after.installation = *changed;
            EXPECT_NE(after.find("device-wiring").verdict, Verdict::Fails)
                << remedy.change.label.key << " at " << load << " A";
            for (const CheckShift& shift : remedy.circuit)
                EXPECT_TRUE(!shift.isWorse() || shift.after->verdict == Verdict::Close)
                    << shift.check << " by " << remedy.change.label.key;
        }
    }
}

TEST(Remedies, AreNoneWhereNothingIsOverloaded) {
    const Fixture fixture;
    const Installation& site = fixture.installation;
    SequentialIds ids(test::unusedIds);
    EXPECT_TRUE(remediesOf(fixture).empty());
    EXPECT_TRUE(remedies(site, site.visits.front().id, Id{}, test::tables(), fixture.ruleSet, ids).empty());
}

TEST(Remedies, OfADeviceThatIsOnlyTooSmallFitOneThatTheWiringCarries) {
    Fixture fixture; // 2.5 mm2 clipped direct carries 27 A
    fixture.circuit().load = typed(amperes(22));
    const auto found = remediesOf(fixture);
    const auto other = std::ranges::find(found, RemedyKind::OtherDevice, &Remedy::kind);
    ASSERT_NE(other, found.end()) << told(found);
    EXPECT_EQ(other->change.edits.front().values.front().text, "25 (typed)");
}

/// Shifts of verdicts outside a circuit, by judging the whole site before and after.
std::vector<CheckShift> shiftsOfTheWholeSite(const Installation& changed, const Visit& visit, Id circuit) {
    const auto rest = [&](const Installation& site) {
        auto findings = assess(site, visit.id, test::tables(), rulesOf(visit), Detail::VerdictOnly).findings;
        std::erase_if(findings, [&](const Finding& finding) { return finding.subject.id == circuit; });
        return findings;
    };
    auto shifts = shiftsBetween(rest(demo()), rest(changed));
    std::erase_if(shifts, [](const CheckShift& shift) { return !shift.isBetter() && !shift.isWorse(); });
    return shifts;
}

TEST(WhatIf, OfOneCircuitFindsElsewhereWhatJudgingTheWholeSiteDoes) {
    const Visit& visit = demo().visits.back();
    std::size_t found = 0;
    constexpr std::size_t stride = 7; // some circuits of each board
    for (std::size_t at = 0; at < demo().circuits.size(); at += stride) {
        const Circuit& circuit = demo().circuits[at];
        if (!isInUse(circuit)) continue;
        for (const auto& [field, value] : {std::pair("load_A", "250"), std::pair("wiring.lineSize_mm2", "1"),
                                           std::pair("device.ratedCurrent_A", "125")}) {
            const Change change{{}, {setField(RecordKind::Circuit, circuit.id, field, value)}};
            const auto result = whatIf(demo(), visit.id, circuit.id, change, test::tables(), rulesOf(visit));
            ASSERT_TRUE(result);
            const auto expected = shiftsOfTheWholeSite(result->changed, visit, circuit.id);
            const std::string told = pathOf(demo(), circuit) + ", " + field;
            ASSERT_EQ(result->elsewhere.size(), expected.size()) << told;
            for (std::size_t i = 0; i < expected.size(); ++i) {
                EXPECT_EQ(result->elsewhere[i].subject.id, expected[i].subject.id) << told;
                EXPECT_EQ(result->elsewhere[i].check, expected[i].check) << told;
            }
            found += expected.size();
        }
    }
    EXPECT_GT(found, 0U) << "something elsewhere must change for this to say anything";
}

TEST(Remedies, InterlockOnlyPiecesThatCanTakeTurns) {
    for (const auto& [on, off, canTakeTurns] :
         {std::tuple(50.0, 10.0, false), std::tuple(15.0, 45.0, true)}) {
        Fixture fixture;
        fixture.circuit().load = {};
        fixture.circuit().device.ratedCurrent = typed(amperes(20));
        for (const char* name : {"Oven", "Kettle", "Press"}) {
            Equipment& equipment = fixture.addEquipment(name, watts(2300));
            equipment.onTime = typed(minutes(on));
            equipment.offTime = typed(minutes(off));
        }
        const auto found = remediesOf(fixture);
        EXPECT_EQ(remedyIn(found, RemedyKind::RunInTurns) != nullptr, canTakeTurns)
            << on << " min of " << on + off << ": " << told(found);
    }
}

/// The first reading of the loop that holds with a device of 20 A and is close with one of 25 A.
std::optional<Resistance> loopThatGetsClose() {
    const auto verdictOf = [](double loop, double rated) {
        Fixture fixture;
        fixture.circuit().device.ratedCurrent = typed(amperes(rated));
        fixture.reading().loopImpedance = test::read(ohms(loop));
        return fixture.find("loop").verdict;
    };
    for (int hundredths = 50; hundredths < 200; ++hundredths)
        if (const double loop = hundredths / 100.0;
            verdictOf(loop, 20) == Verdict::Holds && verdictOf(loop, 25) == Verdict::Close)
            return ohms(loop);
    return std::nullopt;
}

TEST(Remedies, MayBringWhatHoldsCloseAndSaySo) {
    const auto loop = loopThatGetsClose();
    ASSERT_TRUE(loop) << "or nothing is said";
    Fixture fixture;
    fixture.circuit().load = typed(amperes(22));
    fixture.reading().loopImpedance = test::read(*loop);
    const auto found = remediesOf(fixture);
    const Remedy* device = remedyIn(found, RemedyKind::OtherDevice);
    ASSERT_NE(device, nullptr) << told(found) << "with " << loop->base() << " ohm";
    EXPECT_TRUE(std::ranges::any_of(
        device->circuit, [](const CheckShift& shift) { return shift.check == "loop" && shift.isWorse(); }))
        << loop->base() << " ohm";
}

TEST(Remedies, FitNoLargerDeviceThanTheBoardThatItFeedsIsRatedFor) {
    for (const double board : {100.0, 50.0}) {
        Fixture fixture;
        fixture.supply().fuse.ratedCurrent = typed(amperes(630));
        Circuit& feeder = fixture.nest();
        feeder.device = {"60898-C", typed(amperes(50)), typed(kiloamperes(10))};
        feeder.wiring.method = InstallationMethod::E;
        feeder.wiring.insulation = Insulation::Xlpe90;
        feeder.wiring.lineSize = typed(squareMillimetres(35));
        feeder.load = typed(amperes(55));
        fixture.board().ratedCurrent = typed(amperes(board));
        const auto found = remediesOf(fixture, feeder.id);
        const Remedy* device = remedyIn(found, RemedyKind::OtherDevice);
        ASSERT_EQ(device != nullptr, board > 55) << board << " A: " << told(found);
        if (device) {
            EXPECT_EQ(setTo(device->change, feeder.id, "device.ratedCurrent_A"), "63 (typed)");
        }
    }
}

TEST(Remedies, FitNothingThatNewWorkHasLeft) {
    for (const char* family : {"3036", "1361", "3871-2"}) {
        Fixture fixture;
        fixture.circuit().device = {family, typed(amperes(15)), typed(kiloamperes(4))};
        fixture.circuit().load = typed(amperes(18));
        const Installation& site = fixture.installation;
        const auto about = overloadedCircuit(site, site.visits.front().id, site.circuits.front().id,
                                             test::tables(), fixture.ruleSet);
        ASSERT_TRUE(about) << family;
        const auto families = familiesFor(*about);
        EXPECT_FALSE(families.empty());
        for (const DeviceFamily* each : families)
            EXPECT_TRUE(!each->legacy && each->key != family) << each->key << " for " << family;
    }
}

TEST(Remedies, EnlargeConductorsByAFewSizesOnly) {
    Fixture fixture;
    for (const double load : {45.0, 90.0, 200.0}) {
        fixture.circuit().load = typed(amperes(load));
        for (const Remedy& remedy : remediesOf(fixture))
            for (const Edit& edit : remedy.change.edits)
                for (const Edit::Value& value : edit.values)
                    if (value.key == "wiring.lineSize_mm2") {
                        EXPECT_LE(std::stod(value.text), 16) << load << " A on 2.5 mm2";
                    }
    }
}

TEST(Remedies, NeverDeepenWhatFailsAlready) {
    for (const double load : {22.0, 26.0, 31.0}) {
        Fixture fixture;
        fixture.circuit().load = typed(amperes(load));
        fixture.reading().loopImpedance = test::read(ohms(2.5));
        const Installation& site = fixture.installation;
        const Id visit = site.visits.front().id, circuit = site.circuits.front().id;
        for (const Remedy& remedy : remediesOf(fixture)) {
            const auto result = whatIf(site, visit, circuit, remedy.change, test::tables(), fixture.ruleSet);
            ASSERT_TRUE(result);
            for (const CheckShift& shift : result->circuit) {
                const bool fails = shift.before && shift.after && shift.before->verdict == Verdict::Fails &&
                                   shift.after->verdict == Verdict::Fails;
                if (fails && shift.before->margin && shift.after->margin) {
                    EXPECT_GE(*shift.after->margin, *shift.before->margin - 1e-6)
                        << shift.check << " by " << remedy.change.label.key << " at " << load << " A";
                }
            }
        }
    }
}

TEST(Remedies, WithoutAPlugFuseThePieceIsAloneOnAFixedCircuit) {
    for (const auto use : {CircuitUse::Fixed, CircuitUse::Sockets}) {
        Fixture fixture;
        fixture.circuit().load = {};
        fixture.circuit().use = use;
        fixture.addEquipment("Convector", watts(3600)).plugFuse = typed(amperes(13));
        const auto found = remediesOf(fixture);
        EXPECT_EQ(remedyIn(found, RemedyKind::WithoutPlugFuse) != nullptr, use == CircuitUse::Fixed)
            << told(found);
    }
}

TEST(Remedies, WithADeviceThatPassesAloneLeaveTheConductors) {
    Fixture fixture;
    fixture.circuit().load = typed(amperes(22));
    const auto found = remediesOf(fixture);
    EXPECT_NE(remedyIn(found, RemedyKind::OtherDevice), nullptr) << told(found);
    EXPECT_EQ(remedyIn(found, RemedyKind::DeviceAndConductor), nullptr) << told(found);
}

} // namespace
} // namespace loopwright
