// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/visit_records.h"
#include "core/checks/load_over_time.h"
#include "tests/core/fixture.h"

#include <algorithm>

/// Overloads that work, devices about to operate in normal use, wiring that cooks.
namespace loopwright {
namespace {

using test::Fixture;
using test::read;
using test::typed;

/// A circuit with one piece of equipment of 230 V, in runs of so many minutes.
Fixture running(std::string family, double rated, double watts_, double on, double off) {
    Fixture fixture;
    fixture.circuit().device.family = std::move(family);
    fixture.circuit().device.ratedCurrent = typed(amperes(rated));
    fixture.wiring().lineSize = typed(squareMillimetres(16));
    fixture.circuit().load = {};
    Equipment& equipment = fixture.addEquipment("Kiln", watts(watts_));
    equipment.onTime = typed(minutes(on));
    equipment.offTime = typed(minutes(off));
    return fixture;
}

const Term* termOf(const Finding& finding, std::string_view symbol) {
    const auto found = std::ranges::find(finding.working->terms, symbol, &Term::symbol);
    return found == finding.working->terms.end() ? nullptr : &*found;
}

TEST(HiddenOverload, HoldsWithinTheRating) {
    const Finding finding = Fixture().find("hidden-overload");
    EXPECT_EQ(finding.verdict, Verdict::Holds) << testing::PrintToString(finding);
    EXPECT_EQ(finding.sentence.key, "check.hidden-overload.holds");
}

TEST(HiddenOverload, ARunThatNoSoundDeviceIsSureToEndFails) {
    // Common practice, no source: 9.6 kW on a 30 A cartridge fuse, 25 minutes on and 35 off, works for years.
    const Finding kiln = running("1361", 30, 9600, 25, 35).find("hidden-overload");
    EXPECT_EQ(kiln.verdict, Verdict::Fails);
    EXPECT_EQ(kiln.sentence.key, "check.hidden-overload.runs-at-once")
        << "its standard does not say how long it holds out";
    ASSERT_EQ(kiln.sentence.arguments.size(), 7U);
    EXPECT_EQ(std::get<Word>(kiln.sentence.arguments[0]).key, "check.word.the-load");
    EXPECT_NEAR(std::get<Measure>(kiln.sentence.arguments[1]).value, 41.74 / 30, 0.001);
    EXPECT_NEAR(std::get<Measure>(kiln.sentence.arguments[4]).value, 11.74, 0.01);
    EXPECT_NEAR(std::get<Measure>(kiln.sentence.arguments[5]).value, 25, 1e-9);
    EXPECT_EQ(std::get<Measure>(kiln.sentence.arguments[6]).unit, units::minute);
    for (const char* symbol : {"I_2", "I_may", "I_must", "s", "I_aged", "(I/I_n)^2", "t_on", "t_off"})
        EXPECT_NE(termOf(kiln, symbol), nullptr) << symbol << "\n" << testing::PrintToString(kiln);
    EXPECT_EQ(termOf(kiln, "s")->origin, TermOrigin::Assumed);
    EXPECT_FALSE(kiln.working->restsOnAssumption) << "the shift stands beside the answer";
    EXPECT_GT(termOf(kiln, "I_must")->value.value, 45)
        << "1.5 I_n for ever operates it, so in runs more does";

    const Finding breaker = running("60898-C", 50, 15065, 4, 16).find("hidden-overload");
    EXPECT_EQ(breaker.sentence.key, "check.hidden-overload.runs-after") << testing::PrintToString(breaker);
    EXPECT_NE(termOf(breaker, "t_may"), nullptr);
    EXPECT_EQ(termOf(breaker, "t_must"), nullptr);
}

TEST(HiddenOverload, WhatASoundDeviceIsSureToEndCannotStayHidden) {
    const Finding finding = running("60898-C", 50, 20000, 60, 60).find("hidden-overload");
    EXPECT_EQ(finding.verdict, Verdict::Close) << testing::PrintToString(finding);
    EXPECT_EQ(finding.sentence.key, "check.hidden-overload.close");
    EXPECT_NE(termOf(finding, "t_must"), nullptr);
}

TEST(HiddenOverload, PiecesThatMayFallTogetherAreSaidToDoSo) {
    Fixture fixture = running("60898-C", 50, 9200, 6, 9);
    Equipment& welder = fixture.addEquipment("Welder", {});
    welder.power = {};
    welder.current = typed(amperes(25));
    welder.onTime = typed(minutes(4));
    welder.offTime = typed(minutes(6));
    fixture.reading().measuredLoad = read(amperes(65), 0);
    const Finding finding = fixture.find("hidden-overload");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_EQ(finding.sentence.key, "check.hidden-overload.together-after")
        << testing::PrintToString(finding);
    EXPECT_NEAR(std::get<Measure>(finding.sentence.arguments[4]).value, 15, 1e-9);
    ASSERT_NE(termOf(finding, "p"), nullptr);
    EXPECT_NEAR(termOf(finding, "p")->value.value, 16, 1e-9) << "per cent: 0.4 of the time each";
    fixture.circuit().device.ratedCurrent = typed(amperes(80));
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::Holds);
}

TEST(HiddenOverload, AnAdjustableBreakerActsByItsOwnInstantaneousSetting) {
    // 360 A for 0.01 min in 10 on an overload release set to 63 A, below the 6 I_r that its delay is stated
    // at.
    Fixture fixture = running("60947-2", 100, 82800, 0.01, 10);
    Device& device = fixture.circuit().device;
    device.thermalSetting = typed(amperes(63));
    device.thermalDelay = typed(seconds(10));
    device.instantaneousSetting = typed(amperes(290));
    const Finding set = fixture.find("hidden-overload");
    EXPECT_EQ(set.verdict, Verdict::Close) << testing::PrintToString(set);
    EXPECT_NEAR(std::get<Measure>(set.sentence.arguments.back()).value, 0.2, 1e-6)
        << "1.2 I_i is 348 A: within 0.2 s";
    device.instantaneousSetting = typed(amperes(400));
    const Finding between = fixture.find("hidden-overload");
    EXPECT_EQ(between.sentence.key, "check.hidden-overload.runs-at-once")
        << "0.8 I_i is 320 A; " << testing::PrintToString(between);
    device.instantaneousSetting = typed(amperes(1000));
    EXPECT_NE(fixture.find("hidden-overload").sentence.key, "check.hidden-overload.runs-at-once");
    device.instantaneousSetting = {};
    const Finding unset = fixture.find("hidden-overload");
    EXPECT_EQ(unset.sentence.key, "check.hidden-overload.runs-at-once")
        << "nobody knows where it is set; " << testing::PrintToString(unset);
}

TEST(HiddenOverload, ADutyThatIsNotKnownForSureAssuresNothing) {
    // 87 A in 50 A for an hour is sure to operate it; for how long nobody knows is not.
    Fixture fixture = running("60898-C", 50, 20000, 60, 60);
    Equipment& kiln = fixture.installation.equipment.back();
    kiln.onTime.state = EntryState::Below;
    const Finding bounded = fixture.find("hidden-overload");
    EXPECT_EQ(bounded.verdict, Verdict::Fails) << testing::PrintToString(bounded);
    EXPECT_EQ(bounded.sentence.key, "check.hidden-overload.duty-unknown");
    EXPECT_EQ(termOf(bounded, "t_must"), nullptr);
    kiln.onTime = typed(minutes(60));
    kiln.offTime = {};
    EXPECT_EQ(fixture.find("hidden-overload").sentence.key, "check.hidden-overload.duty-unknown") << "half";
    kiln.offTime = typed(minutes(0));
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::Close) << "it never rests, and is known to";
    kiln.onTime = {};
    kiln.offTime = {};
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::Close) << "counts as running without end";
}

TEST(HiddenOverload, OfALoadThatIsOnlyKnownToBeAtLeastSoMuchNothingOfNeverIsSaid) {
    Fixture fixture;
    fixture.circuit().device.family = "60898-B";
    fixture.circuit().device.ratedCurrent = typed(amperes(32));
    fixture.circuit().load = typed(amperes(33));
    fixture.circuit().load.state = EntryState::Above;
    const Finding least = fixture.find("hidden-overload");
    EXPECT_EQ(least.verdict, Verdict::Fails) << testing::PrintToString(least);
    EXPECT_EQ(least.sentence.key, "check.hidden-overload.at-least");
    fixture.circuit().load = typed(amperes(64));
    fixture.circuit().load.state = EntryState::Above;
    const Finding sure = fixture.find("hidden-overload");
    EXPECT_EQ(sure.verdict, Verdict::Close);
    EXPECT_EQ(sure.sentence.key, "check.hidden-overload.close-at-least") << testing::PrintToString(sure);
}

TEST(HiddenOverload, APlugFuseIsLookedAtToo) {
    Fixture fixture;
    Equipment& heater = fixture.addEquipment("Wall heater", watts(3600));
    heater.plugFuse = typed(amperes(13));
    const Finding finding = fixture.find("hidden-overload");
    EXPECT_EQ(finding.verdict, Verdict::Fails);
    EXPECT_EQ(finding.sentence.key, "check.hidden-overload.steady-after")
        << "it carries 1.6 I_n for half an hour, and nothing says that it carries 1.2 I_n for ever";
    EXPECT_GT(std::get<Measure>(finding.sentence.arguments.back()).value, 30) << "minutes";
    EXPECT_EQ(std::get<std::string>(finding.sentence.arguments[0]), "Wall heater");
    EXPECT_EQ(fixture.find("plug-fuse").sentence.key, "check.plug-fuse.fails-carried");
    fixture.installation.equipment.back().power = typed(watts(9000));
    fixture.circuit().device.ratedCurrent = typed(amperes(63));
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::Holds)
        << "three times its rating: a sound fuse is sure to end it";
    EXPECT_EQ(fixture.find("plug-fuse").sentence.key, "check.plug-fuse.fails");
}

TEST(HiddenOverload, PlugFusesOfEveryRatingAreLookedAt) {
    Fixture fixture;
    Equipment& tools = fixture.addEquipment("Tools", watts(1840)); // 8 A at 230 V
    tools.plugFuse = typed(amperes(5));
    const Finding five = fixture.find("hidden-overload");
    EXPECT_EQ(five.verdict, Verdict::Fails) << "1.6 I_n is carried for half an hour (BS 1362)";
    EXPECT_EQ(std::get<std::string>(five.sentence.arguments[0]), "Tools") << testing::PrintToString(five);
    EXPECT_EQ(fixture.find("plug-fuse").sentence.key, "check.plug-fuse.fails-carried");
    fixture.circuit().load = typed(amperes(13)); // whatever the equipment draws
    Equipment& heavy = fixture.installation.equipment.back();
    heavy.power = typed(watts(4600));
    heavy.plugFuse = typed(amperes(15));
    const Finding unknown = fixture.find("hidden-overload");
    EXPECT_EQ(unknown.verdict, Verdict::CannotTell) << testing::PrintToString(unknown);
    EXPECT_EQ(unknown.sentence.key, "check.lacks.unpublished");
}

TEST(HiddenOverload, CannotTellWithoutDeviceOrLoad) {
    Fixture fixture;
    fixture.circuit().load = typed(amperes(25));
    fixture.circuit().device.family = "";
    EXPECT_EQ(fixture.find("hidden-overload").verdict, Verdict::CannotTell);
    EXPECT_EQ(test::missingFields(fixture.find("hidden-overload")), "device.family");
    fixture.circuit().device = {"60898-B", typed(amperes(17.5), 1), {}};
    EXPECT_EQ(fixture.find("hidden-overload").sentence.key, "check.lacks.unpublished");
    fixture.circuit().load = {};
    EXPECT_EQ(test::missingFields(fixture.find("hidden-overload")), "load_A");
}

TEST(HiddenOverload, ARunThatFillsItsPeriodIsSaidToBeWithoutRest) {
    const Finding year = running("60898-B", 32, 9200, 525'600, 1).find("hidden-overload");
    EXPECT_EQ(year.verdict, Verdict::Fails) << testing::PrintToString(year);
    EXPECT_EQ(year.sentence.key, "check.hidden-overload.steady-after");
}

TEST(SpanOf, AModelsEdgeIsSureOfTwoDigitsAtMost) {
    const auto expect = [](const Measure& said, double value, int decimals) {
        EXPECT_NEAR(said.value, value, 1e-9);
        EXPECT_EQ(said.decimals, decimals) << said.value;
    };
    expect(noLessThan(seconds(6.46)), 6.4, 1);
    expect(noMoreThan(seconds(6.46)), 6.5, 1);
    expect(noMoreThan(seconds(0.2)), 0.2, 1);
    expect(noLessThan(seconds(0.2)), 0.2, 1);
    expect(noLessThan(minutes(106)), 100, 0);
    expect(noMoreThan(minutes(106)), 110, 0);
    expect(noMoreThan(seconds(60)), 60, 0);
}

TEST(EarlyOperation, IsCloseWhereTheEarliestSoundDeviceOperates) {
    const Finding within = Fixture().find("early-operation");
    EXPECT_EQ(within.verdict, Verdict::Holds) << testing::PrintToString(within);
    // 55 A in 50 A is 1.1 I_n: below the 1.13 I_n that every breaker carries for an hour, in runs of a
    // quarter of one after rests that let it cool.
    const Finding carried = running("60898-C", 50, 12650, 15, 60).find("early-operation");
    EXPECT_EQ(carried.verdict, Verdict::Holds) << testing::PrintToString(carried);
    EXPECT_EQ(carried.sentence.key, "check.early-operation.holds-in-runs") << "no more than these runs";
    EXPECT_EQ(within.sentence.key, "check.early-operation.holds");
    const Finding early = running("60898-C", 50, 15065, 4, 16).find("early-operation");
    EXPECT_EQ(early.verdict, Verdict::Close);
    EXPECT_EQ(early.sentence.key, "check.early-operation.close");
    const Finding open = running("1361", 30, 9600, 25, 35).find("early-operation");
    EXPECT_EQ(open.sentence.key, "check.early-operation.at-once");
    EXPECT_DOUBLE_EQ(termOf(open, "I_may")->value.value, open.limit->value);
}

TEST(ConductorHeat, FailsWhereTheConductorPassesItsLimitThoughTheDeviceHolds) {
    Fixture fixture = running("1361", 30, 9600, 25, 35);
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    fixture.wiring().ambient = typed(celsius(40));
    const Finding finding = fixture.find("conductor-heat");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_GT(std::get<Measure>(finding.sentence.arguments[0]).value, 80);
    EXPECT_EQ(std::get<Measure>(finding.sentence.arguments[1]).value, 70);
    ASSERT_NE(termOf(finding, "v_most"), nullptr);
    EXPECT_EQ(termOf(finding, "v_most")->origin, TermOrigin::Assumed);
    EXPECT_FALSE(finding.working->restsOnAssumption);

    fixture.wiring().lineSize = typed(squareMillimetres(16));
    EXPECT_EQ(fixture.find("conductor-heat").verdict, Verdict::Holds);
}

TEST(ConductorHeat, ShortRunsThatOnlyAQuickConductorWouldNotBearAreClose) {
    // 36 A in 2.5 mm2 that carries 27 A would end 71 K above 30 degC; in 90 s the conductor alone gets most
    // of the way, with its cable about a third.
    Fixture fixture = running("60898-D", 40, 8280, 1.5, 6);
    fixture.wiring().lineSize = typed(squareMillimetres(2.5), 1);
    const Finding finding = fixture.find("conductor-heat");
    EXPECT_EQ(finding.verdict, Verdict::Close) << testing::PrintToString(finding);
    EXPECT_EQ(finding.sentence.key, "check.conductor-heat.may-pass");
}

TEST(ConductorHeat, DoesNotApplyWhereTheDeviceIsSureToEndIt) {
    Fixture fixture = running("60898-B", 16, 9600, 60, 10);
    fixture.wiring().lineSize = typed(squareMillimetres(2.5), 1);
    EXPECT_EQ(fixture.find("conductor-heat").verdict, Verdict::DoesNotApply);
    EXPECT_EQ(fixture.find("conductor-heat").sentence.key, "check.conductor-heat.device-ends-it");
}

TEST(ConductorHeat, FailsWhereTheWiringBurnsBeforeTheDeviceIsSureToEndIt) {
    // 75 A on a C50 that may take minutes, through 1.5 mm2 whose heat settles in less than one.
    Fixture fixture = running("60898-C", 50, 75 * 230, 60, 10);
    fixture.wiring().lineSize = typed(squareMillimetres(1.5), 1);
    const Finding finding = fixture.find("conductor-heat");
    EXPECT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    EXPECT_EQ(finding.sentence.key, "check.conductor-heat.before-the-end");
    ASSERT_EQ(finding.sentence.arguments.size(), 3U);
    EXPECT_GT(std::get<Measure>(finding.sentence.arguments[0]).value, 160);
}

TEST(ConductorHeat, SaysBothBoundsOfWhatConductorsReach) {
    Fixture fixture = running("1361", 30, 9600, 25, 35);
    fixture.wiring().lineSize = typed(squareMillimetres(4));
    fixture.wiring().ambient = typed(celsius(40));
    const Finding finding = fixture.find("conductor-heat");
    ASSERT_EQ(finding.verdict, Verdict::Fails) << testing::PrintToString(finding);
    const auto celsiusOf = [&](std::string_view symbol) { return termOf(finding, symbol)->value.value; };
    ASSERT_GT(celsiusOf("θ_peak"), celsiusOf("θ_least") + 1);
    EXPECT_EQ(finding.sentence.key, "check.conductor-heat.fails-between");
    ASSERT_EQ(finding.sentence.arguments.size(), 3U);
    EXPECT_EQ(std::get<Measure>(finding.sentence.arguments[0]).value, celsiusOf("θ_least"));
    EXPECT_EQ(std::get<Measure>(finding.sentence.arguments[2]).value, celsiusOf("θ_peak"));
}

TEST(ConductorHeat, AnOrdinaryCircuitHoldsByTheSquareOfItsLoad) {
    const Finding finding = Fixture().find("conductor-heat");
    EXPECT_EQ(finding.verdict, Verdict::Holds);
    EXPECT_NEAR(finding.margin.value(), 1 - (13.0 / 27) * (13.0 / 27), 1e-9);
}

TEST(OverloadAnswer, GivesWhatAPictureNeeds) {
    const Fixture fixture = running("1361", 30, 9600, 25, 35);
    const Installation& site = fixture.installation;
    const VisitRecords records(site, site.visits.front(), test::tables(), fixture.ruleSet, Detail::Full);
    const BoardContext board = records.forBoard(site.boards.front());
    const auto found = overloadAnswer(records.forCircuit(board, site.circuits.front()));
    ASSERT_TRUE(found);
    EXPECT_EQ(found->rated, amperes(30));
    EXPECT_TRUE(found->answer.isHidden());
    ASSERT_TRUE(found->conductor);
    ASSERT_TRUE(found->answer.conductor);
    EXPECT_GT(found->answer.conductor->peak, found->answer.conductor->mean);
    EXPECT_FALSE(found->device->replicas.late.empty());
}

} // namespace
} // namespace loopwright
