// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/registry.h"
#include "tests/app/command_line/spoken.h"
#include "tests/app/schema_faults.h"
#include "tests/support/temporary_folder.h"

#include <gmock/gmock.h>

#include <sstream>

namespace loopwright {
namespace {

using nlohmann::json;
using test::spoken;
using testing::HasSubstr;
using testing::Not;

std::string faultsOf(const json& document) {
    return test::schemaFaults("schema/sums.schema.json", document);
}

std::vector<std::string> wordsOf(const sums::Sum& sum) {
    std::vector<std::string> words{"sum", std::string(sum.key)};
    std::istringstream example{std::string(sum.example)};
    for (std::string word; example >> word;)
        words.push_back(word);
    return words;
}

std::vector<json> batch(const std::string& lines, int expectedCode) {
    const TemporaryFolder folder;
    test::writeBytes(folder / "sums.jsonl", lines);
    const auto outcome = spoken({"sum", "--batch", (folder / "sums.jsonl").string()});
    EXPECT_EQ(outcome.code, expectedCode) << outcome.err;
    std::vector<json> answers;
    std::istringstream out(outcome.out);
    for (std::string line; std::getline(out, line);)
        answers.push_back(json::parse(line));
    for (const json& answer : answers)
        EXPECT_EQ(faultsOf(answer), "") << answer;
    return answers;
}

TEST(SumsJson, TheListIsWhatItsSchemaSays) {
    const auto outcome = spoken({"sums", "--json"});
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const json document = json::parse(outcome.out);
    EXPECT_EQ(faultsOf(document), "");
    EXPECT_EQ(document.at("sums").size(), sums::allSums().size());
}

TEST(SumsJson, EveryAnswerIsWhatItsSchemaSays) {
    for (const sums::Sum& sum : sums::allSums()) {
        std::vector<std::string> words = wordsOf(sum);
        words.emplace_back("--json");
        const auto outcome = spoken(words);
        ASSERT_EQ(outcome.code, 0) << sum.key << ": " << outcome.err;
        EXPECT_EQ(faultsOf(json::parse(outcome.out)), "") << sum.key;
    }
}

TEST(SumsJson, TheSchemaRefusesWhatIsNotPromised) {
    json document = json::parse(spoken({"sum", "permitted-loop", "operatingCurrent_A=160", "--json"}).out);
    EXPECT_EQ(faultsOf(document), "");
    document.erase("workings");
    EXPECT_NE(faultsOf(document), "");
}

TEST(SumsJson, SeveralFiguresGiveSeveralAnswers) {
    const json document =
        json::parse(spoken({"sum", "permitted-loop", "operatingCurrent_A=60,100", "--json"}).out);
    EXPECT_EQ(faultsOf(document), "");
    ASSERT_EQ(document.at("results").at("permittedLoop_ohm").size(), 2U);
    EXPECT_EQ(document.at("workings").size(), 2U);
}

TEST(SumsJson, ARefusalSaysWhichInput) {
    const auto outcome = spoken({"sum", "permitted-loop", "operatingCurrent_A=0", "--json"});
    EXPECT_EQ(outcome.code, 1);
    const json document = json::parse(outcome.out);
    EXPECT_EQ(faultsOf(document), "");
    EXPECT_EQ(document.at("refused").at("input"), "operatingCurrent_A");
    EXPECT_THAT(outcome.err, HasSubstr("operatingCurrent_A"));
}

TEST(SumsJson, ABatchAnswersOneLineALine) {
    const std::string good = R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": 160}, "id": "x"})";
    const auto answers = batch(good + "\n" + good + "\n", 0);
    ASSERT_EQ(answers.size(), 2U);
    EXPECT_EQ(answers[0].at("id"), "x");
    EXPECT_NEAR(answers[1].at("results").at("permittedLoop_ohm").get<double>(), 230 * 0.9 / 160, 0.2);
}

TEST(SumsJson, ABatchNeverStopsAtABadLine) {
    const std::string nested(200'000, '[');
    const std::vector<std::string> bad{
        "",
        "not json",
        "[]",
        "null",
        "{}",
        R"({"sum": 5})",
        R"({"sum": "horoscope"})",
        R"({"sum": "permitted-loop"})",
        R"({"sum": "permitted-loop", "inputs": []})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": null}})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": {"a": 1}}})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": [[1]]}})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": 1e999}})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": 1, "operatingCurrent_A": 2}})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": 1}, "extra": 1})",
        R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": 1}, "id": [1]})",
        nested,
        R"({"sum": "permitted-loop", "id": )" + nested,
        "{\"sum\": \"\xff\xfe\"}",
        std::string(2'000'000, 'x'),
    };
    std::string lines;
    for (const std::string& line : bad)
        lines += line + "\n";
    lines += R"({"sum": "permitted-loop", "inputs": {"operatingCurrent_A": "160 A"}})";
    const auto answers = batch(lines, 1);
    ASSERT_EQ(answers.size(), bad.size() + 1);
    for (std::size_t i = 0; i < bad.size(); ++i)
        EXPECT_TRUE(answers[i].contains("refused")) << bad[i].substr(0, 100) << "\n" << answers[i];
    EXPECT_TRUE(answers.back().contains("results")) << answers.back();
}

TEST(SumsCommand, SaysTheWorkingInWords) {
    const auto outcome = spoken({"sum", "loop-from-parts", "externalLoop_ohm=0.15", "line_mohm_per_m=3.08",
                                 "protective_mohm_per_m=7.41", "length_m=30", "temperatureFactor=1.2",
                                 "permittedLoop_ohm=0.5"});
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    for (const char* part :
         {"Loop from its parts", "R1+R2", "0.15", "Zs = Ze + (R1+R2)", "at most 0.5", "fails", "competence"})
        EXPECT_THAT(outcome.out, HasSubstr(part));
    EXPECT_THAT(outcome.out, Not(HasSubstr("_"))) << "marks of subscripts are for the screen";
}

TEST(SumsCommand, TheListSaysHowToAsk) {
    const auto outcome = spoken({"sums"});
    EXPECT_EQ(outcome.code, 0);
    for (const sums::Sum& sum : sums::allSums())
        EXPECT_THAT(outcome.out, HasSubstr("loopwright sum " + std::string(sum.key) + " ")) << sum.key;
}

TEST(SumsCommand, AnotherRuleSetGivesOtherDefaults) {
    const auto outcome =
        spoken({"sum", "permitted-loop", "operatingCurrent_A=160", "--rules", "iec-60364", "--json"});
    EXPECT_EQ(json::parse(outcome.out).at("ruleSet").at("key"), "iec-60364");
    const auto unknown = spoken({"sums", "--rules", "mars"});
    EXPECT_EQ(unknown.code, 1);
    EXPECT_THAT(unknown.err, HasSubstr("bs-7671-2018"));
}

TEST(SumsCommand, WrongUsageIsNotARefusal) {
    EXPECT_EQ(spoken({"sum"}).code, 2);
    EXPECT_EQ(spoken({"sum", "permitted-loop", "--batch", "x"}).code, 2);
    EXPECT_EQ(spoken({"sum", "--batch", "/no/such/file"}).code, 1);
    EXPECT_EQ(spoken({"sum", "permitted-loop", "nonsense"}).code, 1);
}

} // namespace
} // namespace loopwright
