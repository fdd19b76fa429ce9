// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/assess/assessment.h"
#include "core/reference/embedded.h"
#include "tests/core/demo/demo_file.h"
#include "tests/core/fixture.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>

/// Rule sets of nobody, made from a built-in one by changing one thing: whatever a rule set says decides
/// something about the demo site, so nothing of it is wired into the checks.
namespace loopwright {
namespace {

using nlohmann::json;

/// The demo site without what it records itself, so that the rule set is asked; then on an electrode, as a
/// dwelling, with sockets and with aluminium everywhere, since no one site meets every rule.
std::vector<Installation> sites() {
    Installation plain = test::importedDemo().installation;
    for (Supply& supply : plain.supplies)
        supply.nominalVoltage = {};
    for (Visit& visit : plain.visits)
        visit.conductorTemperature = {};
    Installation onElectrode = plain, inDwelling = plain, ofSockets = plain, ofAluminium = plain;
    inDwelling.site.occupancy = Occupancy::Dwelling;
    for (Supply& supply : onElectrode.supplies)
        supply.earthing = Earthing::Tt;
    for (Circuit& circuit : ofSockets.circuits)
        circuit.use = CircuitUse::Sockets;
    for (Circuit& circuit : ofAluminium.circuits)
        circuit.wiring.material = Material::Aluminium;
    return {plain, onElectrode, inDwelling, ofSockets, ofAluminium};
}

json builtIn() {
    return json::parse(embeddedFile("rulesets/bs-7671-2018.json"));
}

std::vector<Finding> judged(const std::vector<Installation>& installations, const json& document) {
    const auto rules = RuleSet::parse(document.dump());
    if (!rules) throw std::runtime_error("refused: " + std::string(rules.error().key));
    std::vector<Finding> findings;
    for (const Installation& installation : installations)
        for (const Visit& visit : installation.visits)
            std::ranges::move(
                assess(installation, visit.id, test::tables(), *rules, Detail::VerdictOnly).findings,
                std::back_inserter(findings));
    return findings;
}

/// Every number in `value` times `factor`, and the other answer to what is yes or no; nothing where it has
/// none.
std::optional<json> scaled(const json& value, double factor) {
    if (value.is_number()) return value.get<double>() * factor;
    if (value.is_boolean()) return !value.get<bool>();
    if (!value.is_array() || value.empty() || !value[0].contains("time_s")) return std::nullopt;
    json rows = value;
    for (json& row : rows)
        row["time_s"] = row["time_s"].get<double>() * factor;
    return rows;
}

TEST(RulesDecide, EveryLimitMovesAVerdictOrItsLimit) {
    const std::vector<Installation> installation = sites();
    const json document = builtIn();
    const auto before = judged(installation, document);
    for (const auto& [key, limit] : document["limits"].items()) {
        bool moved = false;
        for (const double factor : {0.05, 0.6, 0.9, 1.2, 1.7}) {
            json changed = document;
            changed["limits"][key]["value"] = scaled(limit["value"], factor).value_or(json::array());
            moved = moved || judged(installation, changed) != before;
        }
        EXPECT_TRUE(moved) << key << " decides nothing";
    }
}

TEST(RulesDecide, EveryTableAndTheLoopRuleMovesAVerdictOrItsLimit) {
    const std::vector<Installation> installation = sites();
    const json document = builtIn();
    const auto before = judged(installation, document);
    const auto after = [&](auto change) {
        json changed = document;
        change(changed);
        return judged(installation, changed);
    };
    for (const auto& [key, table] : document["tables"].items())
        EXPECT_NE(after([&](json& changed) { changed["tables"][key] = "printed nowhere"; }), before)
            << key << " is looked up somewhere else";
    EXPECT_NE(after([](json& changed) { changed["loopRule"] = "corrected-reading"; }), before);
}

} // namespace
} // namespace loopwright
