// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/rule_set.h"

#include "core/phrases/phrases.h"
#include "core/reference/embedded.h"
#include "core/reference/reference_tables.h"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

namespace loopwright {
namespace {

using nlohmann::json;

/// A rule set of no country: round figures that no edition has, so that a value that was not read shows.
json invented() {
    const auto limit = [](auto value) { return json{{"value", value}, {"source", "invented for a test"}}; };
    return {{"key", "islands-1"},
            {"revision", "r7"},
            {"title", "Rules of the Islands"},
            {"tables",
             {{"loop", "printed nowhere"},
              {"capacity", "BS 7671"},
              {"ambient", "BS 7671"},
              {"bonding", "BS 7671"}}},
            {"loopRule", "corrected-reading"},
            {"limits",
             {{"nominalVoltage_V", limit(110)},
              {"voltageFactorMin", limit(0.9)},
              {"voltageFactorMax", limit(1.2)},
              {"disconnection",
               limit(json::array({{{"earthing", "tt"}, {"above_V", 10}, {"upTo_V", 110}, {"time_s", 0.25}},
                                  {{"earthing", "tn"}, {"above_V", 110}, {"time_s", 0.15}}}))},
              {"distributionTn_s", limit(3)},
              {"distributionTt_s", limit(2)},
              {"finalThresholdSockets_A", limit(25)},
              {"finalThresholdFixed_A", limit(20)},
              {"loopGuard", limit(0.7)},
              {"testTemperature_degC", limit(15)},
              {"touchVoltage_V", limit(25)},
              {"additionalProtection_mA", limit(10)},
              {"additionalProtectionSocketsUpTo_A", limit(16)},
              {"additionalProtectionLighting", limit(true)},
              {"dropLighting", limit(0.02)},
              {"dropOther", limit(0.04)},
              {"conventionalFactor", limit(1.3)},
              {"adiabaticTime_s", limit(4)},
              {"closeBand", limit(0.1)},
              {"ringTolerance", limit(0.03)},
              {"ringProtectiveTolerance", limit(0.2)},
              {"ringRatedCurrent_A", limit(20)},
              {"ringLeastCapacity_A", limit(12)},
              {"ringLeastSize_mm2", limit(4)},
              {"conventionalByRating", limit(json::array({"88-2"}))}}},
            {"clauses",
             json::array(
                 {{{"purpose", "loop"}, {"number", "7"}, {"source", "invented"}, {"fromMemory", true}}})}};
}

/// The refusal of a rule set that was changed by `change`: its key and the place that it names.
template <class Change>
std::pair<std::string, std::string> refusal(Change change) {
    json document = invented();
    change(document);
    const auto set = RuleSet::parse(document.dump());
    if (set) return {"taken", ""};
    EXPECT_TRUE(phrase(set.error().key)) << set.error().key << " has no phrase";
    return {std::string(set.error().key), std::get<std::string>(set.error().arguments.at(0))};
}

TEST(RuleSet, AnInventedOneIsReadWhole) {
    const auto set = RuleSet::parse(invented().dump());
    ASSERT_TRUE(set) << set.error().key;
    EXPECT_EQ(set->key, "islands-1");
    EXPECT_EQ(set->revision, "r7");
    EXPECT_EQ(set->title, "Rules of the Islands");
    EXPECT_EQ(set->loopTableEdition, "printed nowhere");
    EXPECT_EQ(set->loopRule, LoopRule::CorrectedReading);
    EXPECT_EQ(set->nominalVoltage, volts(110));
    EXPECT_TRUE(set->additionalProtectionLighting);
    EXPECT_EQ(set->voltageFactorMin, 0.9);
    EXPECT_EQ(set->voltageFactorMax, 1.2);
    EXPECT_EQ(set->distributionTn, seconds(3));
    EXPECT_EQ(set->distributionTt, seconds(2));
    EXPECT_EQ(set->finalThresholdSockets, amperes(25));
    EXPECT_EQ(set->finalThresholdFixed, amperes(20));
    EXPECT_EQ(set->loopGuard, 0.7);
    EXPECT_EQ(set->testTemperature, celsius(15));
    EXPECT_EQ(set->touchVoltage, volts(25));
    EXPECT_EQ(set->additionalProtection, milliamperes(10));
    EXPECT_EQ(set->additionalProtectionSocketsUpTo, amperes(16));
    EXPECT_EQ(set->dropLighting, 0.02);
    EXPECT_EQ(set->dropOther, 0.04);
    EXPECT_EQ(set->conventionalFactor, 1.3);
    EXPECT_EQ(set->adiabaticTime, seconds(4));
    EXPECT_EQ(set->closeBand, 0.1);
    EXPECT_EQ(set->ringTolerance, 0.03);
    EXPECT_EQ(set->ringProtectiveTolerance, 0.2);
    EXPECT_EQ(set->ringRatedCurrent, amperes(20));
    EXPECT_EQ(set->ringLeastCapacity, amperes(12));
    EXPECT_EQ(set->ringLeastSize, squareMillimetres(4));
    EXPECT_THAT(set->conventionalByRating, testing::ElementsAre("88-2"));
    ASSERT_EQ(set->disconnection.size(), 2U);
    EXPECT_EQ(set->disconnection[0].earthing, Earthing::Tt);
    EXPECT_EQ(set->disconnection[0].upTo, volts(110));
    EXPECT_FALSE(isFinite(set->disconnection[1].upTo));
    EXPECT_EQ(set->sourceOf("loopGuard").title, "invented for a test");
    EXPECT_EQ(set->sourceOf("no such limit"), Source{});
    ASSERT_TRUE(set->clause("loop"));
    EXPECT_TRUE(set->clause("loop")->source.fromMemory);
    EXPECT_EQ(set->clause("ring"), nullptr);
}

TEST(RuleSet, ItsTablesDecideWhatALookUpAnswers) {
    const auto set = RuleSet::parse(invented().dump());
    ASSERT_TRUE(set);
    const ReferenceTables tables = ReferenceTables::builtIn();
    const auto loop =
        tables.permittedLoop(*set, volts(110), *tables.deviceFamily("60898-B"), amperes(16), seconds(0.4));
    ASSERT_TRUE(loop);
    EXPECT_DOUBLE_EQ(loop->value.base(), 110 * 0.9 / 80)
        << "an edition that no table has leaves only the formula";
}

TEST(RuleSet, EveryMissingKeyIsNamed) {
    const json whole = invented();
    for (const auto& [key, value] : whole.items()) {
        const auto answer = refusal([&](json& document) { document.erase(key); });
        EXPECT_EQ(answer, std::pair(std::string("rule-set.missing"), key));
    }
    for (const auto& [key, value] : whole["limits"].items()) {
        const auto answer = refusal([&](json& document) { document["limits"].erase(key); });
        EXPECT_EQ(answer, std::pair(std::string("rule-set.missing"), "limits." + key));
    }
}

TEST(RuleSet, WrongAndUnknownKeysAreNamed) {
    using Answer = std::pair<std::string, std::string>;
    EXPECT_EQ(refusal([](json& d) { d["limits"]["loopGuard"]["value"] = "0.8"; }),
              Answer("rule-set.not-a-number", "limits.loopGuard.value"));
    EXPECT_EQ(refusal([](json& d) { d["limits"]["dropOther"]["value"] = -0.05; }),
              Answer("rule-set.below-zero", "limits.dropOther.value"));
    EXPECT_EQ(refusal([](json& d) { d["limits"]["dropOther"].erase("source"); }),
              Answer("rule-set.missing", "limits.dropOther.source"));
    EXPECT_EQ(refusal([](json& d) { d["limits"]["loopGard"] = d["limits"]["loopGuard"]; }),
              Answer("rule-set.unknown", "limits.loopGard"));
    EXPECT_EQ(refusal([](json& d) { d["remark"] = "new"; }), Answer("rule-set.unknown", "remark"));
    EXPECT_EQ(refusal([](json& d) { d["title"] = 7; }), Answer("rule-set.not-a-text", "title"));
    EXPECT_EQ(refusal([](json& d) { d["limits"] = 7; }), Answer("rule-set.not-an-object", "limits"));
    EXPECT_EQ(refusal([](json& d) { d["clauses"] = 7; }), Answer("rule-set.not-a-list", "clauses"));
    EXPECT_EQ(refusal([](json& d) { d["clauses"][0]["fromMemory"] = "yes"; }),
              Answer("rule-set.not-a-flag", "clauses[0].fromMemory"));
    EXPECT_EQ(refusal([](json& d) { d["loopRule"] = "by feel"; }),
              Answer("rule-set.no-such-word", "loopRule"));
    EXPECT_EQ(refusal([](json& d) { d["limits"]["disconnection"]["value"][1]["earthing"] = "it"; }),
              Answer("rule-set.no-such-word", "limits.disconnection.value[1].earthing"));
}

TEST(RuleSet, WhatIsNoRuleSetIsRefused) {
    EXPECT_EQ(RuleSet::parse("").error().key, "rule-set.not-json");
    EXPECT_EQ(RuleSet::parse("{\"key\": ").error().key, "rule-set.not-json");
    EXPECT_EQ(RuleSet::parse("[1, 2]").error().key, "rule-set.not-a-rule-set");
    const std::string text = invented().dump();
    for (std::size_t length = 0; length < text.size(); ++length)
        EXPECT_FALSE(RuleSet::parse(std::string_view(text).substr(0, length))) << length;
}

TEST(RuleSet, BuiltInOnesHaveEveryClauseAndTable) {
    const std::vector<RuleSet> sets = builtInRuleSets();
    const ReferenceTables tables = ReferenceTables::builtIn();
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(&ruleSetFor(sets, "bs-7671-2018"), &sets[1]);
    EXPECT_EQ(&ruleSetFor(sets, "no such rule set"), &sets[0]);
    for (const RuleSet& set : sets) {
        for (const char* purpose :
             {"load", "overload", "conventional", "loop", "disconnection", "residual-touch", "residual-time",
              "additional-protection", "insulation", "breaking-capacity", "adiabatic-line",
              "adiabatic-protective", "ring", "drop", "completeness"})
            EXPECT_NE(set.clause(purpose), nullptr) << set.key << ": " << purpose;
        EXPECT_TRUE(tables.ambientFactor(set.ambientStandard, Insulation::Pvc70, celsius(40), false))
            << set.key;
        EXPECT_TRUE(tables.ambientFactor(set.ambientStandard, Insulation::Xlpe90, celsius(25), true))
            << set.key;
        const CableKey cable{InstallationMethod::C, Material::Copper, Insulation::Pvc70, 2,
                             squareMillimetres(6)};
        EXPECT_TRUE(tables.capacity(set.capacityStandard, cable)) << set.key;
        for (const DeviceFamily& family : tables.deviceFamilies()) {
            if (family.kind != DeviceKind::Breaker && family.kind != DeviceKind::Rcbo) continue;
            for (const Current rated : tables.ratings(family))
                EXPECT_TRUE(tables.permittedLoop(set, set.nominalVoltage, family, rated, seconds(0.4)))
                    << set.key << ": " << family.key << " " << rated.base() << " A";
        }
    }
}

} // namespace
} // namespace loopwright
