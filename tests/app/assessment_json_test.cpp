// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/assessment_json.h"

#include "tests/app/schema_faults.h"
#include "tests/core/demo/demo_file.h"

#include <gtest/gtest.h>
#include <map>

namespace loopwright {
namespace {

using nlohmann::json;

std::string faultsOf(const json& document) {
    return test::schemaFaults("schema/assessment.schema.json", document);
}

Installation demoSite() {
    return test::importedDemo().installation;
}

json assessed(const Installation& site, Id visit) {
    const std::vector<RuleSet> ruleSets = builtInRuleSets();
    const RuleSet& rules = ruleSetFor(ruleSets, find(site.visits, visit)->ruleSet);
    const Assessment assessment = assess(site, visit, ReferenceTables::builtIn(), rules);
    return json::parse(assessmentJson(site, assessment, Words(QLocale::c())));
}

TEST(AssessmentJson, IsWhatItsSchemaSays) {
    const Installation site = demoSite();
    for (const Visit& visit : site.visits) {
        const json document = assessed(site, visit.id);
        EXPECT_EQ(faultsOf(document), "") << visit.label;
        EXPECT_GT(document.at("findings").size(), 200U) << visit.label;
    }
}

TEST(AssessmentJson, TheSchemaRefusesWhatIsNotPromised) {
    json document = assessed(demoSite(), demoSite().visits.back().id);
    document["findings"][0]["verdict"] = "perhaps";
    EXPECT_NE(faultsOf(document), "");
}

TEST(AssessmentJson, CountsAreThoseOfTheFindings) {
    const Installation site = demoSite();
    const json document = assessed(site, site.visits.back().id);
    std::map<std::string, int> counted;
    for (const json& finding : document.at("findings"))
        ++counted[finding.at("verdict")];
    for (const auto& [verdict, count] : document.at("verdicts").items())
        EXPECT_EQ(count, counted[verdict]) << verdict;
    EXPECT_EQ(document.at("answer"), "not-fit");
    EXPECT_EQ(document.at("site").at("name"), "Oakum Row Works");
    for (const json& finding : document.at("findings"))
        EXPECT_EQ(finding.at("sentence").get<std::string>().find("_"), std::string::npos)
            << finding.at("sentence");
}

TEST(AssessmentJson, AReadingBeyondTheRangeIsTold) {
    Installation site = demoSite();
    const Id visit = site.visits.back().id;
    for (CircuitReading& reading : site.circuitReadings)
        if (reading.visit == visit)
            reading.insulationEarth = {EntryState::Above, Origin::Read, 0, megohms(999), {}};
    const json document = assessed(site, visit);
    int told = 0;
    for (const json& finding : document.at("findings")) {
        if (finding.at("check") != "insulation" || finding.at("resultBound") == "exact") continue;
        ++told;
        EXPECT_NEAR(finding.at("result").get<double>(), 999, 1e-6);
        EXPECT_EQ(finding.at("resultBound"), "or-more");
        EXPECT_EQ(finding.at("limitBound"), "exact");
    }
    EXPECT_GT(told, 0);
}

} // namespace
} // namespace loopwright
