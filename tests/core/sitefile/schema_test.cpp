// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/model/fields.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"
#include "core/sitefile/attachment.h"
#include "core/sitefile/nesting.h"
#include "core/sitefile/schema.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <map>
#include <set>

namespace loopwright {
namespace {

using nlohmann::json;
using sitefile::Nesting;
using sitefile::SiteSchema;

struct Property {
    json own;      ///< as it stands
    json resolved; ///< with "$ref" followed
};

/// Properties of a record by field key, with those of embedded structs behind a dot; lists of records left
/// out.
std::map<std::string, Property> propertiesOf(const SiteSchema& schema, const json& object,
                                             const std::string& prefix = {}) {
    std::map<std::string, Property> found;
    for (const auto& [key, own] : object.at("properties").items()) {
        const json& resolved = *schema.property(object, key);
        if (resolved.contains("properties"))
            found.merge(propertiesOf(schema, resolved, prefix + key + "."));
        else if (resolved.value("type", json()) != "array")
            found.emplace(prefix + key, Property{own, resolved});
    }
    return found;
}

/// Keys that belong to the file and not to a field.
template <class Record>
std::set<std::string> keysOfTheFile() {
    if constexpr (std::is_same_v<Record, Site>)
        return {"id", "$schema", "loopwright", "version"};
    else if constexpr (sitefile::hasAttachment<Record>)
        return {"id", "file", "data"};
    else
        return {"id"};
}

template <class Visitor>
void forEachKind(Visitor&& visit) {
    visit(Site{});
    forEachRowKind(visit);
}

void expectFigure(const FieldInfo& info, const json& property) {
    EXPECT_EQ(property.at("type"), json({"number", "string"}));
    EXPECT_EQ(property.value("minimum", json()), info.allowsZero && !info.allowsNegative ? json(0) : json());
    EXPECT_EQ(property.value("exclusiveMinimum", json()), info.allowsZero ? json() : json(0));
    EXPECT_EQ(property.value("multipleOf", json()), info.wholeNumber ? json(1) : json());
    EXPECT_TRUE(info.unit.suffix.empty() || info.key.ends_with("_" + std::string(info.unit.suffix)));
}

template <class Record>
void expectProperty(const Field<Record>& field, const Property& property) {
    const FieldInfo& info = field.info;
    const std::string usual = field.get(Record{});
    switch (info.kind) {
    case FieldKind::Figure:
        return expectFigure(info, property.resolved);
    case FieldKind::Flag:
        EXPECT_EQ(property.resolved.at("type"), "boolean");
        EXPECT_EQ(property.own.at("default"), usual == "true");
        return;
    case FieldKind::Option: {
        std::vector<std::string> keys;
        for (const Choice& choice : info.choices->choices)
            keys.emplace_back(choice.key);
        EXPECT_EQ(property.resolved.at("enum"), json(keys));
        EXPECT_EQ(property.own.at("default"), usual);
        return;
    }
    case FieldKind::Day:
        EXPECT_EQ(property.own.at("$ref"), "#/definitions/day");
        return;
    case FieldKind::LongText:
        EXPECT_EQ(property.own.at("$ref"), "#/definitions/longText");
        return;
    case FieldKind::Text:
    case FieldKind::Reference:
        EXPECT_EQ(property.resolved.at("type"), "string");
        return;
    }
}

TEST(SiteSchema, ItsPropertiesAreTheFieldCatalogue) {
    const SiteSchema schema;
    forEachKind([&](auto blank) {
        using Record = decltype(blank);
        auto properties = propertiesOf(schema, schema.record(Nesting<Record>::definition));
        for (const std::string& key : keysOfTheFile<Record>())
            EXPECT_EQ(properties.erase(key), 1U) << RecordTraits<Record>::name << " " << key;
        for (const Field<Record>& field : fieldsOf<Record>()) {
            if (sitefile::saysHolder<Record>(field.info)) continue;
            SCOPED_TRACE(std::string(RecordTraits<Record>::name) + " " + std::string(field.info.key));
            const auto property = properties.find(std::string(field.info.key));
            if (property == properties.end()) {
                ADD_FAILURE() << "is a field and not in the schema";
                continue;
            }
            expectProperty(field, property->second);
            properties.erase(property);
        }
        for (const auto& [key, property] : properties)
            ADD_FAILURE() << RecordTraits<Record>::name << " " << key << " is in the schema and no field";
    });
}

TEST(SiteSchema, EveryRecordKindStandsInItsHolder) {
    const SiteSchema schema;
    forEachKind([&](auto blank) {
        using Holder = decltype(blank);
        const json& object = schema.record(Nesting<Holder>::definition);
        std::set<std::string> lists;
        for (const auto& [key, property] : object.at("properties").items())
            if (schema.property(object, key)->value("type", json()) == "array") lists.insert(key);
        sitefile::forEachHeldKind<Holder>([&](auto held) {
            using Record = decltype(held);
            const json* list = schema.property(object, Nesting<Record>::list);
            ASSERT_NE(list, nullptr) << Nesting<Record>::list;
            EXPECT_EQ(&schema.items(*list), &schema.record(Nesting<Record>::definition))
                << Nesting<Record>::list;
            lists.erase(std::string(Nesting<Record>::list));
        });
        EXPECT_TRUE(lists.empty()) << RecordTraits<Holder>::name
                                   << " has a list of no known kind: " << *lists.begin();
    });
}

/// Calls `visit` with the path and the schema of every property at any depth of the text, references not
/// followed.
template <class Visitor>
void forEachProperty(const json& node, const std::string& path, Visitor&& visit) {
    if (!node.is_object()) return;
    for (const auto& [key, value] : node.items()) {
        if (key == "properties")
            for (const auto& [name, property] : value.items())
                visit(path + "/" + name, property);
        forEachProperty(value, path + "/" + key, visit);
    }
}

TEST(SiteSchema, EveryPropertySaysWhatItMeansAndWhatItsAbsenceMeans) {
    const SiteSchema schema;
    forEachProperty(schema.record({}), "", [](const std::string& path, const json& property) {
        const std::string description = property.value("description", "");
        const bool isHeader = path == "/loopwright" || path == "/version";
        EXPECT_TRUE(isHeader || description.find("Absent") != std::string::npos ||
                    description.find("cannot be left out") != std::string::npos)
            << path << ": " << description;
        EXPECT_GE(description.size(), 20U) << path << ": " << description;
    });
}

TEST(SiteSchema, ItsWordsAreThoseOfTheTables) {
    const SiteSchema schema;
    const auto words = [&](std::string_view definition, std::string_view key) {
        return schema.property(schema.record(definition), key)->at("enum").get<std::vector<std::string>>();
    };
    const ReferenceTables tables = ReferenceTables::builtIn();
    std::vector<std::string> families, items, ruleSets;
    for (const DeviceFamily& family : tables.deviceFamilies())
        families.push_back(family.key);
    for (const InspectionItem& item : tables.inspectionItems())
        items.push_back(item.key);
    for (const RuleSet& rules : builtInRuleSets())
        ruleSets.push_back(rules.key);
    EXPECT_EQ(words("device", "family"), families);
    EXPECT_EQ(words("inspectionOutcome", "item"), items);
    EXPECT_EQ(words("visit", "ruleSet"), ruleSets);
}

TEST(SiteSchema, NoObjectTakesUnknownKeys) {
    const SiteSchema schema;
    const json& root = schema.record({});
    EXPECT_EQ(root.at("additionalProperties"), false);
    for (const auto& [name, definition] : root.at("definitions").items())
        EXPECT_FALSE(definition.contains("properties") && definition.value("additionalProperties", true))
            << name;
}

} // namespace
} // namespace loopwright
