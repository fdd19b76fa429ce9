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

TEST(LoggedWords, SayWhatIsKnownFromColdOnlyWhereItMayHaveBeenWarm) {
    const auto withHeat = [](double atFirst) {
        CircuitLog log = logThatBeganWith(atFirst);
        log.conductor = overload::Conductor{celsius(30), celsius(70), amperes(27), seconds(53), {}, {}};
        log.found.conductor = overload::LoggedHeat{celsius(65), celsius(30), 0.1, 0.2};
        log.found.warm.peak = celsius(65);
        return log;
    };
    CircuitLog idle = withHeat(0);
    const QString plainly = loggedSentences(idle, plain);
    EXPECT_TRUE(plainly.contains(QStringLiteral("No sound breaker would have operated."))) << utf8(plainly);
    EXPECT_TRUE(plainly.contains(QStringLiteral("Conductors got as warm as 65"))) << utf8(plainly);
    CircuitLog warmer = idle;
    warmer.found.warm.peak = celsius(68);
    CircuitLog sooner = idle;
    sooner.found.warm.latest = minutes(9);
    for (const CircuitLog& log : {withHeat(30), warmer, sooner}) {
        const QString said = loggedSentences(log, plain);
        EXPECT_TRUE(said.contains(QStringLiteral("From cold, no sound breaker would have operated.")))
            << utf8(said);
        EXPECT_TRUE(said.contains(QStringLiteral("From cold, conductors got as warm as 65"))) << utf8(said);
        const auto facts = loggedFacts(log, plain);
        EXPECT_TRUE(std::ranges::any_of(facts, [](const OverloadFact& fact) {
            return fact.said == QStringLiteral("from cold, would not have operated");
        })) << utf8(said);
    }
    warmer.found.earliest = warmer.found.warm.earliest = minutes(4);
    warmer.found.latest = warmer.found.warm.latest = minutes(8);
    const QString both = loggedSentences(warmer, plain);
    EXPECT_TRUE(
        both.contains(QStringLiteral("From cold, the earliest sound breaker would have operated after 4")))
        << utf8(both);
}

TEST(LoggedWords, NameNoMomentForTheEarliestWhereItMayOperateAtAnyTime) {
    CircuitLog log = logThatBeganWith(0);
    log.holdsOut = false;
    log.found.shareAbove = 0.5;
    log.found.earliest = minutes(3);
    log.found.latest = minutes(8);
    ASSERT_TRUE(log.mayOperateAtAnyTime());
    const QString said = loggedSentences(log, plain);
    EXPECT_FALSE(said.contains(QStringLiteral("earliest"))) << utf8(said);
    EXPECT_TRUE(said.contains(QStringLiteral("at any time above its rating"))) << utf8(said);
    EXPECT_TRUE(said.contains(QStringLiteral("every one would have after 8"))) << utf8(said);
}

TEST(RemedyWords, SayWhatARemedyTakesForGrantedAndWhatFailsInOneBunch) {
    Remedy remedy;
    remedy.holdsThroughout = true;
    EXPECT_EQ(remedyConsequences(remedy, {}, plain), QStringLiteral("No check of the circuit fails then."));
    remedy.notes = {{"remedy.note.no-spare-way", {}}};
    remedy.failingInBunch.emplace_back().check = "device-wiring";
    const QString said = remedyConsequences(remedy, {}, plain);
    for (const char* part :
         {"no free spare way", "With the new circuit in its bunch this one would fail: Device and wiring."})
        EXPECT_TRUE(said.contains(QString::fromUtf8(part))) << part << " in " << utf8(said);
}

TEST(RemedyWords, AskOnceForAnotherClampReadingWhereAnyRemedyNeedsIt) {
    std::vector<Remedy> remedies(3);
    const QString clamp = plain.word("remedy.note.clamp"), advice = plain.word("remedy.advice");
    EXPECT_EQ(remedyAdvice(remedies, plain), advice);
    remedies[1].isClampStale = remedies[2].isClampStale = true;
    EXPECT_EQ(remedyAdvice(remedies, plain), clamp + u' ' + advice);
}

TEST(RemedyWords, WithoutAPlugFuseAskForCordAndAppliance) {
    const QString said = plain.sentence({"remedy.without-plug-fuse", {Word{"remedy.word.equipment"}}});
    for (const char* part : {"the equipment.", "flexible cord", "a plug fuse that carries", "smaller device"})
        EXPECT_TRUE(said.contains(QString::fromUtf8(part))) << part << " in " << utf8(said);
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
