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
