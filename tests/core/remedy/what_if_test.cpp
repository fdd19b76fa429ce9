// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/remedy/what_if.h"

#include "core/checks/context.h"
#include "tests/core/fixture.h"

#include <algorithm>

namespace loopwright {
namespace {

using test::Fixture;
using test::typed;

WhatIf tried(const Fixture& fixture, std::vector<Edit> edits) {
    const Installation& site = fixture.installation;
    auto result = whatIf(site, site.visits.front().id, site.circuits.front().id, {{}, std::move(edits)},
                         test::tables(), fixture.ruleSet);
    if (!result) throw std::runtime_error(std::string(result.error().key));
    return std::move(*result);
}

const CheckShift& shiftOf(const std::vector<CheckShift>& shifts, std::string_view check) {
    const auto found = std::ranges::find(shifts, check, &CheckShift::check);
    if (found == shifts.end()) throw std::runtime_error("no shift of " + std::string(check));
    return *found;
}

TEST(WhatIf, ShowsEveryCheckOfTheCircuitSideBySideAndWritesNothing) {
    const Fixture fixture;
    const Installation untouched = fixture.installation;
    const Id circuit = untouched.circuits.front().id;
    const WhatIf result = tried(fixture, {setField(RecordKind::Circuit, circuit, "load_A", "25")});
    EXPECT_EQ(fixture.installation, untouched);
    EXPECT_EQ(result.changed.circuits.front().load.value, amperes(25));
    EXPECT_EQ(result.circuit.size(), circuitChecks().size());
    const CheckShift& load = shiftOf(result.circuit, "load-device");
    ASSERT_TRUE(load.before && load.after);
    EXPECT_EQ(load.before->verdict, Verdict::Holds);
    EXPECT_EQ(load.after->verdict, Verdict::Fails);
    EXPECT_FALSE(load.after->sentence.key.empty()) << "in full";
    EXPECT_TRUE(load.isWorse());
    EXPECT_FALSE(shiftOf(result.circuit, "polarity").isWorse());
}

TEST(WhatIf, AClampReadingDoesNotOutliveAnotherLoad) {
    Fixture fixture;
    fixture.reading().measuredLoad = test::read(amperes(26), 0);
    const Id circuit = fixture.circuit().id;
    EXPECT_EQ(shiftOf(tried(fixture, {setField(RecordKind::Circuit, circuit, "load_A", "12")}).circuit,
                      "load-device")
                  .after->verdict,
              Verdict::Holds);
    EXPECT_EQ(
        shiftOf(
            tried(fixture, {setField(RecordKind::Circuit, circuit, "device.ratedCurrent_A", "25")}).circuit,
            "load-device")
            .after->verdict,
        Verdict::Fails)
        << "another device leaves the load as it was read";
}

TEST(WhatIf, ALoadThatIsTriedIsNotHeldAgainstTheEquipment) {
    Fixture fixture;
    fixture.circuit().load = {};
    fixture.addEquipment("Kiln", kilowatts(9.6));
    const Id circuit = fixture.circuit().id;
    const WhatIf less = tried(fixture, {setField(RecordKind::Circuit, circuit, "load_A", "12")});
    EXPECT_EQ(shiftOf(less.circuit, "load-device").after->verdict, Verdict::Holds);
    EXPECT_EQ(shiftOf(less.circuit, "load-agreement").after->verdict, Verdict::DoesNotApply);
}

TEST(WhatIf, ResistancesGoWithTheSizeOfTheConductors) {
    // IEC 60228: 2.5 mm2 7.41, 4 mm2 4.61, 1.5 mm2 12.1 mohm/m.
    const Fixture fixture;
    const Id circuit = fixture.installation.circuits.front().id;
    const WhatIf result =
        tried(fixture, {setField(RecordKind::Circuit, circuit, "wiring.lineSize_mm2", "4")});
    const CircuitReading& reading = result.changed.circuitReadings.front();
    EXPECT_NEAR(reading.continuity.value.base(), 0.35 * (4.61 + 12.1) / (7.41 + 12.1), 1e-9);
    EXPECT_EQ(reading.continuity.origin, Origin::Computed);
    EXPECT_NEAR(reading.loopImpedance.value.base(), 0.53 - 0.35 + reading.continuity.value.base(), 1e-12);
    EXPECT_EQ(shiftOf(result.circuit, "continuity-agreement").after->verdict, Verdict::Holds);
}

TEST(WhatIf, LeavesWhatArmourResistsAsItWasRead) {
    Fixture fixture;
    fixture.wiring().protectiveConductor = ProtectiveConductor::Armour; // 1.5 mm2 of steel
    const Id circuit = fixture.circuit().id;
    const WhatIf result =
        tried(fixture, {setField(RecordKind::Circuit, circuit, "wiring.lineSize_mm2", "4")});
    EXPECT_EQ(result.changed.circuitReadings.front().continuity, fixture.reading().continuity);
    EXPECT_EQ(result.changed.circuitReadings.front().loopImpedance, fixture.reading().loopImpedance);
}

TEST(WhatIf, SaysWhereAClampReadingWouldStillGoBeforeWhatIsTried) {
    Fixture fixture;
    const Id circuit = fixture.circuit().id;
    const auto isStale = [&] {
        return tried(fixture, {setField(RecordKind::Circuit, circuit, "load_A", "12")}).isClampStale;
    };
    EXPECT_FALSE(isStale()) << "there is none";
    fixture.reading().measuredLoad = test::read(amperes(26), 0);
    EXPECT_TRUE(isStale());
    EXPECT_FALSE(
        tried(fixture, {setField(RecordKind::Circuit, circuit, "wiring.length_m", "12")}).isClampStale)
        << "the load stays";
}

TEST(WhatIf, TellsWhatItChangesElsewhere) {
    Fixture fixture;
    fixture.nest(); // a feeder of 63 A that carries 40 A
    Circuit& feeder = fixture.installation.circuits.back();
    const Installation& site = fixture.installation;
    const auto result = whatIf(site, site.visits.front().id, feeder.id,
                               {{}, {setField(RecordKind::Circuit, feeder.id, "wiring.length_m", "600")}},
                               test::tables(), fixture.ruleSet);
    ASSERT_TRUE(result);
    const bool dropWorsens = std::ranges::any_of(
        result->elsewhere, [](const CheckShift& shift) { return shift.check == "drop" && shift.isWorse(); });
    EXPECT_TRUE(dropWorsens) << "the circuit behind it drops more";
}

TEST(WhatIf, RefusesWhatTheRecordRefuses) {
    const Fixture fixture;
    const Installation& site = fixture.installation;
    const auto result =
        whatIf(site, site.visits.front().id, site.circuits.front().id,
               {{}, {setField(RecordKind::Circuit, site.circuits.front().id, "load_A", "much")}},
               test::tables(), fixture.ruleSet);
    EXPECT_FALSE(result);
}

} // namespace
} // namespace loopwright
