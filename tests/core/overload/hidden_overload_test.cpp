// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/overload/hidden_overload.h"

#include "tests/core/fixture.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace loopwright::overload {
namespace {

constexpr Ratio shift = 0.1;

/// One load on one device.
struct Case {
    const DeviceFamily& family;
    Current rated;
    Load load;

    Case(std::string_view key, double amps, std::vector<Piece> pieces)
      : family(*test::tables().deviceFamily(key))
      , rated(amperes(amps))
      , load(loadOf(pieces)) {}
    Question question() const {
        return {*test::tables().thermalDevice(family, rated),
                rated,
                test::tables().instantaneousBand(family, rated),
                load,
                std::nullopt,
                shift};
    }
    HiddenOverload answered() const { return answer(question()); }
};

Piece steady(double current) {
    return {amperes(current), 1, std::nullopt, {}};
}
Piece runs(double current, double on, double off) {
    return {amperes(current), 1, minutes(on), minutes(off)};
}

TEST(HiddenOverload, TheExampleOfABreakerAt131TimesItsRatingFor4MinutesIn20) {
    const HiddenOverload answer = Case("60898-C", 50, {runs(65.5, 4, 16)}).answered();
    EXPECT_NEAR(answer.toDevice, 1.31, 1e-9);
    EXPECT_TRUE(answer.isHidden());
    EXPECT_EQ(answer.latest.operation, physics::Operation::Never);
    ASSERT_TRUE(answer.earliest.operates());
    EXPECT_EQ(answer.earliest.run, 1U);
    EXPECT_LT(answer.earliest.after, minutes(4));
    EXPECT_TRUE(answer.holdsOut);
    EXPECT_EQ(answer.overRating.above, minutes(4));
    EXPECT_NEAR(answer.contactPeak, 1.31 * 1.31, 1e-9);
    EXPECT_NEAR(answer.contactMean, 1.31 * 1.31 * 0.2, 1e-9);
}

TEST(HiddenOverload, TheMarginsAreWhereTheAnswerTurns) {
    for (const char* key : {"60898-B", "60898-D", "88-2", "1361", "3036"}) {
        const double rated = std::string_view(key).starts_with("60898") ? 32 : key[0] == '8' ? 32 : 30;
        const auto at = [&](double current) {
            return Case(key, rated, {runs(current, 7, 9), steady(0.1 * current)}).answered();
        };
        const HiddenOverload here = at(35);
        const double factor = here.mayOperateAt / (amperes(35) * 1.1);
        EXPECT_FALSE(at(35 * factor * 0.999).earliest.operates()) << key;
        EXPECT_TRUE(at(35 * factor * 1.001).earliest.operates()) << key;
        ASSERT_TRUE(here.mustOperateAt) << key;
        const double sure = *here.mustOperateAt / (amperes(35) * 1.1);
        EXPECT_FALSE(at(35 * sure * 0.999).latest.operates()) << key;
        EXPECT_TRUE(at(35 * sure * 1.001).latest.operates()) << key;
        EXPECT_GT(*here.mustOperateAt, here.mayOperateAt) << key;
        EXPECT_EQ(here.agedMayOperateAt, here.mayOperateAt * (1 - shift)) << key;
    }
}

TEST(HiddenOverload, WarmthBringsTheEarliestNearerAndLeavesTheLatest) {
    const Case cold("60898-C", 50, {runs(58, 30, 30)}), more("60898-C", 50, {runs(58 / 0.8, 30, 30)});
    Question asked = cold.question();
    asked.inWarmth = 0.8;
    const HiddenOverload usual = cold.answered(), warm = answer(asked), heavier = more.answered();
    EXPECT_NEAR(warm.mayOperateAt / usual.mayOperateAt, 0.8, 1e-9);
    EXPECT_NEAR(warm.agedMayOperateAt / usual.agedMayOperateAt, 0.8, 1e-9);
    ASSERT_TRUE(warm.earliest.operates());
    EXPECT_NEAR(warm.earliest.after / heavier.earliest.after, 1, 1e-9)
        << "as a load that is larger by as much";
    EXPECT_EQ(warm.latest.operation, usual.latest.operation);
    EXPECT_EQ(warm.mustOperateAt, usual.mustOperateAt);

    asked.inWarmth.reset();
    const HiddenOverload unknown = answer(asked);
    EXPECT_FALSE(unknown.holdsOut) << "it may operate sooner than is known";
    EXPECT_EQ(unknown.mustOperateAt, usual.mustOperateAt);
    const Load light = loadOf(std::vector{steady(20)});
    const Question asLight{asked.device, asked.rated, asked.instantaneous, light,
                           std::nullopt, asked.shift, std::nullopt,        std::nullopt};
    EXPECT_EQ(answer(asLight).earliest.operation, physics::Operation::Unknown);
}

TEST(HiddenOverload, OfABreakerNothingIsSureThatItsTestsDoNotProve) {
    // 1.5 I_n: the standard asks 1.45 I_n only for an hour that follows one of 1.13 I_n.
    for (const double run : {10.0, 20.0}) {
        const HiddenOverload answer = Case("60898-B", 32, {runs(48, run, run)}).answered();
        EXPECT_FALSE(answer.latest.operates()) << run << " min: after " << answer.latest.after.base() << " s";
        EXPECT_TRUE(answer.isHidden());
    }
    const HiddenOverload steadily = Case("60898-B", 32, {steady(48)}).answered();
    ASSERT_TRUE(steadily.latest.operates());
    EXPECT_GT(steadily.latest.after, minutes(75));
}

TEST(HiddenOverload, NothingIsClaimedOfADeviceWithoutLimits) {
    const HiddenOverload answer = Case("3871-1", 20, {steady(40)}).answered();
    EXPECT_FALSE(answer.latest.operates());
    EXPECT_TRUE(answer.isHidden()) << "twice its rating, and nothing assures that it operates";
    EXPECT_FALSE(answer.holdsOut);
    EXPECT_NEAR(answer.mayOperateAt.base(), 20, 1e-6) << "it carries its rating and nothing is said of more";
    ASSERT_TRUE(answer.mustOperateAt);
    EXPECT_EQ(*answer.mustOperateAt, amperes(80)) << "the instantaneous band of type 1 ends at 4 I_n";
    EXPECT_TRUE(Case("3871-1", 20, {steady(80)}).answered().latest.operates());
}

TEST(HiddenOverload, WhatMayFallTogetherAssuresNothing) {
    // Together 65 A, 1.63 I_n, operates every 40 A breaker in time; apart none of them does.
    const HiddenOverload answer = Case("60898-C", 40, {runs(35, 30, 30), runs(30, 30, 31)}).answered();
    EXPECT_TRUE(answer.latestTogether.operates());
    EXPECT_FALSE(answer.latest.operates());
    EXPECT_TRUE(answer.isHidden());
}

TEST(HiddenOverload, TheEarliestCountsFromWhenEverythingRunsTogether) {
    const Edge pieces = Case("60898-B", 32, {runs(20, 10, 10), runs(25, 7, 23)}).answered().earliest;
    const Edge whole = Case("60898-B", 32, {runs(45, 7, 23)}).answered().earliest;
    ASSERT_TRUE(pieces.operates() && whole.operates());
    EXPECT_EQ(pieces.run, 1U);
    EXPECT_LE(pieces.after, whole.after * (1 + 1e-9)) << "the same 45 A, and in seconds";
    EXPECT_LT(whole.after, minutes(1));
    const Edge aged = Case("60898-B", 32, {runs(20, 10, 10), runs(25, 7, 23)}).answered().agedEarliest;
    EXPECT_LE(aged.after, pieces.after);
}

TEST(HiddenOverload, AnAgedDeviceOperatesWhereASoundOneNeverDoes) {
    const HiddenOverload answer = Case("60898-C", 50, {steady(49)}).answered();
    EXPECT_FALSE(answer.earliest.operates()) << "below its rating";
    EXPECT_TRUE(answer.agedEarliest.operates());
}

TEST(HiddenOverload, TheInstantaneousReleaseHasItsSay) {
    const HiddenOverload may = Case("60898-B", 16, {runs(60, 0.01, 60)}).answered();
    EXPECT_TRUE(may.earliest.operates());
    EXPECT_EQ(may.earliest.after, Time()) << "above 3 I_n it may operate at once";
    const HiddenOverload must = Case("60898-B", 16, {runs(80, 0.01, 60)}).answered();
    EXPECT_TRUE(must.latest.operates()) << "from 5 I_n on it must";
}

TEST(HiddenOverload, APulseShorterThanTheStandardsTimeIsSureOfNothing) {
    // IEC 60898-1, table 7, e: 5 I_n operates a breaker of type B within 0.1 s, which the current has to
    // stay.
    const HiddenOverload brief = Case("60898-B", 32, {runs(400, 0.05 / 60, 0.6 / 60)}).answered();
    EXPECT_TRUE(brief.earliest.operates());
    EXPECT_EQ(brief.earliest.after, Time());
    EXPECT_GT(brief.latest.operates() ? brief.latest.after : hours(1), seconds(1)) << "half of 0.1 s";
    const HiddenOverload stays = Case("60898-B", 32, {runs(400, 0.2 / 60, 1)}).answered();
    ASSERT_TRUE(stays.latest.operates());
    EXPECT_NEAR(stays.latest.after.base(), 0.1, 1e-9) << "and its time is that much later";
    const HiddenOverload tiny = Case("60898-B", 32, {runs(400, 0.01 / 60, 60)}).answered();
    EXPECT_FALSE(tiny.latest.operates());
    EXPECT_TRUE(tiny.isHidden());
}

TEST(HiddenOverload, AShortTimeStageActsAfterItsDelay) {
    const Case asked("60947-2", 63, {runs(360, 1.0 / 60, 10)});
    const ThermalDevice& device = *test::tables().thermalDevice(asked.family, asked.rated, seconds(10));
    const InstantaneousBand instantaneous{20, 30, {}, {}, seconds(0.2)},
        shortTime{4, 5.5, {}, seconds(0.3), seconds(0.5)};
    const auto answered = [&](const Case& each) {
        return answer({device, each.rated, instantaneous, each.load, std::nullopt, shift, shortTime});
    };
    const HiddenOverload found = answered(asked);
    EXPECT_NEAR(found.earliest.after.base(), 0.3, 1e-9);
    EXPECT_NEAR(found.latest.after.base(), 0.5, 1e-9);
    const Case brief("60947-2", 63, {runs(360, 0.2 / 60, 10)});
    EXPECT_FALSE(answered(brief).earliest.operates()) << "gone before the delay has passed";
    EXPECT_FALSE(answered(brief).latest.operates());
}

struct AnyCase {
    std::string_view key;
    double rated;
    double current, on, off;
    HiddenOverload at(double load) const { return Case(key, rated, {runs(load, on, off)}).answered(); }
};
AnyCase anyCase() {
    static const std::vector<std::pair<std::string_view, double>> devices{
        {"60898-B", 16}, {"60898-C", 50}, {"60898-D", 100}, {"61009-B", 32}, {"88-2", 32},
        {"88-3", 45},    {"1361", 30},    {"3036", 15},     {"1362", 13},    {"60269-gG", 63}};
    const auto& [key, rated] = *rc::gen::elementOf(devices);
    const AnyCase any{key, rated, rated * *rc::gen::inRange(50, 300) / 100.0,
                      *rc::gen::inRange(1, 600) / 10.0, *rc::gen::inRange(1, 600) / 10.0};
    RC_LOG() << key << " " << rated << " A: " << any.current << " A for " << any.on << " min, rests "
             << any.off << " min\n";
    return any;
}

void assertNoLater(const Edge& more, const Edge& less) {
    if (!less.operates()) return;
    RC_ASSERT(more.operates());
    RC_ASSERT(more.after <= less.after * (1 + 1e-9));
}

RC_GTEST_PROP(HiddenOverload, MoreLoadNeverOperatesLater, ()) {
    const AnyCase any = anyCase();
    const HiddenOverload less = any.at(any.current), more = any.at(any.current * 1.05);
    assertNoLater(more.earliest, less.earliest);
    assertNoLater(more.latest, less.latest);
    assertNoLater(more.agedEarliest, less.agedEarliest);
    RC_ASSERT(std::abs(more.mayOperateAt / less.mayOperateAt - 1) < 1e-9);
}

RC_GTEST_PROP(HiddenOverload, TheEarliestIsNeverLaterThanTheLatest, ()) {
    const AnyCase any = anyCase();
    const HiddenOverload answer = any.at(any.current);
    assertNoLater(answer.earliest, answer.latest);
    assertNoLater(answer.agedEarliest, answer.earliest);
    if (any.current <= any.rated) RC_ASSERT(!answer.earliest.operates());
    if (answer.mustOperateAt) RC_ASSERT(answer.mayOperateAt <= *answer.mustOperateAt * (1 + 1e-9));
    RC_ASSERT(answer.earliest.operates() == (answer.mayOperateAt.base() < any.current));
}

RC_GTEST_PROP(HiddenOverload, LongerRestsNeverOperateTheDeviceSooner, ()) {
    AnyCase any = anyCase();
    const HiddenOverload shortRests = any.at(any.current);
    any.off *= 1.5;
    const HiddenOverload longRests = any.at(any.current);
    RC_ASSERT(longRests.mayOperateAt >= shortRests.mayOperateAt * (1 - 1e-9));
    assertNoLater(shortRests.latest, longRests.latest);
}

} // namespace
} // namespace loopwright::overload
