// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/circuit_overload.h"
#include "core/checks/surroundings.h"
#include "core/physics/time_current.h"
#include "core/remedy/remedy.h"
#include "tests/core/checks/random_site.h"

#include <algorithm>

/// What the warmth of a board does to its breakers. A maker's data sheet, named in mcb_ambient_derating.csv:
/// 20 A calibrated at 30 degC carry 18.9 A at 40, 17.6 A at 50 and 17 A at 55 degC, and nothing is published
/// beyond.
namespace loopwright {
namespace {

using test::Fixture;
using test::typed;

/// The fixture's circuit, type B of 20 A, with a load in a board of some temperature.
struct WarmBoard : Fixture {
    WarmBoard(double load, std::optional<double> ambient) {
        circuit().load = typed(amperes(load), 1);
        if (ambient) board().ambient = typed(celsius(*ambient));
    }
    WarmBoard with(std::string family, double rated) && {
        circuit().device = {std::move(family), typed(amperes(rated)), typed(kiloamperes(6))};
        return std::move(*this);
    }
};

const Term* termOf(const Finding& finding, std::string_view symbol) {
    const auto found = std::ranges::find(finding.working->terms, symbol, &Term::symbol);
    return found == finding.working->terms.end() ? nullptr : &*found;
}
double valueOf(const Finding& finding, std::string_view symbol) {
    const Term* term = termOf(finding, symbol);
    return term ? term->value.value : -1;
}

TEST(WarmBoard, TheLoadIsHeldAgainstWhatTheBreakerCarriesThere) {
    const Finding usual = WarmBoard(18, 30).find("load-device");
    EXPECT_EQ(usual.verdict, Verdict::Holds) << testing::PrintToString(usual);
    EXPECT_EQ(usual.sentence.key, "check.load-device.holds");

    const Finding warm = WarmBoard(17.9, 40).find("load-device");
    EXPECT_EQ(warm.verdict, Verdict::Holds) << testing::PrintToString(warm);
    EXPECT_EQ(warm.sentence.key, "check.load-device.holds-warm");

    const Finding near = WarmBoard(18, 40).find("load-device");
    EXPECT_EQ(near.verdict, Verdict::Close) << testing::PrintToString(near);
    EXPECT_EQ(near.sentence.key, "check.load-device.close-warm");

    const Finding hot = WarmBoard(18, 50).find("load-device");
    EXPECT_EQ(hot.verdict, Verdict::Fails) << testing::PrintToString(hot);
    EXPECT_NEAR(hot.limit->value, 17.6, 1e-9);
    EXPECT_EQ(hot.working->formula, "I_b ≤ C_a I_n");
    EXPECT_DOUBLE_EQ(valueOf(hot, "θ_a"), 50);
    EXPECT_DOUBLE_EQ(valueOf(hot, "θ_cal"), 30);
    EXPECT_DOUBLE_EQ(valueOf(hot, "C_a"), 0.88);
    EXPECT_FALSE(termOf(hot, "C_a")->source.title.empty());
    ASSERT_EQ(hot.sentence.arguments.size(), 5U);
    EXPECT_NEAR(std::get<Measure>(hot.sentence.arguments[3]).value, 17.6, 1e-9);
    EXPECT_DOUBLE_EQ(std::get<Measure>(hot.sentence.arguments[4]).value, 50);
}

TEST(WarmBoard, BetweenTwoPublishedTemperaturesTheWarmerCounts) {
    EXPECT_NEAR(WarmBoard(13, 45).find("load-device").limit->value, 17.6, 1e-9);
    EXPECT_NEAR(WarmBoard(13, 30.5).find("load-device").limit->value, 18.9, 1e-9);
}

TEST(WarmBoard, SaysOfAnOverloadOnlyWhatIsSureInTheWarmth) {
    // 1.45 I_n = 29 A is sure to operate it anywhere; 1.13 I_n = 22.6 A it need not carry where it is warm.
    for (const double load : {19.0, 21.0, 28.0}) {
        const Finding finding = WarmBoard(load, 50).find("load-device");
        EXPECT_EQ(finding.sentence.key, "check.load-device.fails-warm-unsure") << load << " A";
        EXPECT_EQ(termOf(finding, "I_nf")->note.key, "check.note.where-calibrated") << load << " A";
    }
    EXPECT_EQ(WarmBoard(30, 50).find("load-device").sentence.key, "check.load-device.fails-warm");
    EXPECT_EQ(WarmBoard(21, 30).find("load-device").sentence.key, "check.load-device.fails-carried");
}

TEST(WarmBoard, BeyondAllTablesNobodyCanTellUnlessItFailsAnyway) {
    for (const char* check : {"load-device", "early-operation"}) {
        const Finding finding = WarmBoard(13, 90).find(check);
        EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
        EXPECT_EQ(finding.sentence.key, "check.lacks.unpublished") << check;
        EXPECT_EQ(test::missingFields(finding), "ambient_degC") << check;
    }
    const Finding above = WarmBoard(17.5, 90).find("load-device");
    EXPECT_EQ(above.verdict, Verdict::Fails) << "more than at 55 degC: " << testing::PrintToString(above);
    EXPECT_NEAR(above.limit->value, 17, 1e-9);
    EXPECT_EQ(termOf(above, "C_a")->note.key, "check.note.share-at-most");
}

// 20 A is published up to 55 degC; 2 to 8 A up to 70 degC, of which 8 A carries the least at 60, 0.8125.
TEST(WarmBoard, WhereTheFiguresOfARatingEndThoseOfOthersAreAssumed) {
    const Finding beyond = WarmBoard(13, 58).find("load-device");
    EXPECT_EQ(beyond.verdict, Verdict::Holds) << testing::PrintToString(beyond);
    EXPECT_NEAR(beyond.limit->value, 20 * 0.8125, 1e-9);
    EXPECT_TRUE(beyond.working->restsOnAssumption);
    EXPECT_EQ(termOf(beyond, "C_a")->note.key, "check.note.share-of-others");

    const auto find = [](double load, double ambient) {
        return WarmBoard(load, ambient).with("60898-B", 40).find("load-device");
    };
    EXPECT_EQ(find(20, 30).verdict, Verdict::Holds);
    EXPECT_FALSE(find(20, 30).working->restsOnAssumption);
    const Finding warm = find(20, 35);
    EXPECT_EQ(warm.verdict, Verdict::Holds) << testing::PrintToString(warm);
    EXPECT_NEAR(warm.limit->value, 40 * 0.9, 1e-9) << "15 K above its calibration, the next of one maker";
    EXPECT_TRUE(warm.working->restsOnAssumption);
    EXPECT_EQ(find(39, 35).verdict, Verdict::Fails);
    EXPECT_EQ(find(20, 75).verdict, Verdict::CannotTell) << "nothing reaches so far";
    EXPECT_EQ(find(32, 70).verdict, Verdict::Fails);
    EXPECT_EQ(find(32, 71).verdict, Verdict::Fails) << "no more than at 70 degC";
    EXPECT_EQ(find(41, 75).verdict, Verdict::Fails) << "above its rating, however warm it is";
}

// The data sheet prints 15.1 A for 16 A at 40 degC.
TEST(WarmBoard, ALoadOfJustThePublishedCurrentDoesNotFail) {
    const Finding finding = WarmBoard(15.1, 40).with("60898-B", 16).find("load-device");
    EXPECT_EQ(finding.verdict, Verdict::Close) << testing::PrintToString(finding);
}

TEST(WarmBoard, ABoundIsUsedOnItsSafeSide) {
    const auto with = [](double load, const Entry<Temperature>& ambient,
                         std::string_view check = "load-device") {
        WarmBoard fixture(load, {});
        fixture.board().ambient = ambient;
        return fixture.find(check);
    };
    EXPECT_EQ(with(13, test::below(celsius(30))).verdict, Verdict::Holds)
        << "no warmer than it is calibrated for";
    EXPECT_EQ(with(13, test::below(celsius(40))).verdict, Verdict::Holds) << "18.9 A or more are carried";
    EXPECT_EQ(with(13, test::below(celsius(40)), "early-operation").verdict, Verdict::Holds);
    EXPECT_EQ(with(20.1, test::below(celsius(40))).verdict, Verdict::Fails) << "more than 20 A never are";
    EXPECT_EQ(with(19.5, test::above(celsius(40))).verdict, Verdict::Fails) << "18.9 A at most are carried";
    for (const Finding& finding : {with(19.5, test::below(celsius(40))), with(13, test::above(celsius(20))),
                                   with(13, test::above(celsius(40)))}) {
        EXPECT_EQ(finding.verdict, Verdict::CannotTell) << testing::PrintToString(finding);
        EXPECT_EQ(finding.sentence.key, "check.lacks.beyond-range");
        EXPECT_EQ(test::missingFields(finding), "ambient_degC");
    }
    const Finding unsure = with(21, test::above(celsius(20)));
    EXPECT_EQ(unsure.sentence.key, "check.load-device.fails-warm-unsure")
        << "nobody knows that it carries it for ever";
    const Finding early = with(21, test::above(celsius(40)), "early-operation");
    EXPECT_EQ(early.verdict, Verdict::Close) << testing::PrintToString(early);
    EXPECT_EQ(early.sentence.key, "check.early-operation.unsure-warm");
    const Finding hidden = with(21, test::above(celsius(40)), "hidden-overload");
    EXPECT_EQ(termOf(hidden, "I_may"), nullptr) << "nothing is known of its earliest";
    EXPECT_EQ(termOf(hidden, "I_aged"), nullptr);

    EXPECT_EQ(with(13, test::limited<Temperature>("no thermometer")).verdict, Verdict::Holds)
        << "as if missing";
    EXPECT_EQ(with(13, test::notApplicable<Temperature>()).verdict, Verdict::Holds);
    EXPECT_EQ(with(13, typed(celsius(std::numeric_limits<double>::quiet_NaN()))).verdict, Verdict::Holds);
}

// 16 A carry 18.5 A at 0 degC by the same data sheet, and no rating carries more than 1.156 I_n: what is sure
// to operate a breaker at 30 degC is not sure to in the cold.
TEST(WarmBoard, ColdHoldsTheLatestDeviceBack) {
    const auto cold = [](std::optional<double> ambient, double load, std::string_view check) {
        return WarmBoard(load, ambient).with("60898-B", 16).find(check);
    };
    EXPECT_EQ(cold(30, 24, "hidden-overload").verdict, Verdict::Close) << "1.5 I_n ends within the hour";
    const Finding hidden = cold(0, 24, "hidden-overload");
    EXPECT_EQ(hidden.verdict, Verdict::Fails) << testing::PrintToString(hidden);
    ASSERT_NE(termOf(hidden, "C_a"), nullptr) << testing::PrintToString(hidden);
    EXPECT_EQ(termOf(hidden, "C_a")->note.key, "check.note.latest-in-cold");
    EXPECT_NEAR(valueOf(hidden, "I_must") / valueOf(cold(30, 24, "hidden-overload"), "I_must"),
                valueOf(hidden, "C_a"), 1e-9);
    EXPECT_EQ(cold(30, 24, "load-device").sentence.key, "check.load-device.fails");
    EXPECT_EQ(cold(0, 24, "load-device").sentence.key, "check.load-device.fails-unsure");
    EXPECT_EQ(cold(0, 15, "load-device").verdict, cold(30, 15, "load-device").verdict)
        << "I_n counts, whatever it may carry";
    const Finding beyond = cold(-50, 100, "hidden-overload");
    EXPECT_EQ(termOf(beyond, "C_a")->note.key, "check.note.cold-not-published")
        << testing::PrintToString(beyond);
    EXPECT_EQ(cold(-50, 40, "hidden-overload").verdict, Verdict::Fails) << "heat is not sure to operate it";
}

/// What is not changed by the warmth of a board is the same to the last figure.
void expectAsWithout(WarmBoard fixture, const std::string& about) {
    WarmBoard without = fixture;
    without.board().ambient = {};
    for (const char* check : {"load-device", "early-operation", "hidden-overload"}) {
        const Finding with = fixture.find(check), plain = without.find(check);
        EXPECT_EQ(with.verdict, plain.verdict) << about << ": " << testing::PrintToString(with);
        EXPECT_EQ(with.margin, plain.margin) << about << ": " << testing::PrintToString(with);
        EXPECT_EQ(with.sentence, plain.sentence) << about << ": " << testing::PrintToString(with);
    }
}

TEST(WarmBoard, OnlyBreakersWithoutSettingsAreHeldToIt) {
    for (const double load : {13.0, 19.9, 21.0, 35.0}) {
        const std::string about = std::to_string(load) + " A";
        for (const char* family : {"88-2", "60269-gG", "1361", "3036", "60947-2"})
            expectAsWithout(WarmBoard(load, 60).with(family, 20), family + (" " + about));
    }
    for (const char* family : {"60898-B", "60898-C", "60898-D", "61009-B", "61009-C"})
        EXPECT_EQ(WarmBoard(18, 50).with(family, 20).find("load-device").verdict, Verdict::Fails) << family;
}

// From memory: breakers of BS 3871 are calibrated at 20 or 40 degC, and one cannot see which is meant.
TEST(WarmBoard, AnOlderBreakerIsTakenAtTheLowerOfItsTwoCalibrations) {
    const auto find = [](double load, double ambient) {
        return WarmBoard(load, ambient).with("3871-2", 20).find("load-device");
    };
    EXPECT_EQ(find(13, 20).verdict, Verdict::Holds);
    EXPECT_NEAR(find(13, 25).limit->value, 20 * 0.9, 1e-9) << "as others so much above their calibration";
    EXPECT_EQ(find(19, 25).verdict, Verdict::Fails);
    EXPECT_EQ(find(21, 25).verdict, Verdict::Fails);
}

TEST(WarmBoard, OfOtherDevicesItIsSaidThatWarmthIsNotReckonedWith) {
    for (const char* family : {"88-2", "60947-2"}) {
        const Finding finding = WarmBoard(13, 60).with(family, 20).find("load-device");
        ASSERT_NE(termOf(finding, "θ_a"), nullptr) << family;
        EXPECT_EQ(termOf(finding, "θ_a")->note.key, "check.note.warmth-not-reckoned") << family;
    }
}

RC_GTEST_PROP(WarmBoard, ACoolPlaceChangesNothingForTheLoadAndTheEarliest, ()) {
    const double load = *rc::gen::inRange(10, 200) / 10.0, ambient = *rc::gen::inRange(-20, 31);
    const std::string family = test::anyOf<std::string>({"60898-B", "60898-C", "61009-B", "88-2"});
    RC_LOG() << load << " A at " << ambient << " degC on " << family << "\n";
    WarmBoard fixture = WarmBoard(load, ambient).with(family, test::anyOf({6.0, 16.0, 20.0, 32.0}));
    WarmBoard without = fixture;
    without.board().ambient = {};
    for (const char* check : {"load-device", "early-operation"}) {
        const Finding with = fixture.find(check), plain = without.find(check);
        RC_ASSERT(with.verdict == plain.verdict);
        RC_ASSERT(with.margin == plain.margin);
    }
}

TEST(WarmBoard, TheEarliestSoundBreakerOperatesSooner) {
    // 19.9 A is 1.17 of the 17 A that it carries at 55 degC: more than it holds out against for ever.
    EXPECT_EQ(WarmBoard(19.9, 30).find("early-operation").verdict, Verdict::Holds);
    const Finding warm = WarmBoard(19.9, 55).find("early-operation");
    EXPECT_EQ(warm.verdict, Verdict::Close) << testing::PrintToString(warm);
    EXPECT_EQ(warm.sentence.key, "check.early-operation.close-warm");
    ASSERT_NE(termOf(warm, "I_d"), nullptr) << testing::PrintToString(warm);
    EXPECT_EQ(termOf(warm, "I_d")->origin, TermOrigin::Assumed);
    EXPECT_NEAR(valueOf(warm, "I_d"), 17, 1e-9);
    EXPECT_TRUE(warm.working->restsOnAssumption);
    EXPECT_EQ(WarmBoard(16.9, 55).find("early-operation").verdict, Verdict::Holds) << "carried there too";

    const Finding beyond = WarmBoard(19.9, 90).find("early-operation");
    EXPECT_EQ(beyond.verdict, Verdict::Close) << "sooner than at 55 degC: " << testing::PrintToString(beyond);
    EXPECT_EQ(beyond.sentence.key, "check.early-operation.unsure-warm") << "nobody knows how soon";
}

TEST(WarmBoard, AHiddenOverloadIsTheSameAndItsEarliestEdgeNearer) {
    const Finding usual = WarmBoard(21, {}).find("hidden-overload"),
                  warm = WarmBoard(21, 55).find("hidden-overload");
    EXPECT_EQ(warm.verdict, usual.verdict) << testing::PrintToString(warm);
    EXPECT_NEAR(valueOf(warm, "I_may") / valueOf(usual, "I_may"), 0.85, 1e-9);
    EXPECT_NEAR(valueOf(warm, "I_aged") / valueOf(usual, "I_aged"), 0.85, 1e-9);
    ASSERT_NE(termOf(usual, "I_must"), nullptr) << testing::PrintToString(usual);
    EXPECT_EQ(valueOf(warm, "I_must"), valueOf(usual, "I_must"));
    ASSERT_NE(termOf(warm, "I_d"), nullptr) << testing::PrintToString(warm);
    EXPECT_EQ(termOf(warm, "I_d")->origin, TermOrigin::Assumed);
    EXPECT_FALSE(warm.working->restsOnAssumption) << "the verdict rests on the latest edge";
    EXPECT_EQ(termOf(usual, "I_d"), nullptr);

    const Finding beyond = WarmBoard(21, 90).find("hidden-overload");
    EXPECT_EQ(beyond.verdict, usual.verdict);
    EXPECT_EQ(beyond.sentence.key, "check.hidden-overload.steady-at-once")
        << "nothing is known of its earliest";
    EXPECT_EQ(termOf(beyond, "t_may"), nullptr);
}

// Heat: 60 s at 2.55 I_n (IEC 60898-1, table 7, test c). The magnet: 0.1 s at 5 I_n of type B.
TEST(WarmBoard, WhatIsPublishedOfTimesMovesWithHeatAndNotWithTheMagnet) {
    const ReferenceTables& tables = test::tables();
    const DeviceFamily& family = *tables.deviceFamily("60898-B");
    const Current rated = amperes(20);
    const physics::DeviceTimes& published = tables.deviceTimes(family, rated)->value;
    const auto moved = [&](const Entry<Temperature>& ambient) {
        Board board;
        board.ambient = ambient;
        return timesInPlace(tables, board, family, rated, published);
    };
    EXPECT_FALSE(moved({})) << "nothing is recorded";
    EXPECT_FALSE(moved(typed(celsius(30))));
    const auto latest = [](const physics::DeviceTimes& times, double multiple) {
        return physics::operatingTime(times, amperes(20 * multiple)).latest;
    };
    const auto cold = moved(typed(celsius(0)));
    ASSERT_TRUE(cold);
    EXPECT_EQ(latest(published, 2.55).time, seconds(60));
    EXPECT_NE(latest(*cold, 2.55).time, seconds(60)) << "it takes more in the cold";
    EXPECT_EQ(latest(*cold, 2.55 * 1.156251).time, seconds(60));
    EXPECT_EQ(latest(*cold, 5).time, latest(published, 5).time) << "the magnet feels no cold";
    const auto holds = [](const physics::DeviceTimes& times, double multiple) {
        return physics::operatingTime(times, amperes(20 * multiple)).earliest;
    };
    const auto warm = moved(typed(celsius(50)));
    ASSERT_TRUE(warm);
    EXPECT_EQ(holds(published, 1.13).time, hours(1));
    EXPECT_NE(holds(*warm, 1.13).time, hours(1));
    EXPECT_EQ(holds(*warm, 1.13 * 0.88).time, hours(1));
    EXPECT_EQ(warm->operatedBy.size(), published.operatedBy.size());
    const auto unknown = moved(typed(celsius(90)));
    ASSERT_TRUE(unknown);
    EXPECT_FALSE(holds(*unknown, 1).isLimited() && holds(*unknown, 1).time >= hours(1))
        << "nothing is promised of so warm a place";
}

TEST(WarmBoard, PicturesShowTheEarliestEdgeAtLowerCurrents) {
    const auto shown = [](std::optional<double> ambient) {
        const WarmBoard fixture(21, ambient);
        const Installation& site = fixture.installation;
        return circuitOverload(site, site.visits.front().id, site.circuits.front().id, test::tables(),
                               fixture.ruleSet);
    };
    const auto usual = shown({}), warm = shown(50), unknown = shown(90);
    ASSERT_TRUE(usual && warm && unknown);
    ASSERT_FALSE(usual->band.earliest.empty() || warm->band.earliest.empty());
    EXPECT_NEAR(warm->band.earliest.front().current / usual->band.earliest.front().current, 0.88, 0.03);
    EXPECT_NEAR(warm->band.latest.front().current / usual->band.latest.front().current, 1, 0.03);
    EXPECT_TRUE(usual->heat.moments.back().earliest || usual->found.answer.earliest.operates());
    EXPECT_FALSE(unknown->heat.moments.front().earliest) << "nobody knows how warm it gets";
    EXPECT_FALSE(unknown->found.inWarmth);
}

TEST(WarmBoard, LessLoadIsWhatTheBreakerCarriesThere) {
    const WarmBoard fixture(19, 50);
    const Installation& site = fixture.installation;
    SequentialIds ids(1'000'000);
    const auto found = remedies(site, site.visits.front().id, site.circuits.front().id, test::tables(),
                                fixture.ruleSet, ids);
    const auto less = std::ranges::find(found, RemedyKind::LessLoad, &Remedy::kind);
    ASSERT_NE(less, found.end());
    EXPECT_NEAR(std::get<Measure>(less->change.label.arguments[1]).value, 16.7, 1e-9) << "17.6 A less 5 %";
}

} // namespace
} // namespace loopwright
