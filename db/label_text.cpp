// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/label_text.h"

#include "core/phrases/phrases.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace loopwright {
namespace {

using nlohmann::json;

constexpr std::string_view unknownLabel = "workbook.unknown-label";
constexpr std::string_view unknownWord = "workbook.unknown-word";

struct ToJson {
    json operator()(const std::string& text) const { return text; }
    json operator()(std::int64_t number) const { return number; }
    json operator()(const Measure& measure) const {
        return {{"value", measure.value},
                {"unit", measure.unit.symbol},
                {"decimals", measure.decimals},
                {"bound", measure.bound}};
    }
    json operator()(const Word& word) const { return {{"word", word.key}}; }
};

Argument measureFrom(const json& stored) {
    const auto value = stored.at("value").get<double>();
    const auto symbol = stored.at("unit").get<std::string>();
    const auto decimals = stored.at("decimals").get<int>();
    const auto bound = stored.value("bound", Bound::Exact); // labels of older programs have none
    if (symbol.empty()) return Measure{value, units::ratio, decimals, bound};
    if (const auto unit = unitNamed(symbol)) return Measure{value, *unit, decimals, bound};
    return fmt::format("{} {}", value, symbol);
}

Argument argumentFrom(const json& stored) {
    if (stored.is_string()) return stored.get<std::string>();
    if (stored.is_number_integer()) return stored.get<std::int64_t>();
    if (stored.contains("value")) return measureFrom(stored);
    const auto word = phrase(stored.at("word").get<std::string>());
    return Word{word ? word->key : unknownWord};
}

} // namespace

std::string argumentsText(const Message& label) {
    json arguments = json::array();
    for (const Argument& argument : label.arguments)
        arguments.push_back(std::visit(ToJson{}, argument));
    return arguments.dump(-1, ' ', false, json::error_handler_t::replace);
}

Message labelFrom(std::string_view key, std::string_view argumentsText) {
    const auto known = phrase(key);
    if (!known) return {unknownLabel, {}};
    Message label{known->key, {}};
    try {
        for (const json& argument : json::parse(argumentsText))
            label.arguments.push_back(argumentFrom(argument));
    } catch (const json::exception&) {
        return {unknownLabel, {}};
    }
    return label;
}

} // namespace loopwright
