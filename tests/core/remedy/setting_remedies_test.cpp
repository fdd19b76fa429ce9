// SPDX-License-Identifier: GPL-3.0-or-later
// Where the overload release of an adjustable breaker is set.
#include "core/remedy/overloaded_circuit.h"
#include "tests/core/remedy/remedies_of.h"

#include <cmath>

namespace loopwright {
namespace {

using test::Fixture;
using test::remediesOf;
using test::remedyIn;
using test::told;
using test::typed;

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
    const Remedy* less = remedyIn(found, RemedyKind::LessLoad);
    ASSERT_NE(less, nullptr) << told(found);
    EXPECT_LE(std::stod(less->change.edits.front().values.front().text), 63) << "what it is set to";

    EXPECT_EQ(remedyIn(remediesOf(adjustable(110)), RemedyKind::OtherSetting), nullptr)
        << "more than the breaker is made for";
}

TEST(Remedies, SetNoReleaseHigherWhereNobodyKnowsWhatTheWiringCarries) {
    Fixture fixture = adjustable(80);
    ASSERT_NE(remedyIn(remediesOf(fixture), RemedyKind::OtherSetting), nullptr);
    fixture.wiring().method = InstallationMethod::Unknown;
    const auto found = remediesOf(fixture);
    EXPECT_EQ(remedyIn(found, RemedyKind::OtherSetting), nullptr) << told(found);
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
    const Remedy* other = remedyIn(found, RemedyKind::OtherSetting);
    ASSERT_NE(other, nullptr) << told(found) << " at " << carried.base() << " A carried";
    EXPECT_EQ(other->change.label.key, "remedy.other-setting-between");
    const Current setting = amperes(std::stod(settingOf(*other)->text));
    EXPECT_GE(setting, fixture.circuit().load.value);
    EXPECT_LE(setting, carried);
}

} // namespace
} // namespace loopwright
