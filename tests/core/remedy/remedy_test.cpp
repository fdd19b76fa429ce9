// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/remedy.h"

#include "core/remedy/overloaded_circuit.h"
#include "core/sitefile/site_file.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <algorithm>
#include <cmath>

namespace loopwright {
namespace {

using test::Fixture;
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
/// Ids that no record of these tests has.
constexpr std::uint64_t unused = 1'000'000;

std::vector<Remedy> remediesOf(const Circuit& circuit) {
    const Visit& visit = demo().visits.back();
    SequentialIds ids(unused);
    return remedies(demo(), visit.id, circuit.id, test::tables(), rulesOf(visit), ids);
}
std::vector<Remedy> remediesOf(const Fixture& fixture) {
    const Installation& site = fixture.installation;
    SequentialIds ids(unused);
    return remedies(site, site.visits.front().id, site.circuits.front().id, test::tables(), fixture.ruleSet,
                    ids);
}
const Remedy* find(const std::vector<Remedy>& list, RemedyKind kind) {
    const auto found = std::ranges::find(list, kind, &Remedy::kind);
    return found == list.end() ? nullptr : &*found;
}

std::string told(const std::vector<Remedy>& list) {
    std::string text;
    for (const Remedy& remedy : list)
        text += std::string(remedy.change.label.key) + (remedy.holdsThroughout ? "; " : " (not all); ");
    return text;
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
                EXPECT_FALSE(shift.isWorse()) << shift.check << " by " << remedy.change.label.key;
        }
    }
}

TEST(Remedies, AreNoneWhereNothingIsOverloaded) {
    const Fixture fixture;
    const Installation& site = fixture.installation;
    SequentialIds ids(unused);
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
        EXPECT_EQ(find(found, RemedyKind::RunInTurns) != nullptr, canTakeTurns)
            << on << " min of " << on + off << ": " << told(found);
    }
}

/// A moulded-case breaker of 100 A set to 63 A, in front of 25 mm2.
Fixture adjustable(double load) {
    Fixture fixture;
    fixture.circuit().device = {"60947-2", typed(amperes(100)), typed(kiloamperes(25))};
    fixture.circuit().device.thermalSetting = typed(amperes(63));
    fixture.circuit().device.instantaneousSetting = typed(amperes(315));
    fixture.reading().loopImpedance = test::read(ohms(0.25));
    fixture.reading().continuity = test::read(ohms(0.07));
    fixture.wiring().lineSize = typed(squareMillimetres(25));
    fixture.wiring().protectiveSize = typed(squareMillimetres(16));
    fixture.circuit().load = typed(amperes(load));
    return fixture;
}

TEST(Remedies, OfAnAdjustableBreakerSetItsReleaseFirst) {
    const auto found = remediesOf(adjustable(80));
    ASSERT_FALSE(found.empty());
    EXPECT_EQ(found.front().kind, RemedyKind::OtherSetting) << told(found);
    const Edit& edit = found.front().change.edits.front();
    ASSERT_EQ(edit.values.front().key, "device.thermalSetting_A");
    const double setting = std::stod(edit.values.front().text);
    EXPECT_GE(setting, 80);
    EXPECT_LE(setting, 100) << "its rating";
    const Remedy* less = find(found, RemedyKind::LessLoad);
    ASSERT_NE(less, nullptr) << told(found);
    EXPECT_LE(std::stod(less->change.edits.front().values.front().text), 63) << "what it is set to";

    EXPECT_EQ(find(remediesOf(adjustable(110)), RemedyKind::OtherSetting), nullptr)
        << "more than the breaker is made for";
}

/// A frame of 250 A, set to all of it, over 70 mm2 that carry less.
Fixture setTooHigh() {
    Fixture fixture = adjustable(63);
    Device& device = fixture.circuit().device;
    device.ratedCurrent = typed(amperes(250));
    device.thermalSetting = typed(amperes(250));
    device.instantaneousSetting = typed(amperes(1000));
    fixture.supplyReading().externalLoopImpedance = test::read(ohms(0.08));
    fixture.boardReading().loopImpedance = test::read(ohms(0.10));
    fixture.reading().loopImpedance = test::read(ohms(0.12));
    fixture.reading().continuity = test::read(ohms(0.02));
    fixture.wiring().lineSize = typed(squareMillimetres(70));
    fixture.wiring().protectiveSize = typed(squareMillimetres(35));
    return fixture;
}
const Edit::Value* settingOf(const Remedy& remedy) {
    for (const Edit& edit : remedy.change.edits)
        for (const Edit::Value& value : edit.values)
            if (value.key == "device.thermalSetting_A") return &value;
    return nullptr;
}
Current carriedBy(const Fixture& fixture) {
    const Installation& site = fixture.installation;
    const auto known = overloadedCircuit(site, site.visits.front().id, site.circuits.front().id,
                                         test::tables(), fixture.ruleSet);
    return known && known->carried ? *known->carried : throw std::runtime_error("nobody knows I_z");
}

/// Where a clamp read the load, a setting next to it is not sure to carry it.
TEST(Remedies, OfABreakerSetAboveItsWiringTurnItsReleaseDown) {
    for (const bool isMeasured : {false, true}) {
        Fixture fixture = setTooHigh();
        if (isMeasured) {
            fixture.circuit().load = {};
            fixture.reading().measuredLoad = test::read(amperes(63), 0);
        }
        ASSERT_EQ(fixture.find("device-wiring").verdict, Verdict::Fails)
            << "or there is nothing to put right: " << carriedBy(fixture).base() << " A";
        const auto found = remediesOf(fixture);
        ASSERT_FALSE(found.empty());
        ASSERT_EQ(found.front().kind, RemedyKind::OtherSetting) << told(found);
        ASSERT_EQ(found.front().change.edits.size(), 1U) << "device and conductors stay";
        const Edit::Value* set = settingOf(found.front());
        ASSERT_NE(set, nullptr);
        const Current setting = amperes(std::stod(set->text));
        EXPECT_GE(setting, amperes(63)) << "the load";
        EXPECT_LE(setting, carriedBy(fixture));
        const auto shares = test::tables().overloadSettings();
        EXPECT_TRUE(std::ranges::any_of(
            shares,
            [&](const Sourced<Ratio>& share) { return std::abs(share.value * 250 - setting.base()) < 0.1; }))
            << setting.base() << " A is where no dial stands";
        EXPECT_EQ(found.front().change.label.key, "remedy.other-setting");
    }
}

TEST(Remedies, OfABreakerWhoseDialHasNoPositionThereSaySo) {
    Fixture fixture = setTooHigh();
    const Current carried = carriedBy(fixture);
    constexpr double betweenPositions = 0.65; // of the frame
    const Current frame = amperes(std::ceil(carried.base() / betweenPositions));
    fixture.circuit().device.ratedCurrent = typed(frame);
    fixture.circuit().device.thermalSetting = typed(frame);
    // More than the position below carries, and less than what makes it close.
    fixture.circuit().load = typed(amperes(std::floor(carried.base() * 0.93)));
    const auto found = remediesOf(fixture);
    const Remedy* other = find(found, RemedyKind::OtherSetting);
    ASSERT_NE(other, nullptr) << told(found) << " at " << carried.base() << " A carried";
    EXPECT_EQ(other->change.label.key, "remedy.other-setting-between");
    const Current setting = amperes(std::stod(settingOf(*other)->text));
    EXPECT_GE(setting, fixture.circuit().load.value);
    EXPECT_LE(setting, carried);
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
        EXPECT_EQ(find(found, RemedyKind::WithoutPlugFuse) != nullptr, use == CircuitUse::Fixed)
            << told(found);
    }
}

TEST(Remedies, WithADeviceThatPassesAloneLeaveTheConductors) {
    Fixture fixture;
    fixture.circuit().load = typed(amperes(22));
    const auto found = remediesOf(fixture);
    EXPECT_NE(find(found, RemedyKind::OtherDevice), nullptr) << told(found);
    EXPECT_EQ(find(found, RemedyKind::DeviceAndConductor), nullptr) << told(found);
}

} // namespace
} // namespace loopwright
