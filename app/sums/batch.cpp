// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sums/sums_json.h"

#include "core/sums/registry.h"

#include <functional>
#include <set>

namespace loopwright::sums {
namespace {

/// Inputs are figures and short lists of them; a line beyond this is none of ours, and is not read.
constexpr std::size_t longestLine = 1'000'000;

Refusal about(std::string_view key, std::vector<Argument> arguments = {}) {
    return {{}, {key, std::move(arguments)}};
}

tl::expected<RawFigure, Refusal> rawFigure(const std::string& key, const Json& value) {
    if (value.is_number()) return value.get<double>();
    if (value.is_string()) return value.get<std::string>();
    return tl::unexpected(Refusal{key, {"sum.not-a-value", {key}}});
}

tl::expected<RawValue, Refusal> rawValue(const std::string& key, const Json& value) {
    if (value.is_boolean()) return value.get<bool>();
    if (!value.is_array()) {
        const auto figure = rawFigure(key, value);
        if (!figure) return tl::unexpected(figure.error());
        return std::visit([](const auto& each) { return RawValue(each); }, *figure);
    }
    std::vector<RawFigure> list;
    for (const Json& each : value) {
        auto figure = rawFigure(key, each);
        if (!figure) return tl::unexpected(std::move(figure.error()));
        list.push_back(std::move(*figure));
    }
    return list;
}

tl::expected<std::vector<RawInput>, Refusal> rawInputs(const Json& object) {
    std::vector<RawInput> inputs;
    for (const auto& [key, value] : object.items()) {
        auto raw = rawValue(key, value);
        if (!raw) return tl::unexpected(std::move(raw.error()));
        inputs.push_back({key, std::move(*raw)});
    }
    return inputs;
}

/// Notices a key that stands twice in the same object, of which a parser would quietly take one.
class KeysTwice {
  public:
    bool operator()(int, Json::parse_event_t event, Json& parsed) {
        if (event == Json::parse_event_t::object_start) open_.emplace_back();
        if (event == Json::parse_event_t::object_end) open_.pop_back();
        if (event == Json::parse_event_t::key && !open_.back().insert(parsed.get<std::string>()).second)
            found_ = parsed.get<std::string>();
        return true;
    }
    const std::optional<std::string>& found() const { return found_; }

  private:
    std::vector<std::set<std::string>> open_;
    std::optional<std::string> found_;
};

/// The object that a line holds. Its id is a text, a number or nothing, so that it can be handed back.
tl::expected<Json, Refusal> readLine(std::string_view line) {
    if (line.size() > longestLine)
        return tl::unexpected(about("sum.line-too-long", {static_cast<std::int64_t>(longestLine)}));
    KeysTwice keys;
    Json read = Json::parse(line, std::ref(keys), false);
    if (!read.is_object()) return tl::unexpected(about("sum.line-not-json"));
    if (keys.found()) return tl::unexpected(about("sum.given-twice", {*keys.found()}));
    const auto id = read.find("id");
    if (id != read.end() && id->is_structured()) return tl::unexpected(about("sum.line-id"));
    return read;
}

Json answered(const Json& line, const std::string& name, const SumContext& context, const Words& words) {
    for (const auto& [key, value] : line.items())
        if (key != "sum" && key != "inputs" && key != "id")
            return refusalJson(name, about("sum.line-unknown-key", {key}), words);
    const auto inputs = line.find("inputs");
    if (name.empty() || (inputs != line.end() && !inputs->is_object()))
        return refusalJson(name, about("sum.line-without-sum"), words);
    const auto sum = sumNamed(name);
    if (!sum) return refusalJson(name, sum.error(), words);
    const auto raw = rawInputs(inputs == line.end() ? Json::object() : *inputs);
    if (!raw) return refusalJson(name, raw.error(), words);
    const auto checked = readInputs(**sum, *raw, context);
    if (!checked) return refusalJson(name, checked.error(), words);
    return answerJson(**sum, answer(**sum, *checked, context), context, words);
}

} // namespace

Json batchAnswer(std::string_view text, const SumContext& context, const Words& words) {
    const auto line = readLine(text);
    if (!line) return refusalJson({}, line.error(), words);
    const auto sum = line->find("sum");
    const std::string name = sum != line->end() && sum->is_string() ? sum->get<std::string>() : std::string();
    Json document = answered(*line, name, context, words);
    if (const auto id = line->find("id"); id != line->end()) document["id"] = *id;
    return document;
}

} // namespace loopwright::sums
