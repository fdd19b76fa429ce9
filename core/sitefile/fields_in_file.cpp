// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sitefile/fields_in_file.h"

#include <algorithm>
#include <array>
#include <charconv>

#include <fmt/format.h>

namespace loopwright::sitefile {
namespace {

using nlohmann::json;

/// A sentence lists as many allowed words as this; of longer lists it gives the nearest.
constexpr std::size_t listedWords = 20;

constexpr Word aText{"sitefile.kind.text"};
constexpr Word aFlag{"sitefile.kind.flag"};
constexpr Word aFigure{"sitefile.kind.figure"};
constexpr Word anObject{"sitefile.kind.object"};

void refuseKind(const Word& wanted, const json& value, const Place& place, Problems& problems) {
    problems.add(place, "sitefile.wrong-kind", {wanted, kindOf(value)});
}

/// Whether a text is one that the schema allows.
bool isAllowed(const json& schema, const std::string& text, const Place& place, Problems& problems) {
    if (const auto most = schema.find("maxLength"); most != schema.end()) {
        const auto isStart = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; };
        const auto length = std::ranges::count_if(text, isStart);
        if (length > most->get<std::int64_t>()) {
            problems.add(place, "sitefile.too-long", {length, most->get<std::int64_t>()});
            return false;
        }
    }
    const auto allowed = schema.find("enum");
    if (allowed == schema.end()) return true;
    const auto words = allowed->get<std::vector<std::string>>();
    if (std::ranges::find(words, text) != words.end()) return true;
    if (words.size() <= listedWords)
        problems.add(place, "sitefile.unknown-word", {text, fmt::format("{}", fmt::join(words, ", "))});
    else if (std::string close = nearest(text, words); !close.empty())
        problems.add(place, "sitefile.unknown-word-nearest", {text, std::move(close)});
    else
        problems.add(place, "sitefile.unknown-word-of-many", {text});
    return false;
}

} // namespace

std::string numberText(const json& number) {
    if (!number.is_number_float()) return number.dump();
    std::array<char, 400> digits{}; // the longest double without an exponent has 309 before the point
    const auto [end, problem] = std::to_chars(digits.data(), digits.data() + digits.size(),
                                              number.get<double>(), std::chars_format::fixed);
    return problem == std::errc{} ? std::string(digits.data(), end) : number.dump();
}

Word kindOf(const json& value) {
    switch (value.type()) {
    case json::value_t::null:
        return {"sitefile.kind.null"};
    case json::value_t::boolean:
        return aFlag;
    case json::value_t::string:
        return aText;
    case json::value_t::array:
        return {"sitefile.kind.list"};
    case json::value_t::object:
        return anObject;
    default:
        return {"sitefile.kind.number"};
    }
}

bool isObject(const json& value, const Place& place, Problems& problems) {
    if (!value.is_object()) refuseKind(anObject, value, place, problems);
    return value.is_object();
}

std::optional<std::string> storedForm(const FieldInfo& field, const json& schema, const json& value,
                                      const Place& place, Problems& problems) {
    if (field.kind == FieldKind::Flag) {
        if (value.is_boolean()) return value.get<bool>() ? "true" : "false";
        refuseKind(aFlag, value, place, problems);
        return std::nullopt;
    }
    const bool isFigure = field.kind == FieldKind::Figure;
    if (isFigure && value.is_number()) return numberText(value);
    if (!value.is_string()) {
        refuseKind(isFigure ? aFigure : aText, value, place, problems);
        return std::nullopt;
    }
    const auto& text = value.get_ref<const std::string&>();
    if (text.empty() && (schema.contains("pattern") || schema.contains("enum"))) {
        problems.add(place, "sitefile.empty-text");
        return std::nullopt;
    }
    if (!isAllowed(schema, text, place, problems)) return std::nullopt;
    return text;
}

nlohmann::ordered_json valueInFile(const FieldInfo& field, const std::string& stored) {
    if (field.kind == FieldKind::Flag) return stored == "true";
    if (field.kind != FieldKind::Figure) return stored;
    const auto number = json::parse(stored, nullptr, false);
    if (number.is_number() && numberText(number) == stored) return number;
    return stored;
}

void checkRequired(const json& schema, const json& object, const Place& place, Problems& problems) {
    const auto required = schema.find("required");
    if (required == schema.end()) return;
    for (const auto& key : *required)
        if (!object.contains(key.get_ref<const std::string&>()))
            problems.add(place, "sitefile.key-missing", {key.get<std::string>()});
}

void refuseUnknownKey(const json& schema, const std::string& key, const Place& place, Problems& problems) {
    std::vector<std::string> known;
    for (const auto& [name, property] : schema.at("properties").items())
        known.push_back(name);
    if (std::string close = nearest(key, known); !close.empty())
        problems.add(place, "sitefile.unknown-key-nearest", {key, std::move(close)});
    else
        problems.add(place, "sitefile.unknown-key", {key});
}

} // namespace loopwright::sitefile
