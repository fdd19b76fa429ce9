// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/rule_set.h"

#include "core/reference/embedded.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <functional>
#include <limits>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace loopwright {

namespace {

using Json = nlohmann::json;

/// Ends the reading; parse turns it into its answer.
struct Refusal {
    Message message;
};

/// A value of the file with the path that a refusal names.
struct Node {
    const Json& json;
    std::string path;

    [[noreturn]] void refuse(std::string_view key) const { throw Refusal{{key, {path}}}; }

    Node at(std::string_view key) const {
        const Node child{json, path.empty() ? std::string(key) : fmt::format("{}.{}", path, key)};
        const auto found = object().find(key);
        if (found == json.end()) child.refuse("rule-set.missing");
        return {*found, child.path};
    }
    bool has(std::string_view key) const { return object().contains(key); }
    const Json& object() const {
        if (!json.is_object()) refuse("rule-set.not-an-object");
        return json;
    }
    std::string text() const {
        if (!json.is_string()) refuse("rule-set.not-a-text");
        return json.get<std::string>();
    }
    bool flag() const {
        if (!json.is_boolean()) refuse("rule-set.not-a-flag");
        return json.get<bool>();
    }
    /// JSON has no infinite numbers; none of ours is below zero.
    double number() const {
        if (!json.is_number()) refuse("rule-set.not-a-number");
        const double value = json.get<double>();
        if (value < 0) refuse("rule-set.below-zero");
        return value;
    }
    std::vector<Node> list() const {
        if (!json.is_array()) refuse("rule-set.not-a-list");
        std::vector<Node> nodes;
        for (std::size_t i = 0; i < json.size(); ++i)
            nodes.push_back({json[i], fmt::format("{}[{}]", path, i)});
        return nodes;
    }
    /// A key that nobody knows is a slip of the pen, and a limit that it was meant to set would stay unset.
    void allowOnly(std::initializer_list<std::string_view> known) const {
        for (const auto& item : object().items())
            if (std::ranges::find(known, std::string_view(item.key())) == known.end())
                Node{json, path.empty() ? item.key() : fmt::format("{}.{}", path, item.key())}.refuse(
                    "rule-set.unknown");
    }
};

Source sourceOf(const Node& node) {
    Source source;
    source.title = node.at("source").text();
    source.fromMemory = node.has("fromMemory") && node.at("fromMemory").flag();
    return source;
}

/// A limit that is one number. `unit` is in its key.
struct NumericLimit {
    std::string_view key;
    void (*set)(RuleSet&, double);
};
constexpr std::array numericLimits{
    NumericLimit{"nominalVoltage_V", [](RuleSet& r, double v) { r.nominalVoltage = volts(v); }},
    NumericLimit{"voltageFactorMin", [](RuleSet& r, double v) { r.voltageFactorMin = v; }},
    NumericLimit{"voltageFactorMax", [](RuleSet& r, double v) { r.voltageFactorMax = v; }},
    NumericLimit{"distributionTn_s", [](RuleSet& r, double v) { r.distributionTn = seconds(v); }},
    NumericLimit{"distributionTt_s", [](RuleSet& r, double v) { r.distributionTt = seconds(v); }},
    NumericLimit{"finalThresholdSockets_A",
                 [](RuleSet& r, double v) { r.finalThresholdSockets = amperes(v); }},
    NumericLimit{"finalThresholdFixed_A", [](RuleSet& r, double v) { r.finalThresholdFixed = amperes(v); }},
    NumericLimit{"loopGuard", [](RuleSet& r, double v) { r.loopGuard = v; }},
    NumericLimit{"testTemperature_degC", [](RuleSet& r, double v) { r.testTemperature = celsius(v); }},
    NumericLimit{"touchVoltage_V", [](RuleSet& r, double v) { r.touchVoltage = volts(v); }},
    NumericLimit{"additionalProtection_mA",
                 [](RuleSet& r, double v) { r.additionalProtection = milliamperes(v); }},
    NumericLimit{"additionalProtectionSocketsUpTo_A",
                 [](RuleSet& r, double v) { r.additionalProtectionSocketsUpTo = amperes(v); }},
    NumericLimit{"dropLighting", [](RuleSet& r, double v) { r.dropLighting = v; }},
    NumericLimit{"dropOther", [](RuleSet& r, double v) { r.dropOther = v; }},
    NumericLimit{"conventionalFactor", [](RuleSet& r, double v) { r.conventionalFactor = v; }},
    NumericLimit{"adiabaticTime_s", [](RuleSet& r, double v) { r.adiabaticTime = seconds(v); }},
    NumericLimit{"closeBand", [](RuleSet& r, double v) { r.closeBand = v; }},
    NumericLimit{"ringTolerance", [](RuleSet& r, double v) { r.ringTolerance = v; }},
    NumericLimit{"ringProtectiveTolerance", [](RuleSet& r, double v) { r.ringProtectiveTolerance = v; }},
    NumericLimit{"ringRatedCurrent_A", [](RuleSet& r, double v) { r.ringRatedCurrent = amperes(v); }},
    NumericLimit{"ringLeastCapacity_A", [](RuleSet& r, double v) { r.ringLeastCapacity = amperes(v); }},
    NumericLimit{"ringLeastSize_mm2", [](RuleSet& r, double v) { r.ringLeastSize = squareMillimetres(v); }},
};
constexpr std::string_view disconnectionKey = "disconnection";
constexpr std::string_view conventionalByRatingKey = "conventionalByRating";
constexpr std::string_view protectionLightingKey = "additionalProtectionLighting";

bool isLimit(std::string_view key) {
    return key == disconnectionKey || key == conventionalByRatingKey || key == protectionLightingKey ||
           std::ranges::find(numericLimits, key, &NumericLimit::key) != numericLimits.end();
}

/// One of the words that a text may be.
template <class E>
E wordOf(const Node& node, std::initializer_list<std::pair<std::string_view, E>> words) {
    const std::string text = node.text();
    for (const auto& [word, value] : words)
        if (word == text) return value;
    throw Refusal{{"rule-set.no-such-word", {node.path, text}}};
}

DisconnectionRow readRow(const Node& node) {
    node.allowOnly({"earthing", "above_V", "upTo_V", "time_s"});
    DisconnectionRow row;
    row.earthing = wordOf<Earthing>(node.at("earthing"), {{"tn", Earthing::TnS}, {"tt", Earthing::Tt}});
    row.above = volts(node.at("above_V").number());
    row.upTo =
        volts(node.has("upTo_V") ? node.at("upTo_V").number() : std::numeric_limits<double>::infinity());
    row.time = seconds(node.at("time_s").number());
    return row;
}

void readLimits(RuleSet& rules, const Node& limits) {
    const auto read = [&](std::string_view key) {
        const Node limit = limits.at(key);
        limit.allowOnly({"value", "source", "fromMemory"});
        rules.limitSources.push_back({std::string(key), sourceOf(limit)});
        return limit.at("value");
    };
    for (const NumericLimit& limit : numericLimits)
        limit.set(rules, read(limit.key).number());
    for (const Node& row : read(disconnectionKey).list())
        rules.disconnection.push_back(readRow(row));
    for (const Node& family : read(conventionalByRatingKey).list())
        rules.conventionalByRating.push_back(family.text());
    rules.additionalProtectionLighting = read(protectionLightingKey).flag();
    for (const auto& item : limits.object().items())
        if (!isLimit(item.key())) limits.at(item.key()).refuse("rule-set.unknown");
}

RuleSet read(const Node& root) {
    if (!root.json.is_object()) throw Refusal{{"rule-set.not-a-rule-set", {}}};
    root.allowOnly({"key", "revision", "title", "tables", "loopRule", "limits", "clauses"});
    RuleSet rules;
    rules.key = root.at("key").text();
    rules.revision = root.at("revision").text();
    rules.title = root.at("title").text();
    const Node tables = root.at("tables");
    tables.allowOnly({"loop", "capacity", "capacityElse", "ambient", "bonding"});
    rules.loopTableEdition = tables.at("loop").text();
    rules.capacityStandard = tables.at("capacity").text();
    if (tables.has("capacityElse")) rules.capacityElse = tables.at("capacityElse").text();
    rules.ambientStandard = tables.at("ambient").text();
    rules.bondingStandard = tables.at("bonding").text();
    rules.loopRule =
        wordOf<LoopRule>(root.at("loopRule"), {{"guarded-limit", LoopRule::GuardedLimit},
                                               {"corrected-reading", LoopRule::CorrectedReading}});
    readLimits(rules, root.at("limits"));
    for (const Node& clause : root.at("clauses").list()) {
        clause.allowOnly({"purpose", "number", "source", "fromMemory"});
        rules.clauses.push_back({clause.at("purpose").text(), clause.at("number").text(), sourceOf(clause)});
    }
    return rules;
}

constexpr std::string_view defaultRuleSet = "iec-60364";

} // namespace

const RuleSet::Clause* RuleSet::clause(std::string_view purpose) const {
    const auto found = std::ranges::find(clauses, purpose, &Clause::purpose);
    return found == clauses.end() ? nullptr : &*found;
}

Source RuleSet::sourceOf(std::string_view limit) const {
    const auto found = std::ranges::find(limitSources, limit, &LimitSource::limit);
    return found == limitSources.end() ? Source{} : found->source;
}

tl::expected<RuleSet, Message> RuleSet::parse(std::string_view json) {
    try {
        const Json document = Json::parse(json);
        return read({document, {}});
    } catch (const Refusal& refusal) {
        return tl::unexpected(refusal.message);
    } catch (const Json::parse_error& failure) {
        return tl::unexpected(Message{"rule-set.not-json", {static_cast<std::int64_t>(failure.byte)}});
    }
}

std::vector<RuleSet> builtInRuleSets() {
    std::vector<RuleSet> sets;
    for (const std::string_view path : embeddedFiles("rulesets/")) {
        auto set = RuleSet::parse(embeddedFile(path));
        if (!set)
            throw std::runtime_error(fmt::format("{} does not hold together: {}", path, set.error().key));
        sets.push_back(std::move(*set));
    }
    std::ranges::stable_sort(sets, std::greater{},
                             [](const RuleSet& set) { return set.key == defaultRuleSet; });
    return sets;
}

const RuleSet& ruleSetFor(std::span<const RuleSet> ruleSets, std::string_view key) {
    const auto found = std::ranges::find(ruleSets, key, &RuleSet::key);
    return found == ruleSets.end() ? ruleSets.front() : *found;
}

} // namespace loopwright
