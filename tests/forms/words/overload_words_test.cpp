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
