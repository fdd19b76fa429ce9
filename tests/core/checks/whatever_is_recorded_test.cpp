// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/checks/random_site.h"

#include "core/checks/context.h"
#include "core/phrases/phrases.h"

#include <algorithm>
#include <cmath>
#include <set>

/// What must be true of every finding, whatever stands in the record.
namespace loopwright {
namespace {

using test::Fixture;

std::size_t argumentCount(const Phrase& known) {
    return known.arguments.empty() ? 0
                                   : static_cast<std::size_t>(std::ranges::count(known.arguments, ',')) + 1;
}

void expectSayable(const Message& message, const Finding& finding) {
    const auto known = phrase(message.key);
    RC_ASSERT(known.has_value());
    if (argumentCount(*known) != message.arguments.size()) RC_FAIL(testing::PrintToString(finding));
    for (const Argument& argument : message.arguments) {
        if (const Word* word = std::get_if<Word>(&argument)) RC_ASSERT(phrase(word->key).has_value());
        if (const Measure* measure = std::get_if<Measure>(&argument))
            RC_ASSERT(std::isfinite(measure->value));
    }
}

void expectFinite(const std::optional<Measure>& measure) {
    if (measure) RC_ASSERT(std::isfinite(measure->value));
}

/// Checks of records against each other and against readings: no clause of a rule set speaks of them.
constexpr std::array withoutClause{
    std::string_view("phases"),           std::string_view("device-rating"),
    std::string_view("conductor-sizes"),  std::string_view("drift"),
    std::string_view("loop-agreement"),   std::string_view("continuity-agreement"),
    std::string_view("motor-start"),      std::string_view("changed"),
    std::string_view("load-agreement"),   std::string_view("device-residual"),
    std::string_view("equipment-voltage")};

void expectSound(const Finding& finding) {
    RC_ASSERT(phrase("check." + std::string(finding.check) + ".name").has_value());
    expectSayable(finding.sentence, finding);
    for (const Term& term : finding.working->terms) {
        RC_ASSERT(!term.symbol.empty());
        RC_ASSERT(std::isfinite(term.value.value));
        if (!term.note.key.empty()) expectSayable(term.note, finding);
        const bool isPublished = term.origin == TermOrigin::Table || term.origin == TermOrigin::Rule;
        if (isPublished && term.source.title.empty())
            RC_FAIL(term.symbol + " of " + testing::PrintToString(finding));
    }
    if (finding.margin) RC_ASSERT(std::isfinite(*finding.margin));
    if (finding.verdict == Verdict::Fails || finding.verdict == Verdict::Close ||
        finding.verdict == Verdict::Holds) {
        expectFinite(finding.result);
        expectFinite(finding.limit);
        if (finding.margin) { // 0 fails where a reading such as ">300" stands at the limit itself
            RC_ASSERT(finding.verdict != Verdict::Fails || *finding.margin <= 0);
            RC_ASSERT(finding.verdict != Verdict::Holds || *finding.margin >= 0);
        }
        RC_ASSERT(finding.missing.empty());
        if (finding.working->clause.empty() &&
            std::ranges::find(withoutClause, finding.check) == withoutClause.end())
            RC_FAIL("no clause: " + testing::PrintToString(finding));
    }
    if (finding.verdict == Verdict::CannotTell) {
        if (finding.missing.empty()) RC_FAIL("nothing is missing: " + testing::PrintToString(finding));
        for (const MissingInput& input : finding.missing)
            RC_ASSERT(fieldInfo(input.kind, input.field) != nullptr);
        RC_ASSERT(!finding.margin);
    }
}

RC_GTEST_PROP(WhateverIsRecorded, FindingsCanBeSaidAndNameWhatTheyLack, ()) {
    Fixture fixture;
    test::scramble(fixture);
    for (const Finding& finding : fixture.assess().findings)
        expectSound(finding);
}

RC_GTEST_PROP(WhateverIsRecorded, AVerdictAloneIsTheSameVerdict, ()) {
    Fixture fixture;
    test::scramble(fixture);
    const auto full = fixture.assess().findings;
    const auto brief = fixture.assess(Detail::VerdictOnly).findings;
    RC_ASSERT(full.size() == brief.size());
    for (std::size_t i = 0; i < full.size(); ++i) {
        RC_ASSERT(full[i].check == brief[i].check);
        RC_ASSERT(full[i].verdict == brief[i].verdict);
        if (full[i].margin != brief[i].margin)
            RC_FAIL("full: " + testing::PrintToString(full[i]) +
                    "; alone: " + testing::PrintToString(brief[i]));
        RC_ASSERT(brief[i].sentence == Message{});
        RC_ASSERT(*brief[i].working == Working{});
        RC_ASSERT(brief[i].missing.empty());
    }
}

RC_GTEST_PROP(WhateverIsRecorded, TwoRunsAgree, ()) {
    Fixture fixture;
    test::scramble(fixture);
    for (Finding& finding :
         fixture.installation.circuits.empty() ? std::vector<Finding>{} : fixture.assess().findings) {
        const Finding again = fixture.find(finding.check, finding.subject.id);
        if (finding.working->terms.size() != again.working->terms.size() ||
            finding.sentence != again.sentence)
            RC_FAIL(testing::PrintToString(finding));
    }
}

TEST(CheckPhrases, EveryCheckHasANameAndASentenceForEachVerdict) {
    std::set<std::string_view> keys;
    for (const auto& check : circuitChecks())
        keys.insert(check.key);
    for (const auto& check : boardChecks())
        keys.insert(check.key);
    for (const auto& check : supplyChecks())
        keys.insert(check.key);
    for (const std::string_view key : keys)
        for (const char* ending : {".name", ".holds", ".close", ".fails"})
            EXPECT_TRUE(phrase("check." + std::string(key) + ending)) << key << ending;
}

TEST(CheckPhrases, CheckKeysAreThoseOfTheRegistry) {
    const Fixture fixture;
    std::set<std::string_view> registered, found;
    for (const auto& check : circuitChecks())
        registered.insert(check.key);
    const Assessment assessment = fixture.assess();
    for (const Finding* finding : assessment.about(fixture.installation.circuits.front().id))
        found.insert(finding->check);
    EXPECT_EQ(registered, found);
}

} // namespace
} // namespace loopwright
