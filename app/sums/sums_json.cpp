// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sums/sums_json.h"

#include "core/sums/registry.h"

#include <array>

namespace loopwright::sums {
namespace {

/// Of a list of sums, of an answer, and of one line of a batch.
constexpr int formatVersion = 1;

std::string wordOf(const Words& words, std::string_view what, std::string_view key) {
    return utf8(words.word("sum." + std::string(what) + "." + std::string(key)));
}

std::string_view kindKey(InputKind kind) {
    constexpr std::array keys{"number", "list", "choice", "flag"};
    return keys.at(static_cast<std::size_t>(kind));
}

std::string_view kindKey(ResultKind kind) {
    constexpr std::array keys{"number", "list", "word"};
    return keys.at(static_cast<std::size_t>(kind));
}

Json ruleSetJson(const SumContext& context) {
    return {{"key", context.rules.key}, {"revision", context.rules.revision}};
}

Json defaultOf(const Input& input, const SumContext& context) {
    if (input.standard) return input.unit.fromBase(input.standard(context).value);
    if (input.kind == InputKind::Flag) return input.preset == "yes";
    return input.preset.empty() ? Json(nullptr) : Json(input.preset);
}

Json inputJson(const Input& input, const SumContext& context, const Words& words) {
    Json range = nullptr;
    if (input.kind == InputKind::Number || input.kind == InputKind::List)
        range = {{"least", input.unit.fromBase(input.range.least)},
                 {"most", input.unit.fromBase(input.range.most)},
                 {"zero", input.range.zero}};
    Json options = nullptr;
    if (input.options) options = input.options(context);
    return {{"key", input.key},
            {"name", wordOf(words, "input", input.key)},
            {"symbol", input.symbol},
            {"kind", kindKey(input.kind)},
            {"unit", input.unit.suffix},
            {"required", input.required},
            {"default", defaultOf(input, context)},
            {"range", std::move(range)},
            {"options", std::move(options)}};
}

Json resultJson(const Result& result, const Words& words) {
    Json options = nullptr;
    if (result.kind == ResultKind::Word) options = result.words;
    return {{"key", result.key},          {"name", wordOf(words, "result", result.key)},
            {"symbol", result.symbol},    {"kind", kindKey(result.kind)},
            {"unit", result.unit.suffix}, {"options", std::move(options)}};
}

Json sumJson(const Sum& sum, const SumContext& context, const Words& words) {
    Json inputs = Json::array(), results = Json::array();
    for (const Input& input : sum.inputs)
        inputs.push_back(inputJson(input, context, words));
    for (const Result& result : sum.results)
        results.push_back(resultJson(result, words));
    return {{"key", sum.key},
            {"title", utf8(words.word("sum." + std::string(sum.key) + ".title"))},
            {"inputs", std::move(inputs)},
            {"results", std::move(results)},
            {"example", sum.example}};
}

Json valueJson(const ResultValue& value) {
    if (const auto* number = std::get_if<double>(&value)) return *number;
    if (const auto* list = std::get_if<std::vector<double>>(&value)) return *list;
    if (const auto* word = std::get_if<std::string_view>(&value)) return *word;
    return nullptr;
}

Json resultsJson(const Sum& sum, const Answers& answers) {
    Json results = Json::object();
    for (const Result& result : sum.results) {
        Json values = Json::array();
        for (const Answer& each : answers.cases)
            values.push_back(valueJson(each.value(result.key)));
        results[std::string(result.key)] = answers.several ? std::move(values) : std::move(values.front());
    }
    return results;
}

Json workingsJson(const Answers& answers, const Words& words) {
    Json cases = Json::array();
    for (const Answer& each : answers.cases) {
        Json workings = Json::array();
        for (const Working& working : each.workings())
            workings.push_back(workingJson(working, words));
        cases.push_back(std::move(workings));
    }
    return cases;
}

Json documentFor(const std::string& sum) {
    return {{"loopwright", "sum"}, {"version", formatVersion}, {"sum", sum}};
}

} // namespace

Json listJson(const SumContext& context, const Words& words) {
    Json list = Json::array();
    for (const Sum& sum : allSums())
        list.push_back(sumJson(sum, context, words));
    return {{"loopwright", "sums"},
            {"version", formatVersion},
            {"ruleSet", ruleSetJson(context)},
            {"sums", std::move(list)}};
}

Json refusalJson(const std::string& sum, const Refusal& refusal, const Words& words) {
    Json document = documentFor(sum);
    document["refused"] = {{"reason", refusal.what.key},
                           {"input", refusal.input.empty() ? Json(nullptr) : Json(refusal.input)},
                           {"sentence", utf8(words.sentence(refusal.what))}};
    return document;
}

Json answerJson(const Sum& sum, const tl::expected<Answers, Refusal>& answers, const SumContext& context,
                const Words& words) {
    const std::string key(sum.key);
    if (!answers) return refusalJson(key, answers.error(), words);
    Json document = documentFor(key);
    document["ruleSet"] = ruleSetJson(context);
    document["results"] = resultsJson(sum, *answers);
    document["workings"] = workingsJson(*answers, words);
    return document;
}

} // namespace loopwright::sums
