// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sums/read_inputs.h"

#include "core/phrases/nearest.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

#include <fmt/format.h>

namespace loopwright::sums {
namespace {

/// More figures than any table of the trade has; keeps one line from asking for a million answers.
constexpr std::size_t mostFigures = 1000;

template <class T>
using Read = tl::expected<T, Refusal>;

Refusal refusal(std::string_view input, std::string_view key, std::vector<Argument> more = {}) {
    std::vector<Argument> arguments{std::string(input)};
    arguments.insert(arguments.end(), std::make_move_iterator(more.begin()),
                     std::make_move_iterator(more.end()));
    return Refusal{std::string(input), {key, std::move(arguments)}};
}

/// As many decimals as a number needs to be read back the same; -1 where it needs an exponent.
int decimalsOf(double value) {
    const std::string digits = fmt::format("{}", value);
    if (digits.find('e') != digits.npos) return -1;
    const std::size_t point = digits.find('.');
    return point == digits.npos ? 0 : static_cast<int>(digits.size() - point - 1);
}

Read<GivenFigure> checked(const Input& input, double inUnit, int decimals) {
    if (!std::isfinite(inUnit) || std::fpclassify(inUnit) == FP_SUBNORMAL)
        return tl::unexpected(refusal(input.key, "sum.not-finite"));
    const double value = input.unit.toBase(inUnit);
    if (value == 0 && input.range.zero) return GivenFigure{0, decimals};
    if (value == 0) return tl::unexpected(refusal(input.key, "sum.zero"));
    if (!(value >= input.range.least && value <= input.range.most)) {
        const auto bound = [&](double base) { return Measure{input.unit.fromBase(base), input.unit, -1}; };
        return tl::unexpected(
            refusal(input.key, "sum.out-of-range", {bound(input.range.least), bound(input.range.most)}));
    }
    return GivenFigure{value, decimals};
}

/// "1.5e3", as programs write numbers. Without an exponent a text is left to parseEntry, which knows the
/// reader's decimal sign.
std::optional<double> withExponent(std::string_view text) {
    double value = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), value);
    const bool isWhole = end == text.data() + text.size() && text.find_first_of("eE") != text.npos;
    if (!isWhole || problem == std::errc::invalid_argument) return std::nullopt;
    return problem == std::errc{} ? value : std::numeric_limits<double>::infinity();
}

bool hasUnit(std::string_view text) {
    return !withExponent(text) &&
           std::ranges::any_of(text, [](char c) { return !(c >= '+' && c <= '9') && c != ' '; });
}

Read<GivenFigure> readFigure(const Input& input, std::string_view text, const NumberFormat& format) {
    if (const auto number = withExponent(text)) return checked(input, *number, -1);
    const auto entry = parseEntry(text, input.unit, format);
    if (!entry && entry.error().key == "entry.wrong-unit")
        return tl::unexpected(Refusal{std::string(input.key), entry.error()});
    if (!entry || entry->state != EntryState::Value || entry->origin != Origin::Read)
        return tl::unexpected(refusal(input.key, "sum.not-a-number", {std::string(text)}));
    return checked(input, entry->value, entry->decimals);
}

std::vector<std::string> split(std::string_view text, const NumberFormat& format) {
    const std::string_view marks = format.decimalPoint == ',' ? ";" : ";,";
    std::vector<std::string> parts;
    for (std::size_t end = 0; end != text.npos; text.remove_prefix(std::min(end + 1, text.size()))) {
        end = text.find_first_of(marks);
        parts.emplace_back(text.substr(0, end));
    }
    return parts;
}

Read<std::vector<RawFigure>> rawFigures(const Input& input, const RawValue& raw, const NumberFormat& format) {
    if (const auto* number = std::get_if<double>(&raw)) return std::vector<RawFigure>{*number};
    if (const auto* several = std::get_if<std::vector<RawFigure>>(&raw)) return *several;
    const auto* text = std::get_if<std::string>(&raw);
    if (!text)
        return tl::unexpected(
            refusal(input.key, "sum.not-a-number", {std::string(std::get<bool>(raw) ? "true" : "false")}));
    const std::vector<std::string> parts = split(*text, format);
    // "6, 10, 16 mA" would be two figures in amperes and one in milliamperes.
    const auto withUnit = std::ranges::count_if(parts, [](const std::string& part) { return hasUnit(part); });
    if (withUnit != 0 && static_cast<std::size_t>(withUnit) != parts.size())
        return tl::unexpected(refusal(input.key, "sum.some-units", {*text}));
    return std::vector<RawFigure>(parts.begin(), parts.end());
}

Read<GivenInput> readFigures(const Input& input, const RawValue& raw, const NumberFormat& format) {
    const auto figures = rawFigures(input, raw, format);
    if (!figures) return tl::unexpected(figures.error());
    if (figures->empty()) return tl::unexpected(refusal(input.key, "sum.empty-list"));
    if (figures->size() > mostFigures)
        return tl::unexpected(
            refusal(input.key, "sum.list-too-long", {static_cast<std::int64_t>(mostFigures)}));
    GivenInput given;
    for (const RawFigure& figure : *figures) {
        const auto* text = std::get_if<std::string>(&figure);
        const auto read =
            text ? readFigure(input, *text, format)
                 : checked(input, std::get<double>(figure), decimalsOf(std::get<double>(figure)));
        if (!read) return tl::unexpected(read.error());
        given.figures.push_back(*read);
    }
    return given;
}

std::string joined(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

Read<GivenInput> readOption(const Input& input, const RawValue& raw, const SumContext& context) {
    const auto* text = std::get_if<std::string>(&raw);
    const std::vector<std::string> options = input.options(context);
    const std::string typed = text ? *text : std::string();
    if (std::ranges::find(options, typed) == options.end())
        return tl::unexpected(refusal(input.key, "sum.not-an-option", {typed, joined(options)}));
    return GivenInput{.option = typed};
}

Read<GivenInput> readFlag(const Input& input, const RawValue& raw) {
    if (const auto* answer = std::get_if<bool>(&raw)) return GivenInput{.option = *answer ? "yes" : "no"};
    const auto* text = std::get_if<std::string>(&raw);
    if (text && (*text == "yes" || *text == "true")) return GivenInput{.option = "yes"};
    if (text && (*text == "no" || *text == "false")) return GivenInput{.option = "no"};
    return tl::unexpected(refusal(input.key, "sum.not-yes-or-no"));
}

Read<GivenInput> readInput(const Input& input, const RawValue& raw, const SumContext& context,
                           const NumberFormat& format) {
    switch (input.kind) {
    case InputKind::Number:
    case InputKind::List:
        return readFigures(input, raw, format);
    case InputKind::Choice:
        return readOption(input, raw, context);
    case InputKind::Flag:
        break;
    }
    return readFlag(input, raw);
}

GivenInput leftOut(const Input& input, const SumContext& context) {
    GivenInput given{.option = std::string(input.preset), .byDefault = true};
    if (!input.standard) return given;
    const Standard standard = input.standard(context);
    given.figures.push_back({standard.value, decimalsOf(input.unit.fromBase(standard.value))});
    given.source = standard.source;
    return given;
}

std::optional<Refusal> keyProblem(const Sum& sum, std::span<const RawInput> raw) {
    std::vector<std::string> known, seen;
    for (const Input& input : sum.inputs)
        known.emplace_back(input.key);
    for (const RawInput& each : raw) {
        if (std::ranges::find(seen, each.key) != seen.end()) return refusal(each.key, "sum.given-twice");
        seen.push_back(each.key);
        if (std::ranges::find(known, each.key) != known.end()) continue;
        const std::string near = nearest(each.key, known);
        return near.empty() ? refusal(each.key, "sum.unknown-input", {std::string(sum.key), joined(known)})
                            : refusal(each.key, "sum.unknown-input-near", {near});
    }
    std::vector<std::string> missing;
    for (const Input& input : sum.inputs)
        if (input.required && std::ranges::find(seen, input.key) == seen.end())
            missing.emplace_back(input.key);
    if (missing.empty()) return std::nullopt;
    return Refusal{missing.front(), {"sum.missing", {joined(missing)}}};
}

/// Several figures here and several there belong together one by one, so there must be as many.
std::optional<Refusal> countProblem(const Sum& sum, const Inputs& inputs) {
    std::size_t count = 1;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const std::size_t here = inputs[i].figures.size();
        if (sum.inputs[i].kind != InputKind::Number || here < 2) continue;
        if (count > 1 && here != count)
            return refusal(sum.inputs[i].key, "sum.lists-differ",
                           {static_cast<std::int64_t>(here), static_cast<std::int64_t>(count)});
        count = here;
    }
    return std::nullopt;
}

} // namespace

Read<RawInput> readAssignment(std::string_view text) {
    const std::size_t sign = text.find('=');
    if (sign == text.npos || sign == 0)
        return tl::unexpected(Refusal{{}, {"sum.not-an-assignment", {std::string(text)}}});
    return RawInput{std::string(text.substr(0, sign)), std::string(text.substr(sign + 1))};
}

Read<Inputs> readInputs(const Sum& sum, std::span<const RawInput> raw, const SumContext& context,
                        const NumberFormat& format) {
    if (auto problem = keyProblem(sum, raw)) return tl::unexpected(std::move(*problem));
    Inputs inputs;
    for (const Input& input : sum.inputs) {
        const auto found = std::ranges::find(raw, input.key, &RawInput::key);
        if (found == raw.end()) {
            inputs.push_back(leftOut(input, context));
            continue;
        }
        auto read = readInput(input, found->value, context, format);
        if (!read) return tl::unexpected(std::move(read.error()));
        inputs.push_back(std::move(*read));
    }
    if (auto problem = countProblem(sum, inputs)) return tl::unexpected(std::move(*problem));
    return inputs;
}

} // namespace loopwright::sums
