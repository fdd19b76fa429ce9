// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/physics/resistivity.h"
#include "core/reference/reference_tables.h"
#include "core/reference/rule_set.h"
#include "core/units/unit.h"

#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

/// What a sum asks for. Inputs are declared once, with their quantity in their type, so that a sum cannot
/// read an ohm as an ampere.
namespace loopwright::sums {

/// What a sum may look up: tables, and the rule set that its defaults come from.
struct SumContext {
    const ReferenceTables& tables;
    const RuleSet& rules;
};

enum class InputKind : std::uint8_t {
    Number, ///< one figure; several make the sum answer for each of them
    List,   ///< several figures that belong together: the parts of a loop
    Choice,
    Flag,
};

/// What a figure may be, in base units. Ranges are wider than anything that is built: they keep out slips of
/// the keyboard and what arithmetic cannot bear. 0 lies outside unless it is allowed.
struct Range {
    double least = 0;
    double most = 0;
    bool zero = false;
};

/// What is taken where an input is left out.
struct Standard {
    double value = 0; ///< in base units
    Source source;    ///< empty for what needs none: a factor of 1
};

struct Input {
    std::string_view key;    ///< in the manner of site files, its unit at the end: "lineToEarthVoltage_V"
    std::string_view symbol; ///< in formulas: "U_0"
    Unit unit = units::ratio;
    InputKind kind = InputKind::Number;
    Range range;
    bool required = true;                                             ///< neither a default nor done without
    Standard (*standard)(const SumContext&) = nullptr;                ///< nullptr: no default
    std::vector<std::string> (*options)(const SumContext&) = nullptr; ///< of a choice, as they are typed
    std::string_view optionWords; ///< what a choice's words begin with: "choice.material."; empty: options
                                  ///< are names and shown as they are
    std::string_view preset;      ///< the option taken where a choice is left out; "no" for a flag
};

template <class Q>
struct NumberInput : Input {};
/// One that a sum can do without.
template <class Q>
struct OptionalInput : Input {};
/// One that is empty where it is left out, unless it is required.
template <class Q>
struct ListInput : Input {};
template <class E>
struct ChoiceInput : Input {};
/// A choice between names that a table holds: a device family.
struct NameInput : Input {};
struct FlagInput : Input {};

/// The usual range of a quantity; no range for a quantity that no input has yet.
template <class Q>
inline constexpr Range usualRange{};
template <>
inline constexpr Range usualRange<Current>{1e-6, 1e6};
template <>
inline constexpr Range usualRange<Voltage>{1e-3, 1e6};
template <>
inline constexpr Range usualRange<Resistance>{1e-6, 1e12};
template <>
inline constexpr Range usualRange<Power>{1e-3, 1e10};
template <>
inline constexpr Range usualRange<Length>{1e-3, 1e6};
template <>
inline constexpr Range usualRange<CrossSection>{1e-2, 1e4};
template <>
inline constexpr Range usualRange<Time>{1e-6, 1e8};
template <>
inline constexpr Range usualRange<Temperature>{-100, 2000, true};
template <>
inline constexpr Range usualRange<TemperatureDifference>{1e-2, 2000};
template <>
inline constexpr Range usualRange<ResistancePerLength>{1e-8, 1e3};
template <>
inline constexpr Range usualRange<physics::Resistivity>{1e-4, 1e2};
template <>
inline constexpr Range usualRange<JouleIntegral>{1e-3, 1e15};
template <>
inline constexpr Range usualRange<AdiabaticFactor>{1, 1e3};
template <>
inline constexpr Range usualRange<Ratio>{1e-3, 1e3};

namespace detail {

template <class Q>
constexpr Dimension dimensionOf() {
    if constexpr (std::is_same_v<Q, Ratio>)
        return {};
    else if constexpr (std::is_same_v<Q, Temperature>)
        return TemperatureDifference::dimension;
    else
        return Q::dimension;
}

constexpr bool endsWithUnit(std::string_view key, const Unit& unit) {
    if (unit.suffix.empty()) return key.find('_') == key.npos;
    return key.ends_with(unit.suffix) && key.size() > unit.suffix.size() + 1 &&
           key[key.size() - unit.suffix.size() - 1] == '_';
}

/// A declaration that does not hold together throws, which stops the compiler: declarations are constants.
template <class Q>
constexpr Input figure(std::string_view key, std::string_view symbol, const Unit& unit, InputKind kind) {
    if (unit.dimension != dimensionOf<Q>()) throw std::logic_error("the unit does not count this quantity");
    if (unit.isTemperature != std::is_same_v<Q, Temperature>)
        throw std::logic_error("kelvins are not degrees");
    if (!endsWithUnit(key, unit)) throw std::logic_error("a key ends with its unit");
    return {.key = key, .symbol = symbol, .unit = unit, .kind = kind, .range = usualRange<Q>};
}

} // namespace detail

/// A figure that must be given.
template <class Q>
constexpr NumberInput<Q> number(std::string_view key, std::string_view symbol, const Unit& unit) {
    return {detail::figure<Q>(key, symbol, unit, InputKind::Number)};
}
/// A figure that has a default.
template <class Q>
constexpr NumberInput<Q> number(std::string_view key, std::string_view symbol, const Unit& unit,
                                Standard (*standard)(const SumContext&)) {
    NumberInput<Q> input{detail::figure<Q>(key, symbol, unit, InputKind::Number)};
    input.required = false;
    input.standard = standard;
    return input;
}
template <class Q>
constexpr OptionalInput<Q> optional(std::string_view key, std::string_view symbol, const Unit& unit) {
    OptionalInput<Q> input{detail::figure<Q>(key, symbol, unit, InputKind::Number)};
    input.required = false;
    return input;
}
template <class Q>
constexpr ListInput<Q> list(std::string_view key, std::string_view symbol, const Unit& unit) {
    return {detail::figure<Q>(key, symbol, unit, InputKind::List)};
}
template <class Q>
constexpr ListInput<Q> optionalList(std::string_view key, std::string_view symbol, const Unit& unit) {
    ListInput<Q> input{detail::figure<Q>(key, symbol, unit, InputKind::List)};
    input.required = false;
    return input;
}
/// The same input where 0 can be meant: the reactance of a short length.
template <class SomeInput>
constexpr SomeInput orZero(SomeInput input) {
    input.range.zero = true;
    return input;
}
/// The same input within other bounds, in base units.
template <class SomeInput>
constexpr SomeInput within(Range range, SomeInput input) {
    input.range = range;
    return input;
}

/// One of a list of the model's, by its keys there.
template <class E>
constexpr ChoiceInput<E> choice(std::string_view key, std::string_view words, std::string_view preset = {}) {
    ChoiceInput<E> input{{.key = key, .kind = InputKind::Choice, .required = preset.empty()}};
    input.options = [](const SumContext&) {
        std::vector<std::string> keys;
        for (const Choice& each : choicesOf<E>().choices)
            keys.emplace_back(each.key);
        return keys;
    };
    input.optionWords = words;
    input.preset = preset;
    return input;
}
/// `words` begin the phrases of its options where they have some.
constexpr NameInput name(std::string_view key, std::vector<std::string> (*options)(const SumContext&),
                         std::string_view words = {}, std::string_view preset = {}) {
    return {{.key = key,
             .kind = InputKind::Choice,
             .required = preset.empty(),
             .options = options,
             .optionWords = words,
             .preset = preset}};
}
constexpr FlagInput flag(std::string_view key) {
    return {{.key = key, .kind = InputKind::Flag, .required = false, .preset = "no"}};
}

/// Defaults.
inline Standard one(const SumContext&) {
    return {1, {}};
}
inline Standard none(const SumContext&) {
    return {0, {}};
}

} // namespace loopwright::sums
