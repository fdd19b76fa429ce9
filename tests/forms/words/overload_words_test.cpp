// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/words/overload_words.h"

#include "forms/words/logged_words.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace loopwright {
namespace {

const Words plain{QLocale::c()};

CircuitLog logThatBeganWith(double current) {
    CircuitLog log;
    log.rated = amperes(32);
    log.holdsOut = true;
    log.picture.device = "check.word.breaker";
    log.found.peak = amperes(40);
    log.found.length = minutes(10);
    log.found.atFirst = amperes(current);
    return log;
}

TEST(LoggedWords, SayWhereALogBeginsUnderLoadThatColdIsAssumed) {
    const QString loaded = loggedSentences(logThatBeganWith(30), plain);
    EXPECT_TRUE(loaded.contains(QStringLiteral("cold at its beginning"))) << utf8(loaded);
    for (const double current : {0.0, 0.4}) {
        const QString idle = loggedSentences(logThatBeganWith(current), plain);
        EXPECT_FALSE(idle.contains(QStringLiteral("cold"))) << current << " A: " << utf8(idle);
    }
}

TEST(LoggedWords, ClaimNothingOfTheEarliestWhereItsWarmthIsNotKnown) {
    CircuitLog log = logThatBeganWith(0);
    EXPECT_TRUE(loggedSentences(log, plain).contains(QStringLiteral("No sound breaker would have operated")));
    log.isWarmthKnown = false;
    const QString said = loggedSentences(log, plain);
    EXPECT_FALSE(said.contains(QStringLiteral("would have operated"))) << utf8(said);
    EXPECT_TRUE(said.contains(QStringLiteral("not known"))) << utf8(said);
}

TEST(OverloadFacts, ClaimNothingOfTheEarliestWhereItsWarmthIsNotKnown) {
    OverloadAnswer overload;
    overload.rated = amperes(32);
    overload.load.load.peak = amperes(30);
    overload.answer.mayOperateAt = amperes(36.2);
    overload.answer.holdsOut = true;
    const auto factOf = [&](const QString& what) {
        const auto facts = overloadFacts(overload, "check.word.breaker", plain);
        const auto fact = std::ranges::find(facts, what, &OverloadFact::what);
        return fact == facts.end() ? QString() : fact->said;
    };
    const QString earliest = QStringLiteral("The earliest sound breaker"),
                  more = QStringLiteral("More load until it may operate");
    EXPECT_EQ(factOf(earliest), QStringLiteral("does not operate"));
    EXPECT_FALSE(factOf(more).isEmpty());
    overload.inWarmth.reset();
    EXPECT_TRUE(factOf(earliest).startsWith(QStringLiteral("may operate at any time")))
        << utf8(factOf(earliest));
    EXPECT_TRUE(factOf(more).isEmpty()) << utf8(factOf(more));
}

TEST(LoggedWords, SayWhatABeginningInTheWarmWouldHaveDone) {
    CircuitLog log = logThatBeganWith(30);
    log.conductor = overload::Conductor{celsius(30), celsius(70), amperes(27), seconds(53), {}, {}};
    log.found.conductor = overload::LoggedHeat{celsius(65), celsius(30), 0.1, 0.2};
    log.found.earliest = log.found.warm.earliest = minutes(9);
    log.found.warm.peak = celsius(65.2);
    const QString same = loggedSentences(log, plain);
    EXPECT_FALSE(same.contains(QStringLiteral("Had it gone on"))) << utf8(same);
    log.found.warm.earliest = minutes(4);
    log.found.warm.peak = celsius(74);
    const QString sooner = loggedSentences(log, plain);
    EXPECT_TRUE(sooner.contains(QStringLiteral("would have operated after 4"))) << utf8(sooner);
    EXPECT_TRUE(sooner.contains(QStringLiteral("as warm as 74"))) << utf8(sooner);
    EXPECT_TRUE(sooner.contains(QStringLiteral("more than their insulation bears"))) << utf8(sooner);
    log.found.warm.earliest = Time();
    const QString atOnce = loggedSentences(log, plain);
    EXPECT_TRUE(atOnce.contains(QStringLiteral("by the time that it began"))) << utf8(atOnce);
    const auto assumed = std::ranges::count_if(loggedFacts(log, plain), [](const OverloadFact& fact) {
        return fact.what.contains(QStringLiteral("had it gone on")) && fact.isAssumed;
    });
    EXPECT_EQ(assumed, 2) << "the earliest device and the conductors";
}

TEST(OverloadFacts, AlwaysSayFromWhichLoadADeviceThatHeatMadeEarlyMayOperate) {
    for (const bool earliestOperates : {false, true})
        for (const bool agedOperates : {false, true}) {
            OverloadAnswer overload;
            overload.rated = amperes(32);
            overload.load.load.peak = amperes(34);
            overload.load.load.isSteady = true;
            overload.answer.mayOperateAt = amperes(36.2);
            overload.answer.agedMayOperateAt = amperes(32.5);
            if (earliestOperates) overload.answer.earliest = {physics::Operation::Operates, 1, minutes(9)};
            if (agedOperates) overload.answer.agedEarliest = {physics::Operation::Operates, 1, minutes(7)};
            const auto facts = overloadFacts(overload, "check.word.breaker", plain);
            const auto early =
                std::ranges::find(facts, QStringLiteral("One that heat has made early"), &OverloadFact::what);
            ASSERT_NE(early, facts.end()) << earliestOperates << agedOperates;
            EXPECT_TRUE(early->said.contains(QStringLiteral("32.5"))) << utf8(early->said);
            EXPECT_TRUE(early->isAssumed);
        }
}

} // namespace
} // namespace loopwright
