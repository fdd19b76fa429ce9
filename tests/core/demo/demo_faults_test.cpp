// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/assessment.h"
#include "tests/core/demo/demo_file.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <utility>

/// The demo site, imported and assessed: it fails where faults were planted and nowhere else.
namespace loopwright {
namespace {

/// Where and in which check, for instance {"Board C / F1", "load-device"}, with the verdict's key.
using Verdicts = std::map<std::pair<std::string, std::string>, std::string>;

const Visit& visitCalled(const Installation& installation, const std::string& label) {
    for (const Visit& visit : installation.visits)
        if (visit.label == label) return visit;
    throw std::runtime_error("no visit is called " + label);
}

std::string pathOfSubject(const Installation& installation, const Subject& subject) {
    if (const Circuit* circuit = find(installation.circuits, subject.id))
        return pathOf(installation, *circuit);
    if (const Board* board = find(installation.boards, subject.id)) return pathOf(installation, *board);
    return "supply";
}

Verdicts verdictsThatNeedAPerson(const Installation& installation, const Assessment& assessment) {
    Verdicts found;
    for (const Finding& finding : assessment.findings)
        if (finding.verdict == Verdict::Fails || finding.verdict == Verdict::CannotTell)
            found[{pathOfSubject(installation, finding.subject), std::string(finding.check)}] =
                verdictKey(finding.verdict);
    return found;
}

Verdicts planted(const nlohmann::json& list) {
    Verdicts expected;
    for (const nlohmann::json& fault : list["faults"])
        for (const nlohmann::json& check : fault["checks"])
            expected[{fault["subject"], check}] = fault["verdict"];
    return expected;
}

std::string told(const Verdicts::value_type& row) {
    return "  " + row.first.first + ", " + row.first.second + ": " + row.second + "\n";
}

/// The rows of `a` that `b` does not have, or has with another verdict.
std::string missingFrom(const Verdicts& a, const Verdicts& b) {
    std::string rows;
    for (const auto& row : a) {
        const auto other = b.find(row.first);
        if (other == b.end() || other->second != row.second) rows += told(row);
    }
    return rows;
}

Assessment assessed(const Installation& installation, const std::string& label) {
    const Visit& visit = visitCalled(installation, label);
    const std::vector<RuleSet> rules = builtInRuleSets();
    return assess(installation, visit.id, ReferenceTables::builtIn(), ruleSetFor(rules, visit.ruleSet));
}

TEST(DemoFaults, EachIsFoundAndNothingElseIs) {
    const nlohmann::json list = test::plantedFaults();
    const Installation installation = test::importedDemo().installation;
    const Assessment assessment = assessed(installation, list["visit"]);
    const Verdicts found = verdictsThatNeedAPerson(installation, assessment), expected = planted(list);
    EXPECT_EQ(missingFrom(expected, found), "") << "planted, but not found";
    EXPECT_EQ(missingFrom(found, expected), "") << "found, but not planted";
    EXPECT_EQ(answer(installation, assessment), Answer::NotFit);
}

TEST(DemoFaults, SomeVerdictsAreClose) {
    const Installation installation = test::importedDemo().installation;
    const Tally tally = assessed(installation, test::plantedFaults()["visit"]).checks();
    EXPECT_GE(tally.of(Verdict::Close), 5);
    EXPECT_GT(tally.of(Verdict::Holds), 20 * tally.of(Verdict::Fails));
}

TEST(DemoFaults, EveryInspectionItemOfTheListIsAnswered) {
    const Installation installation = test::importedDemo().installation;
    const ReferenceTables tables = ReferenceTables::builtIn();
    for (const Visit& visit : installation.visits)
        for (const InspectionItem& item : tables.inspectionItems()) {
            const auto& outcomes = installation.inspectionOutcomes;
            const bool answered = std::ranges::any_of(outcomes, [&](const InspectionOutcome& outcome) {
                return outcome.visit == visit.id && outcome.item == item.key &&
                       outcome.result != InspectionResult::NotLooked;
            });
            EXPECT_TRUE(answered) << item.key << " in " << visit.label;
        }
}

TEST(DemoFaults, PicturesAndLogsComeAlong) {
    const SiteImport imported = test::importedDemo();
    const Installation& site = imported.installation;
    EXPECT_EQ(imported.attachments.size(), site.photos.size() + site.currentLogs.size());
    for (const Photo& photo : site.photos)
        EXPECT_EQ(photo.mediaType, "image/png");
    for (const CurrentLog& log : site.currentLogs)
        EXPECT_EQ(log.mediaType, "text/csv");
}

} // namespace
} // namespace loopwright
