// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/remedy.h"

#include "core/sitefile/site_file.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <algorithm>

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
std::vector<Remedy> remediesOf(const Circuit& circuit) {
    const Visit& visit = demo().visits.back();
    return remedies(demo(), visit.id, circuit.id, test::tables(), rulesOf(visit));
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
        const auto changed = foretold(demo(), visit.id, circuit.id, found.front().change, test::tables());
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
    EXPECT_EQ(remediesOf(circuitAt("Board A / 7")).front().kind, RemedyKind::SeparateCircuit)
        << "there is no larger plug fuse";
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
        for (const Remedy& remedy : remedies(site, site.visits.front().id, site.circuits.front().id,
                                             test::tables(), fixture.ruleSet)) {
            auto changed = foretold(site, site.visits.front().id, site.circuits.front().id, remedy.change,
                                    test::tables());
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
    EXPECT_TRUE(
        remedies(site, site.visits.front().id, site.circuits.front().id, test::tables(), fixture.ruleSet)
            .empty());
    EXPECT_TRUE(remedies(site, site.visits.front().id, Id{}, test::tables(), fixture.ruleSet).empty());
}

TEST(Remedies, OfADeviceThatIsOnlyTooSmallFitOneThatTheWiringCarries) {
    Fixture fixture; // 2.5 mm2 clipped direct carries 27 A
    fixture.circuit().load = typed(amperes(22));
    const Installation& site = fixture.installation;
    const auto found =
        remedies(site, site.visits.front().id, site.circuits.front().id, test::tables(), fixture.ruleSet);
    const auto other = std::ranges::find(found, RemedyKind::OtherDevice, &Remedy::kind);
    ASSERT_NE(other, found.end()) << told(found);
    EXPECT_EQ(other->change.edits.front().values.front().text, "25 (typed)");
}

} // namespace
} // namespace loopwright
